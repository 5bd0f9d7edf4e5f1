/**
 * Monotone cubic interpolation: no overshoot between points, so a force curve that rises stays rising.
 *
 * Slopes by Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) 238, in the weighted harmonic form of
 * Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300; ends by the three-point rule that keeps shape
 * (Moler, Numerical Computing with MATLAB, 2004, section 3.6). Checked against SciPy's PchipInterpolator.
 *
 * Between x[i] and x[i+1], with u = x − x[i]: y = y[i] + u·(b[i] + u·(c[i] + u·d[i])).
 * Beyond the last point the curve goes on with its end slope; below the first point with its first slope.
 *
 * @invariant y is monotone wherever the points are; y and its slope are continuous.
 */
export interface MonotoneCubic {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly b: Float64Array;
  readonly c: Float64Array;
  readonly d: Float64Array;
  /** Integral of y from x[0] to x[i]. */
  readonly integral: Float64Array;
  readonly endSlope: number;
}

/**
 * @param x – strictly rising, at least two points
 * @param y – one value a point
 * @throws on fewer than two points or x that does not rise: input was checked where it was read
 */
export function monotoneCubic(x: readonly number[], y: readonly number[]): MonotoneCubic {
  const last = x.length - 1;
  if (last < 1 || y.length !== x.length)
    throw new Error('monotoneCubic: needs two points or more, as many y as x');
  const step = new Float64Array(last);
  const rise = new Float64Array(last);
  for (let i = 0; i < last; i += 1) {
    step[i] = x[i + 1] - x[i];
    if (!(step[i] > 0)) throw new Error(`monotoneCubic: x must rise, at index ${i + 1}`);
    rise[i] = (y[i + 1] - y[i]) / step[i];
  }
  return cubicBySlopes(x, y, slopesAt(step, rise));
}

/** The cubic through points with slopes that are known: as monotone as those make it. */
export function cubicBySlopes(
  x: readonly number[],
  y: readonly number[],
  slope: ArrayLike<number>,
): MonotoneCubic {
  const last = x.length - 1;
  const cubic = {
    x: Float64Array.from(x),
    y: Float64Array.from(y),
    b: Float64Array.from(slope),
    c: new Float64Array(last),
    d: new Float64Array(last),
    integral: new Float64Array(last + 1),
    endSlope: slope[last],
  };
  for (let i = 0; i < last; i += 1) {
    const h = x[i + 1] - x[i];
    const rise = (y[i + 1] - y[i]) / h;
    cubic.c[i] = (3 * rise - 2 * slope[i] - slope[i + 1]) / h;
    cubic.d[i] = (slope[i] + slope[i + 1] - 2 * rise) / (h * h);
    cubic.integral[i + 1] =
      cubic.integral[i] + h * (y[i] + h * (slope[i] / 2 + h * (cubic.c[i] / 3 + (h * cubic.d[i]) / 4)));
  }
  return cubic;
}

function slopesAt(step: Float64Array, rise: Float64Array): Float64Array {
  const last = step.length;
  const slope = new Float64Array(last + 1);
  if (last === 1) return slope.fill(rise[0]);
  for (let i = 1; i < last; i += 1) {
    const before = rise[i - 1];
    const after = rise[i];
    if (before * after <= 0) continue;
    const w1 = 2 * step[i] + step[i - 1];
    const w2 = step[i] + 2 * step[i - 1];
    slope[i] = (w1 + w2) / (w1 / before + w2 / after);
  }
  slope[0] = endSlope(step[0], step[1], rise[0], rise[1]);
  slope[last] = endSlope(step[last - 1], step[last - 2], rise[last - 1], rise[last - 2]);
  return slope;
}

/** Three-point end slope, cut back so that the end piece keeps its shape. */
function endSlope(nearStep: number, farStep: number, nearRise: number, farRise: number): number {
  const slope = ((2 * nearStep + farStep) * nearRise - nearStep * farRise) / (nearStep + farStep);
  if (slope * nearRise <= 0) return 0;
  if (nearRise * farRise <= 0 && Math.abs(slope) > 3 * Math.abs(nearRise)) return 3 * nearRise;
  return slope;
}

/** Index of the piece that holds x, 0 … pieces − 1; points outside belong to the end pieces. */
function pieceOf(cubic: MonotoneCubic, x: number): number {
  let i = cubic.c.length - 1;
  while (i > 0 && x < cubic.x[i]) i -= 1;
  return i;
}

/** Value at x. */
export function cubicValue(cubic: MonotoneCubic, x: number): number {
  const last = cubic.c.length;
  if (x >= cubic.x[last]) return cubic.y[last] + cubic.endSlope * (x - cubic.x[last]);
  const u = x - cubic.x[0];
  if (u <= 0) return cubic.y[0] + cubic.b[0] * u;
  const i = pieceOf(cubic, x);
  const v = x - cubic.x[i];
  return cubic.y[i] + v * (cubic.b[i] + v * (cubic.c[i] + v * cubic.d[i]));
}

/** Slope at x. */
export function cubicSlope(cubic: MonotoneCubic, x: number): number {
  const last = cubic.c.length;
  if (x >= cubic.x[last]) return cubic.endSlope;
  if (x <= cubic.x[0]) return cubic.b[0];
  const i = pieceOf(cubic, x);
  const v = x - cubic.x[i];
  return cubic.b[i] + v * (2 * cubic.c[i] + 3 * v * cubic.d[i]);
}

/** Integral from the first point to x. For a force curve: the energy stored. */
export function cubicIntegral(cubic: MonotoneCubic, x: number): number {
  const last = cubic.c.length;
  const beyond = x - cubic.x[last];
  if (beyond >= 0) return cubic.integral[last] + beyond * (cubic.y[last] + (beyond * cubic.endSlope) / 2);
  const u = x - cubic.x[0];
  if (u <= 0) return u * (cubic.y[0] + (u * cubic.b[0]) / 2);
  const i = pieceOf(cubic, x);
  const v = x - cubic.x[i];
  return (
    cubic.integral[i] + v * (cubic.y[i] + v * (cubic.b[i] / 2 + v * (cubic.c[i] / 3 + (v * cubic.d[i]) / 4)))
  );
}

/**
 * Where a rising curve reaches a value: the inverse, by bisection inside the piece (exact to rounding).
 * @returns x; beyond the last point by the end slope; NaN when the end slope is zero and the value is above.
 */
export function cubicInverse(cubic: MonotoneCubic, value: number): number {
  const last = cubic.c.length;
  if (value >= cubic.y[last]) {
    if (value === cubic.y[last]) return cubic.x[last];
    return cubic.endSlope > 0 ? cubic.x[last] + (value - cubic.y[last]) / cubic.endSlope : Number.NaN;
  }
  if (value <= cubic.y[0]) return cubic.x[0];
  let low = cubic.x[0];
  let high = cubic.x[last];
  for (let k = 0; k < 200 && high - low > 1e-15 * Math.abs(high); k += 1) {
    const mid = (low + high) / 2;
    if (mid === low || mid === high) break;
    if (cubicValue(cubic, mid) < value) low = mid;
    else high = mid;
  }
  return (low + high) / 2;
}
