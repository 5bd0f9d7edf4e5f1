/**
 * Straight lines between points, end slopes carried on. The form in which a shock is measured:
 * a force at a few speeds, and nothing known in between.
 */
export interface PiecewiseLinear {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Slope of each piece. */
  readonly slope: Float64Array;
}

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
  return { x: Float64Array.from(x), y: Float64Array.from(y), slope };
}

/** Value at x; beyond the ends by the slope of the end piece. */
export function linearValue(table: PiecewiseLinear, x: number): number {
  let i = table.slope.length - 1;
  while (i > 0 && x < table.x[i]) i -= 1;
  return table.y[i] + table.slope[i] * (x - table.x[i]);
}
