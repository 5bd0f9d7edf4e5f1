import type { SampledSide } from '../course/sampled.ts';
import * as at from './layout.ts';
import { type i32, type Memory, placeAt, whole } from './memory.ts';

/** Coefficients of a piece of the ground: height = a + u·(b + u·(c + u·d)), u from 0 to 1 between two samples. */
const PIECE = 4;

/**
 * Reads the ground at a distance of one side into `GROUND_HEIGHT` [m] and `GROUND_RISE`, how fast it rises under a tyre
 * [m/s]: the cubic of `course/sampled`.
 */
export function readGround(m: Memory, side: i32, distance: number): void {
  const place = (distance - m[at.ORIGIN + side]) * m[at.PIECES_PER_METRE + side];
  const inside = Math.max(Math.min(place, m[at.LAST_PIECE + side]), 0);
  const piece = whole(inside);
  const i = placeAt(m, at.PIECES + side) + PIECE * piece;
  const u = inside - piece;
  const b = m[i + 1];
  const c = m[i + 2];
  const d = u * m[i + 3];
  m[at.GROUND_HEIGHT] = m[i] + u * (b + u * (c + d));
  m[at.GROUND_RISE] = m[at.PIECES_PER_SECOND + side] * (b + u * (2 * c + 3 * d));
}

/** Reads the ground under all tyres at the time of a state. The compiled kernel reads both sides at once: prelude.as. */
export function readGrounds(m: Memory, state: i32): void {
  const driven = m[at.RIDE_SPEED] * m[state + at.TIME];
  for (let e: i32 = 0; e < 2; e += 1) {
    readUnderAxle(m, state + 2 * e, driven - m[at.FRONT + e * at.AXLE_SIZE + at.BEHIND_FRONT]);
  }
}

function readUnderAxle(m: Memory, left: i32, distance: number): void {
  for (let side: i32 = 0; side < 2; side += 1) {
    readGround(m, side, distance);
    m[at.HEIGHT_UNDER + left + side] = m[at.GROUND_HEIGHT];
    m[at.RISE_UNDER + left + side] = m[at.GROUND_RISE];
  }
}

/** The same under the tyre of a corner at a time [s]. */
export function readGroundUnder(m: Memory, corner: i32, time: number): void {
  const axle = at.FRONT + (corner >> 1) * at.AXLE_SIZE;
  const distance = m[at.RIDE_SPEED] * time - m[axle + at.BEHIND_FRONT];
  readGround(m, corner & 1, distance);
}

const written = new WeakMap<SampledSide, Float64Array>();

/** Pieces of a side, made once for all rides over it: the flat before it, those between samples, the flat behind. */
export function groundPieces(side: SampledSide): Float64Array {
  const before = written.get(side);
  if (before) return before;
  const { samples, step } = side;
  const last = samples.length - 2;
  const pieces = new Float64Array(PIECE * (samples.length / 2 + 1));
  pieces[0] = samples[0];
  for (let i = 0; i < last; i += 2) {
    const rise = samples[i + 2] - samples[i];
    const m0 = step * samples[i + 1];
    const m1 = step * samples[i + 3];
    pieces.set([samples[i], m0, 3 * rise - 2 * m0 - m1, m0 + m1 - 2 * rise], PIECE * (i / 2 + 1));
  }
  pieces[pieces.length - PIECE] = samples[last];
  written.set(side, pieces);
  return pieces;
}

/** Writes the ground of a side (0 left, 1 right), its pieces at a place. @returns the place behind */
export function writeGround(m: Memory, which: i32, side: SampledSide, speed: number, place: i32): i32 {
  const pieces = groundPieces(side);
  m[at.ORIGIN + which] = side.origin - side.step;
  m[at.PIECES_PER_METRE + which] = 1 / side.step;
  m[at.PIECES_PER_SECOND + which] = speed / side.step;
  m[at.LAST_PIECE + which] = pieces.length / PIECE - 1;
  m[at.PIECES + which] = place;
  m[at.SHIFTED_PIECES + which] = place + at.SHIFT;
  m.set(pieces, place);
  return place + pieces.length;
}
