import { ATMOSPHERE } from '../elements/gas-chamber.ts';
import { cellGasStress } from './cellular.ts';
import { latticeLaw } from './lattice-law.ts';
import type { LayerLaw } from './layer-law.ts';

/**
 * Solid that microcellular polyurethane foams are made of [kg/m³], and its Young's modulus, least to most [Pa].
 * @source from memory (check values 3.10); nobody prints it on a stop
 */
export const FOAM_SOLID = 1175;
export const FOAM_MODULUS: readonly [number, number] = [10e6, 50e6];
/** Relative densities for which a band is said at all; the laws themselves are for less than `CELLS_TO`. */
export const FOAM_DENSITIES: readonly [number, number] = [0.1, 0.6];
export const CELLS_TO = 0.3;

/**
 * The least that foam gives: open cells, E = E_s·ρ², whose walls fold at 0.05·E_s·ρ², closed when all that was air is gone,
 * at a strain of 1 − ρ.
 *
 * @source Gibson and Ashby, Cellular Solids, 2nd ed. 1997, chapter 5 (from memory)
 */
export const leastFoam = (solidModulus: number, density: number): LayerLaw =>
  latticeLaw(
    // σ comes to E ÷ softening: 0.05·E.
    { structure: 'open-foam', solidModulus, densityPower: 0, softening: 20, closing: 1 },
    density,
  );

/** Strain at which dense cells close: 1 − 1.4·ρ. @source Gibson and Ashby (from memory) */
export const closingStrain = (density: number): number => 1 - 1.4 * density;

/**
 * The most: closed cells with a fifth of the solid in their faces, walls that do not fold, closed at 1 − 1.4·ρ, and their gas
 * pressed at constant temperature beside them.
 *
 * @source Gibson and Ashby, as above
 */
export function mostFoam(solidModulus: number, density: number): LayerLaw {
  const walls = latticeLaw(
    { structure: 'closed-foam', solidModulus, densityPower: 0, softening: 0, closing: 1.4 },
    density,
  );
  const air = 1 - density;
  return {
    stress: (strain) => walls.stress(strain) + cellGasStress(ATMOSPHERE, strain, density),
    slope: (strain) => walls.slope(strain) + (ATMOSPHERE * air) / (air - strain) ** 2,
    energy: (strain) => walls.energy(strain) - ATMOSPHERE * (strain + air * Math.log(1 - strain / air)),
    locksAt: walls.locksAt,
  };
}
