/** The bow of a line that is longer than the distance of its ends. */
export interface SlackLoop {
  /** Radius of a circular arc [m]: the gentlest bend that this length and distance allow, ends led along it. */
  readonly arcRadius: number;
  /** How far that arc stands off the straight line [m]. */
  readonly arcSag: number;
  /** Tightest radius when the ends are free to turn [m]: what an even, springy hose does by itself, at its middle. */
  readonly freeRadius: number;
}

/**
 * Bow of a slack hose, between two stated models.
 *
 * *Arc*: chord c = 2R·sin(ℓ/2R). *Free ends* (the elastica): c/ℓ = 2E(k)/K(k) − 1, R = ℓ ÷ (4k·K(k)); its middle is
 * bent tighter than an arc, by π/√6 when nearly straight and by 1.34 when its ends meet.
 *
 * @param length – free length ℓ [m], > 0
 * @param distance – of its ends c [m], ≥ 0
 * @returns infinite radii for a line that is taut
 * @validity plane bow without weight, twist and end fittings; fittings that point the wrong way bend it tighter than
 * either, so the smaller radius is a hope and no promise
 * @source circular arc: closed form. Elastica: Timoshenko and Gere, Theory of Elastic Stability, 2nd ed., 2.7 (from
 * memory)
 */
export function slackLoop(length: number, distance: number): SlackLoop {
  const share = distance / length;
  if (share >= 1)
    return { arcRadius: Number.POSITIVE_INFINITY, arcSag: 0, freeRadius: Number.POSITIVE_INFINITY };
  // sin x ÷ x falls from 1 to 0 on 0…π.
  const half = root((x) => Math.sin(x) / x - share, 0, Math.PI);
  const arcRadius = length / (2 * half);
  const square = root(
    (m) => {
      const { first, second } = completeElliptic(m);
      return (2 * second) / first - 1 - share;
    },
    0,
    CLOSED,
  );
  return {
    arcRadius,
    arcSag: arcRadius * (1 - Math.cos(half)),
    freeRadius: length / (4 * Math.sqrt(square) * completeElliptic(square).first),
  };
}

/** k² past the elastica whose ends meet (0.8261…): no distance is smaller than none. */
const CLOSED = 0.8262;

/** Root of a falling function, by halving: rounding of a double is reached in sixty. */
function root(falling: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (falling(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Complete elliptic integrals of the first and second kind of the parameter m = k², 0 ≤ m < 1.
 *
 * @source arithmetic-geometric mean: Abramowitz and Stegun 17.6.3 and 17.6.4 (from memory)
 */
function completeElliptic(m: number): { readonly first: number; readonly second: number } {
  let [a, b, sum, weight] = [1, Math.sqrt(1 - m), m / 2, 0.5];
  while (a - b > 1e-15 * a) {
    const c = (a - b) / 2;
    [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
    weight *= 2;
    sum += weight * c * c;
  }
  const first = Math.PI / (2 * a);
  return { first, second: first * (1 - sum) };
}
