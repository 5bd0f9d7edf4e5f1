/**
 * Sealed gas behind a rod: a gas-charged stop, or the gas in a shock. The rod shortens the column of gas:
 *
 *     F = A·(p₀·(L ÷ (L − x))ⁿ − pₐ)
 *
 * A rod area [m²], p₀ absolute charge pressure with the rod out, L gas column [m] (volume of the gas ÷ rod area), x
 * stroke [m], n polytropic index (1 slow, 1.4 fast in air or nitrogen), pₐ the air outside.
 *
 * @validity 0 ≤ x < L; ideal gas, good to about 100 bar. Oil above a piston shortens L; temperature moves p₀. Heat that
 *   leaves between hits makes a slow loop that is not in it.
 * @source polytropic change of state, any thermodynamics text (from memory)
 */
export interface GasChamber {
  /** Rod area [m²]. */
  readonly area: number;
  /** Charge pressure with the rod fully out, gauge [Pa], ≥ 0. */
  readonly pressure: number;
  /** Gas volume ÷ rod area, rod fully out [m]: more than the stroke. */
  readonly column: number;
  /** 1 … 1.4 */
  readonly index: number;
}

/** Standard atmosphere [Pa]. */
export const ATMOSPHERE = 101_325;

/** Area of a round rod [m²]. */
export const rodArea = (diameter: number): number => (Math.PI * diameter ** 2) / 4;

/** Force that pushes the rod out [N]. At no stroke it is the preload: below it nothing moves. */
export function gasForce({ area, pressure, column, index }: GasChamber, stroke: number): number {
  return area * ((pressure + ATMOSPHERE) * (column / (column - stroke)) ** index - ATMOSPHERE);
}

/** d force ÷ d stroke [N/m]. */
export function gasRate({ area, pressure, column, index }: GasChamber, stroke: number): number {
  const left = column - stroke;
  return (area * index * (pressure + ATMOSPHERE) * (column / left) ** index) / left;
}

/** Work to push the rod in by `stroke` [J]: what is held. */
export function gasEnergy({ area, pressure, column, index }: GasChamber, stroke: number): number {
  const shrunk = Math.log(column / (column - stroke));
  // (e^{(n−1)·s} − 1) ÷ (n − 1) tends to s as n tends to 1; expm1 keeps it exact on the way.
  const swept = index === 1 ? shrunk : Math.expm1((index - 1) * shrunk) / (index - 1);
  return area * ((pressure + ATMOSPHERE) * column * swept - ATMOSPHERE * stroke);
}

/** Charge pressure after the whole part warmed or cooled at the same volume, gauge [Pa]: p absolute ∝ T absolute. */
export function pressureAt(pressure: number, fromCelsius: number, toCelsius: number): number {
  return ((pressure + ATMOSPHERE) * (toCelsius + 273.15)) / (fromCelsius + 273.15) - ATMOSPHERE;
}

/**
 * Force of oil driven through a hole, only while closing: F = factor·v² for v > 0, else 0.
 *
 * @param factor – [N·s²/m²] ≥ 0, for example a measured force ÷ the square of its speed
 * @invariant takes out factor·v³ ≥ 0, holds nothing
 * @validity turbulent flow through a sharp hole, a free valve on the way back
 * @source orifice equation, any text on hydraulics (from memory)
 */
export function oilForce(factor: number, speed: number): number {
  return speed > 0 ? factor * speed * speed : 0;
}

/** Points of the curve; evenly in the logarithm of what is left of the column, where it steepens. */
const POINTS = 32;
/** The preload comes in over this share of the stroke: a numerical device, since a step has no slope. */
export const NOSE_SHARE = 0.02;

/**
 * The gas stop as a press curve, force [N] over crush [m] from zero, rising, to be read as a monotone cubic. Within
 * 0.1 % of the law beyond the nose.
 *
 * @param stroke – usable stroke [m], less than the column
 * @invariant the preload is reached at `NOSE_SHARE` of the stroke and the law holds from there
 */
export function gasStopCurve(
  chamber: GasChamber,
  stroke: number,
): { readonly crush: readonly number[]; readonly force: readonly number[] } {
  const nose = NOSE_SHARE * stroke;
  // Close behind the nose a second point: the steep slope of the nose then reaches no further.
  const first = Math.log(chamber.column - 1.05 * nose);
  const last = Math.log(chamber.column - stroke);
  const crush = [0, nose];
  for (let i = 0; i <= POINTS; i += 1)
    crush.push(i === POINTS ? stroke : chamber.column - Math.exp(first + ((last - first) * i) / POINTS));
  return { crush, force: crush.map((x, i) => (i === 0 ? 0 : gasForce(chamber, x))) };
}
