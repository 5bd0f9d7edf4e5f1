import { gaussIntegral } from '../numerics/gauss.ts';
import { relativeModulus, type Structure } from './cellular.ts';
import type { LayerLaw } from './layer-law.ts';

/**
 * What a printed elastomer lattice is made of, in four numbers. Nobody publishes them for a home printer, so each is a
 * band until coupons were pressed (`coupon-fit`).
 */
export interface LatticeMaterial {
  readonly structure: Structure;
  /** Young's modulus of the printed solid, small strain [Pa]. */
  readonly solidModulus: number;
  /**
   * Correction of the density law: the modulus is multiplied by (ρ/ρ_mid)^power. 0 where the computed scaling holds;
   * a printer whose thin walls come out thick has less than 0.
   */
  readonly densityPower: number;
  /** How much the walls soften as they bend and fold: 0 not at all; stress before closing is E·(1 − e^(−a·ε))/a. */
  readonly softening: number;
  /** Cells are closed at strain 1 − closing·ρ. */
  readonly closing: number;
}

/** Density about which the density law turns: the middle of what a printer makes. */
export const MIDDLE_DENSITY = 0.35;

/**
 * A slice of printed lattice under compression:
 *
 *     σ = E·s(ε) ÷ (1 − ε/ε_c),   E = E_solid·r(ρ)·(ρ/ρ_mid)^p,   s = (1 − e^(−a·ε))/a,   ε_c = 1 − c·ρ
 *
 * Rising in strain for every a, and at each strain rising in ρ: so a softer slice always gives more, and the density
 * that answers a wanted curve is unique.
 *
 * @param density – relative density 0 … 0.7
 * @validity first loading at room temperature, slowly. Later strokes are softer (a printed elastomer settles over the
 *   first ten or so), cold is much stiffer; no buckling of the whole body.
 * @source stiffness: `relativeModulus`; the shape between bending and closed cells is a choice of this house with the
 *   limits of Gibson and Ashby, Cellular Solids, 2nd ed. 1997, chapter 5 (from memory): E at first, ε_c at last
 */
export function latticeLaw(material: LatticeMaterial, density: number): LayerLaw {
  const { softening: a } = material;
  const modulus = latticeModulus(material, density);
  const locksAt = 1 - material.closing * density;
  // Below this the two agree to rounding, and the quotient would be one of rounding errors.
  const bent = (strain: number) => (a < 1e-9 ? strain : -Math.expm1(-a * strain) / a);
  const stress = (strain: number) => (modulus * bent(strain)) / (1 - strain / locksAt);
  return {
    stress,
    slope(strain) {
      const open = 1 - strain / locksAt;
      return (modulus * Math.exp(-a * strain)) / open + (modulus * bent(strain)) / (locksAt * open * open);
    },
    energy: (strain) => gaussIntegral(stress, 0, strain, 8),
    locksAt,
  };
}

/** Young's modulus of the lattice at small strain [Pa]. */
export function latticeModulus(
  { structure, solidModulus, densityPower }: LatticeMaterial,
  density: number,
): number {
  return solidModulus * relativeModulus(structure, density) * (density / MIDDLE_DENSITY) ** densityPower;
}
