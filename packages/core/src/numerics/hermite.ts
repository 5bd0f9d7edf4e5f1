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

/**
 * Value at θ of the quintic with values, slopes and curvatures at both ends of an interval of length h: what is known of a
 * motion at the ends of a step.
 * @source Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, II.6, Hermite interpolation (from memory)
 */
export function quinticValue(
  y0: number,
  m0: number,
  c0: number,
  y1: number,
  m1: number,
  c1: number,
  h: number,
  theta: number,
): number {
  const bend = h * h * c0;
  const rise = y1 - y0 - h * m0 - bend / 2;
  const turn = h * (m1 - m0) - bend;
  const change = h * h * c1 - bend;
  const third = 10 * rise - 4 * turn + change / 2;
  const fourth = -15 * rise + 7 * turn - change;
  const fifth = 6 * rise - 3 * turn + change / 2;
  return y0 + theta * (h * m0 + theta * (bend / 2 + theta * (third + theta * (fourth + theta * fifth))));
}
