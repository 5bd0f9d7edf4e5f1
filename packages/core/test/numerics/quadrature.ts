/** Places and weights of Gauss and Legendre's rule with five points on −1 … 1 (Abramowitz and Stegun, 25.4, from memory). */
const PLACES = [0, 0.5384693101056831, 0.906179845938664];
const WEIGHTS = [0.5688888888888889, 0.47862867049936647, 0.23692688505618908];

/** ∫ f from a to b, by five-point Gauss in even pieces: exact on polynomials of order nine inside a piece. */
export function integrate(f: (x: number) => number, a: number, b: number, pieces = 1): number {
  const half = (b - a) / pieces / 2;
  let sum = 0;
  for (let i = 0; i < pieces; i += 1) {
    const middle = a + (2 * i + 1) * half;
    sum += WEIGHTS[0] * f(middle);
    for (let k = 1; k < 3; k += 1) {
      sum += WEIGHTS[k] * (f(middle - half * PLACES[k]) + f(middle + half * PLACES[k]));
    }
  }
  return sum * half;
}

/** Slope of f at x by the fourth-order central difference. */
export function slopeOf(f: (x: number) => number, x: number, h: number): number {
  return (8 * (f(x + h) - f(x - h)) - (f(x + 2 * h) - f(x - 2 * h))) / (12 * h);
}
