import type { MonotoneCubic } from '../numerics/monotone-cubic.ts';
import type { PiecewiseLinear } from '../numerics/piecewise-linear.ts';
import * as at from './layout.ts';
import { type i32, type Memory, whole } from './memory.ts';

/**
 * Tables of the kernel. A table is a row of pieces, and each begins with the place at which the next takes over
 * (infinite in the last): a look-up goes up from a piece that does not lie beyond.
 */

/** Piece of straight lines: where it ends, slope, value at zero, where it begins. */
const LINE = 4;
/**
 * Straight lines are cut into even cells, each with all pieces that reach into it, so that a look-up begins at the right
 * place and seldom goes on. Before them: first x, cells per x, number of the last cell, places a cell; then what the
 * compiled kernel found last for each side, left and right: where that piece begins and ends, its slope, its value at zero.
 */
const LINE_HEAD = 12;

/** Value at x of the straight lines at `table`. */
export function linearAt(m: Memory, table: i32, x: number): number {
  const cell = Math.max(Math.min((x - m[table]) * m[table + 1], m[table + 2]), 0);
  let piece = table + LINE_HEAD + whole(m[table + 3]) * whole(cell);
  while (x >= m[piece]) piece += LINE;
  return m[piece + 2] + m[piece + 1] * x;
}

/** Piece of a cubic: where it ends, where it begins, then its value, slope and higher coefficients there. */
const CUBIC = 6;

function cubicPiece(m: Memory, table: i32, x: number): i32 {
  let piece = table;
  while (x >= m[piece]) piece += CUBIC;
  return piece;
}

/** Value at x of the monotone cubic at `table`. */
export function cubicAt(m: Memory, table: i32, x: number): number {
  const piece = cubicPiece(m, table, x);
  const u = x - m[piece + 1];
  return m[piece + 2] + u * (m[piece + 3] + u * (m[piece + 4] + u * m[piece + 5]));
}

/** Slope at x of the monotone cubic at `table`. */
export function cubicSlopeAt(m: Memory, table: i32, x: number): number {
  const piece = cubicPiece(m, table, x);
  const u = x - m[piece + 1];
  return m[piece + 3] + u * (2 * m[piece + 4] + 3 * u * m[piece + 5]);
}

/**
 * A path is a cubic over even places, so that its piece is known without looking: before its pieces the x at which the
 * first begins, pieces per x, number of the last. First and last piece are straight and go on for ever.
 */
const EVEN_HEAD = 3;
/** Coefficients of a piece: value = a + u·(b + u·(c + u·d)), u from 0 to 1. */
const EVEN = 4;

/**
 * Axle travel that an element with a constant ratio would need to close as far as this one has at `travel`: its path over
 * its ratio at ride height. How that changes with travel is left in `LEVER`: what speed and force are multiplied by.
 * @param path – place of the table; 0 for none, and then it is the travel itself
 */
export function followPath(m: Memory, path: i32, travel: number): number {
  if (path === 0) {
    m[at.LEVER] = 1;
    return travel;
  }
  const place = (travel - m[path]) * m[path + 1];
  const piece = whole(Math.max(Math.min(place, m[path + 2]), 0));
  const i = path + EVEN_HEAD + EVEN * piece;
  const u = place - piece;
  const b = m[i + 1];
  const c = m[i + 2];
  const d = u * m[i + 3];
  m[at.LEVER] = m[path + 1] * (b + u * (2 * c + 3 * d));
  return m[i] + u * (b + u * (c + d));
}

/** The same for a side, its change left in its own place. The compiled kernel follows both sides at once: prelude.as. */
export function followOnSide(m: Memory, path: i32, travel: number, side: i32): number {
  const along = followPath(m, path, travel);
  m[at.SIDE_LEVER + side] = m[at.LEVER];
  return along;
}

