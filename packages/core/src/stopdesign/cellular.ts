/**
 * What the share of solid in a cellular body does to its stiffness and its plateau. Relative density ρ is the volume
 * of solid ÷ volume of body, 0 … 1.
 *
 * Every relation here is a fit to scattered data: shown as a band, and replaced by a press test of a coupon where one
 * was made.
 */
export const STRUCTURES = ['sheet-gyroid', 'open-foam', 'closed-foam'] as const;
export type Structure = (typeof STRUCTURES)[number];

/**
 * Young's modulus ÷ that of the solid, small strain.
 *
 * `sheet-gyroid`: cubic through periodic homogenisation of the sheet |φ| ≤ t at ρ 0.15 … 0.6, ν 0.3, ±0.4 % of the
 * computed values, which are themselves 3 % (mesh). Not for more than ρ 0.7: at 1 it ends 7 % short of the solid.
 * `open-foam`: ρ². `closed-foam`: φ²ρ² + (1 − φ)ρ with φ = 0.8 of the solid in the edges, gas left out.
 *
 * @source homogenisation: computed for this house, shared check values 10.4; foams: Gibson and Ashby, Cellular Solids,
 *   2nd ed. 1997, chapter 5 (from memory; first two terms read at the NIST page on closed cells)
 */
export function relativeModulus(structure: Structure, density: number): number {
  switch (structure) {
    case 'sheet-gyroid':
      return density * (0.2989 + density * (0.1221 + density * 0.5052));
    case 'open-foam':
      return density * density;
    case 'closed-foam':
      return EDGES * EDGES * density * density + (1 - EDGES) * density;
  }
}

/** Share of the solid in the edges of a closed cell. */
const EDGES = 0.8;

/** Gas in closed cells: p₀·ε ÷ (1 − ε − ρ), isothermal, no widening [Pa]. @source Gibson and Ashby (from memory) */
export function cellGasStress(pressure: number, strain: number, density: number): number {
  return (pressure * strain) / (1 - strain - density);
}
