/** One end of the rig as two masses: body on its springs, axle on its tyres. SI. */
export interface TwoMass {
  readonly sprungMass: number;
  readonly unsprungMass: number;
  readonly springRate: number;
  readonly tyreRate: number;
}

/** Undamped angular frequencies [rad/s] of the two-mass model: body first, axle second. */
export interface Modes {
  readonly ride: number;
  readonly hop: number;
}

/**
 * Undamped modes, the roots of
 *
 *     ms·mu·ω⁴ − (ms·(ks + kt) + mu·ks)·ω² + ks·kt = 0
 *
 * @source e.g. Barton and Fieldhouse, Automotive Chassis Engineering, eqs 3.81–3.84
 */
export function undampedModes({ sprungMass, unsprungMass, springRate, tyreRate }: TwoMass): Modes {
  const product = sprungMass * unsprungMass;
  const half = (sprungMass * (springRate + tyreRate) + unsprungMass * springRate) / (2 * product);
  const constant = (springRate * tyreRate) / product;
  const larger = half + Math.sqrt(Math.max(0, half * half - constant));
  return { ride: Math.sqrt(constant / larger), hop: Math.sqrt(larger) };
}

/**
 * Share of critical damping of a body that swings on its springs alone:
 *
 *     ζ = c ÷ (2·√(k·m))
 *
 * Below 1 it swings and loses 2πζ ÷ √(1 − ζ²) of its logarithm each period; from 1 on it creeps home.
 *
 * @param mass – that the springs carry [kg] > 0
 * @param rate – of the springs at the axle [N/m] > 0
 * @param damping – slope of the shocks at the axle [N·s/m] ≥ 0
 * @validity the tyre as rigid; with a real one the body's own swing dies somewhat slower
 * @source definition, e.g. Inman, Engineering Vibration, section 1.3 (from memory)
 */
export const dampingRatio = (mass: number, rate: number, damping: number): number =>
  damping / (2 * Math.sqrt(rate * mass));
