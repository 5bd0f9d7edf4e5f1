import { i1OverI0 } from '../numerics/bessel.ts';

/** Ends of a round body that cannot widen. */
export type HeldEnds = 0 | 1 | 2;

/**
 * How much stiffer a round body is whose ends are held from widening, E_c ÷ E, for any Poisson's ratio:
 *
 *     E_c = (λ + 2G) − 2λ²·I₁(βR) ÷ (R·((λ + 2G)·β·I₀(βR) − 2G·I₁(βR)/R)),   β² = 12G ÷ ((λ + 2G)·h²)
 *
 * from planes that stay plane and sides that bulge as a parabola; h is the height between two held ends. A body held at
 * one end and slipping at the other is half of one twice as high that is held at both.
 *
 * @param poisson – 0 ≤ ν < 0.5
 * @param ends – how many of the two are held
 * @invariant 1 for a tall body, (1 − ν)/((1 + ν)(1 − 2ν)) for a flat one, between them for all others
 * @validity small strain. Cells that fold no longer widen: the hold then fades
 * @source the assumptions are those of Tsai and Lee, Int. J. Solids Struct. 35 (1998) 3053 (title from memory); worked out
 *   for this house, checked against finite elements
 */
export function heldFactor(poisson: number, radius: number, height: number, ends: HeldEnds): number {
  if (ends === 0) return 1;
  const h = ends === 2 ? height : 2 * height;
  const shear = 1 / (2 * (1 + poisson));
  const lame = poisson / ((1 + poisson) * (1 - 2 * poisson));
  const stiff = lame + 2 * shear;
  const x = (radius * Math.sqrt((12 * shear) / stiff)) / h;
  const ratio = i1OverI0(x) / x;
  return stiff - (2 * lame * lame * ratio) / (stiff - 2 * shear * ratio);
}