/** Area under the monotone cubic at `table`, from its first point to x beyond it. */
export function cubicAreaTo(m: Memory, table: i32, x: number): number {
  let area: number = 0;
  let piece = table;
  while (x >= m[piece]) {
    area += areaOf(m, piece, m[piece] - m[piece + 1]);
    piece += CUBIC;
  }
  return area + areaOf(m, piece, x - m[piece + 1]);
}

function areaOf(m: Memory, piece: i32, u: number): number {
  return u * (m[piece + 2] + u * (m[piece + 3] / 2 + u * (m[piece + 4] / 3 + (u * m[piece + 5]) / 4)));
}

/** Most pieces that reach into a cell: from that at its start to the one behind that at its end, which may be a rounding away. */
function piecesPerCell({ firstPiece }: PiecewiseLinear): number {
  let most = 1;
  for (let k = 1; k < firstPiece.length; k += 1) most = Math.max(most, firstPiece[k] - firstPiece[k - 1]);
  return most + 3;
}

/** Writes straight lines at a place. @returns the place behind */
export function writeLinear(m: Memory, table: i32, line: PiecewiseLinear): i32 {
  const { x, slope, offset, firstPiece, cellsPerX } = line;
  const last = slope.length - 1;
  const pieces = piecesPerCell(line);
  m[table] = x[0];
  m[table + 1] = cellsPerX;
  m[table + 2] = firstPiece.length - 1;
  m[table + 3] = LINE * pieces;
  m.fill(0, table + 4, table + LINE_HEAD);
  let place = table + LINE_HEAD;
  for (const [cell, found] of firstPiece.entries()) {
    // A point on the edge of a cell may lie before or behind it, by rounding: the piece before it counts as well.
    const first = found > 0 && x[found] >= x[0] + (cell - 1e-6) / cellsPerX ? found - 1 : found;
    for (let k = first; k < first + pieces; k += 1) {
      const piece = Math.min(k, last);
      m[place] = piece === last ? Infinity : x[piece + 1];
      m[place + 1] = slope[piece];
      m[place + 2] = offset[piece];
      m[place + 3] = piece === 0 ? -Infinity : x[piece];
      place += LINE;
    }
  }
  return place;
}

/** Writes a cubic at a place, with the straight lines before its first and behind its last point. @returns the place behind */
export function writeCubic(m: Memory, table: i32, cubic: MonotoneCubic): i32 {
  const { x, y, b, c, d, endSlope } = cubic;
  const last = c.length;
  const write = (piece: i32, values: readonly number[]): i32 => {
    m.set(values, piece);
    return piece + CUBIC;
  };
  let piece = write(table, [x[0], x[0], y[0], b[0], 0, 0]);
  for (let k = 0; k < last; k += 1) piece = write(piece, [x[k + 1], x[k], y[k], b[k], c[k], d[k]]);
  return write(piece, [Infinity, x[last], y[last], endSlope, 0, 0]);
}

/** Writes a path, whose places are even. @returns the place behind */
export function writePath(m: Memory, path: i32, { x, y, b, c, d, endSlope }: MonotoneCubic): i32 {
  const h = x[1] - x[0];
  const last = c.length;
  m[path] = x[0] - h;
  m[path + 1] = 1 / h;
  m[path + 2] = last + 1;
  let place = path + EVEN_HEAD;
  const write = (values: readonly number[]): void => {
    m.set(values, place);
    place += EVEN;
  };
  write([y[0] - b[0] * h, b[0] * h, 0, 0]);
  for (let k = 0; k < last; k += 1) write([y[k], b[k] * h, c[k] * h ** 2, d[k] * h ** 3]);
  write([y[last], endSlope * h, 0, 0]);
  return place;
}

/** Places that a table takes. */
export const linearSize = (line: PiecewiseLinear): number =>
  LINE_HEAD + line.firstPiece.length * LINE * piecesPerCell(line);
export const cubicSize = ({ c }: MonotoneCubic): number => CUBIC * (c.length + 2);
export const pathSize = ({ c }: MonotoneCubic): number => EVEN_HEAD + EVEN * (c.length + 2);
