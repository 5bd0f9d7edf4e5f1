/**
 * Straight lines between points, end slopes carried on. The form in which a shock is measured:
 * a force at a few speeds, and nothing known in between.
 */
export interface PiecewiseLinear {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Slope of each piece, and its value at x = 0 when carried on to there. */
  readonly slope: Float64Array;
  readonly offset: Float64Array;
  /** First piece that reaches into each of even cells over the table, so that a look-up starts at the right place. */
  readonly firstPiece: Uint8Array;
  readonly cellsPerX: number;
}

/** Even cells of the look-up: about four to a point, so that a cell seldom holds a point. */
const CELLS_PER_POINT = 4;

/** @throws on fewer than two points or x that does not rise: input was checked where it was read */
export function piecewiseLinear(x: readonly number[], y: readonly number[]): PiecewiseLinear {
  const last = x.length - 1;
  if (last < 1 || y.length !== x.length)
    throw new Error('piecewiseLinear: needs two points or more, as many y as x');
  const slope = new Float64Array(last);
  for (let i = 0; i < last; i += 1) {
    if (!(x[i + 1] > x[i])) throw new Error(`piecewiseLinear: x must rise, at index ${i + 1}`);
    slope[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
  }
  const offset = slope.map((k, i) => y[i] - k * x[i]);
  const cells = Math.min(4096, CELLS_PER_POINT * (last + 1));
  const cellsPerX = cells / (x[last] - x[0]);
  const firstPiece = new Uint8Array(cells);
  for (let cell = 0, piece = 0; cell < cells; cell += 1) {
    while (piece < last - 1 && x[piece + 1] <= x[0] + cell / cellsPerX) piece += 1;
    firstPiece[cell] = piece;
  }
  return { x: Float64Array.from(x), y: Float64Array.from(y), slope, offset, firstPiece, cellsPerX };
}

/** Value at x; beyond the ends by the slope of the end piece. */
export function linearValue(table: PiecewiseLinear, x: number): number {
  const { slope, offset, firstPiece } = table;
  const knots = table.x;
  const cell = (x - knots[0]) * table.cellsPerX;
  const lastPiece = slope.length - 1;
  let i = 0;
  if (cell >= firstPiece.length) i = lastPiece;
  else if (cell > 0) {
    i = firstPiece[cell | 0];
    while (i < lastPiece && x >= knots[i + 1]) i += 1;
  }
  return offset[i] + slope[i] * x;
}
