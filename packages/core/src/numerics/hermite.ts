/**
 * Cubic through two ends with given slopes, θ from 0 to 1 over a length `h`.
 * The dense output of the stepper and the ground between two samples.
 */
export function hermiteValue(
  y0: number,
  m0: number,
  y1: number,
  m1: number,
  h: number,
  theta: number,
): number {
  const away = 1 - theta;
  const chord = y1 - y0;
  return away * y0 + theta * y1 - theta * away * ((1 - 2 * theta) * chord - h * (away * m0 - theta * m1));
}

/** Slope of the same cubic. */
export function hermiteSlope(
  y0: number,
  m0: number,
  y1: number,
  m1: number,
  h: number,
  theta: number,
): number {
  return (
    (6 * theta * (1 - theta) * (y1 - y0)) / h +
    (1 - theta) * (1 - 3 * theta) * m0 +
    theta * (3 * theta - 2) * m1
  );
}
