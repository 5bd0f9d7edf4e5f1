/** Step of the sum below. */
const STEP = 0.25;
/** As far as cosh t = NOTHING/x for the smallest x that is summed. */
const COSH = Float64Array.from({ length: 96 }, (_, k) => Math.cosh(k * STEP));
/** exp(−NOTHING) is below the last digit. */
const NOTHING = 40;

/**
 * x·K₁(x), K₁ being the modified Bessel function of the second kind: 1 at zero, falling to 0.
 * From K₁(x) = ∫₀^∞ exp(−x·cosh t)·cosh t dt by the trapezoidal rule, which on such an integrand is nearly exact.
 *
 * @param x – not negative
 * @returns within 1e-15; so the small values beyond x = 10 have fewer digits
 * @source NIST Digital Library of Mathematical Functions, 10.32.9 (from memory; checked against SciPy)
 */
export function xTimesK1(x: number): number {
  if (x >= 700) return 0;
  // Below this the terms left out, x²/2·ln x, are no longer seen.
  if (x < 1e-8) return 1;
  const end = 1 + NOTHING / x;
  let sum = 0.5 * Math.exp(-x);
  for (let k = 1; k < COSH.length && COSH[k] < end; k += 1) sum += COSH[k] * Math.exp(-x * COSH[k]);
  return x * STEP * sum;
}

/**
 * I₁(x) ÷ I₀(x), modified Bessel functions of the first kind: x/2 near zero, towards 1 for large x. By the continued
 * fraction 1/(2/x + 1/(4/x + 1/(6/x + …))), from as far in as terms count.
 *
 * @param x – not negative
 * @source NIST Digital Library of Mathematical Functions, 10.33.1 (from memory; checked against SciPy)
 */
export function i1OverI0(x: number): number {
  if (x < 1e-8) return x / 2;
  let tail = 0;
  for (let k = Math.ceil(30 + 2 * x); k >= 1; k -= 1) tail = 1 / ((2 * k) / x + tail);
  return tail;
}
