import { gaussIntegral } from '../numerics/gauss.ts';
import type { LayerLaw } from './layer-law.ts';
import { neoHookeanLaw } from './layer-law.ts';

/** A printed solid elastomer hardly changes its volume. */
const INCOMPRESSIBLE = 0.5;
/** Poisson's ratio of a sheet lattice at small strain, as far as it counts here (computed for this house, about 0.3). */
export const LATTICE_POISSON = 0.3;

/**
 * Stress at which a long thin tube folds into rings by itself [Pa]: σ = E·t ÷ (R·√(3(1 − ν²))).
 *
 * @param thickness, radius – t, R of its wall, same unit
 * @source Timoshenko and Gere, Theory of Elastic Stability, 2nd ed. 1961, § 11.1 (from memory; checked against the least
 *   force over all wavelengths)
 */
export const tubeFoldingStress = (
  modulus: number,
  thickness: number,
  radius: number,
  poisson = INCOMPRESSIBLE,
): number => (modulus * thickness) / (radius * Math.sqrt(3 * (1 - poisson * poisson)));

/**
 * Share of that stress which tubes of usual roundness bear: 1 − 0.901·(1 − e^(−√(R/t)/16)).
 * @source Weingarten, Seide and Peterson, NASA SP-8007, 1968 (from memory)
 */
export const foldingKnockDown = (thickness: number, radius: number): number =>
  1 + 0.901 * Math.expm1(-Math.sqrt(radius / thickness) / 16);

/**
 * Stress at which a flat sheet on a deep soft core wrinkles [Pa]:
 *
 *     σ = 3·E_s^(1/3)·E_c^(2/3) ÷ (12·(3 − ν_c)²·(1 + ν_c)²·(1 − ν_s²))^(1/3)
 *
 * the least, over all wavelengths, of bending the sheet and of moving the half space behind it.
 *
 * @param sheet, core – Young's moduli E_s, E_c [Pa]
 * @source Allen, Analysis and Design of Structural Sandwich Panels, 1969, chapter 8 (from memory; 1 − ν_s² is that of a
 *   wide sheet; checked against the least over all wavelengths)
 */
export function wrinklingStress(
  sheet: number,
  core: number,
  corePoisson = LATTICE_POISSON,
  sheetPoisson = INCOMPRESSIBLE,
): number {
  const held = 12 * (3 - corePoisson) ** 2 * (1 + corePoisson) ** 2 * (1 - sheetPoisson ** 2);
  return (3 * Math.cbrt(sheet * core * core)) / Math.cbrt(held);
}

export interface SkinWall {
  /** [m] */
  readonly thickness: number;
  /** Outer radius [m]. */
  readonly radius: number;
}

/**
 * A solid skin around a lattice, by itself: solid rubber with free sides until it folds, then no more than the stress
 * at which it does,
 *
 *     σ = s ÷ (1 + (s/f)⁴)^(1/4),   s = (E/3)·(λ⁻² − λ)
 *
 * f lies between that of an uneven tube without any core and that of a sheet which the lattice holds all over, or of an
 * even tube where that is more. The fourth power is a numerical device: it rounds the corner over which imperfect skins
 * fold.
 *
 * @param modulus – of the printed solid [Pa]
 * @param lattice – Young's modulus of what stands behind it [Pa]
 * @param hold – 0 … 1 from the least f to the most, in its logarithm
 * @invariant rises without end, but never above f
 * @validity first fold. Beyond it a skin that is not held may give less again, and every stroke creases it at the same place
 * @source the limits: `tubeFoldingStress` with `foldingKnockDown`, `wrinklingStress`; what lies between is of this house
 */
export function skinLaw(modulus: number, wall: SkinWall, lattice: number, hold: number): LayerLaw {
  const [least, most] = foldingBand(modulus, wall, lattice);
  const folds = least * (most / least) ** hold;
  const solid = neoHookeanLaw(modulus / 3);
  // Written out without powers: a search asks for this a million times.
  const kept = (strain: number): number => {
    const over = solid.stress(strain) / folds;
    return 1 + over * over * over * over;
  };
  const stress = (strain: number) => solid.stress(strain) / Math.sqrt(Math.sqrt(kept(strain)));
  // Beyond the corner the curve is flat: the corner gets pieces of its own.
  const corner = Math.min(folds / modulus, 0.5);
  return {
    stress,
    slope(strain) {
      const whole = kept(strain);
      return solid.slope(strain) / (whole * Math.sqrt(Math.sqrt(whole)));
    },
    energy: (strain) =>
      gaussIntegral(stress, 0, Math.min(strain, 3 * corner), 6) +
      (strain > 3 * corner ? gaussIntegral(stress, 3 * corner, strain, 3) : 0),
    locksAt: 1,
  };
}

/** Least and most stress at which the skin folds [Pa]. */
export function foldingBand(
  modulus: number,
  { thickness, radius }: SkinWall,
  lattice: number,
): readonly [number, number] {
  const middle = radius - thickness / 2;
  const tube = tubeFoldingStress(modulus, thickness, middle);
  return [foldingKnockDown(thickness, middle) * tube, Math.max(tube, wrinklingStress(modulus, lattice))];
}
