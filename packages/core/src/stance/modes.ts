import { eigenvalues } from '../numerics/linear.ts';

/** One end of the rig as two masses: body on its springs, axle on its tyres. SI. */
export interface TwoMass {
  readonly sprungMass: number;
  readonly unsprungMass: number;
  readonly springRate: number;
  readonly tyreRate: number;
  /** Shock slope between body and axle [N·s/m]. */
  readonly damping: number;
  readonly tyreDamping: number;
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

/** A pair of poles as s² + 2·ζω·s + ω² = s² + b·s + c. */
export interface PolePair {
  readonly b: number;
  readonly c: number;
}

/** ζ of a pair of poles; above 1 the pair is real and there is no swing. */
export const dampingRatioOf = ({ b, c }: PolePair): number => b / (2 * Math.sqrt(c));

/** Poles of the ride mode by eigenvalues of the state matrix: the pair that turns slowest. */
export function ridePoles(model: TwoMass): PolePair {
  const {
    sprungMass: ms,
    unsprungMass: mu,
    springRate: ks,
    tyreRate: kt,
    damping: c,
    tyreDamping: ct,
  } = model;
  const [first, second] = eigenvalues([
    [0, 0, 1, 0],
    [0, 0, 0, 1],
    [-ks / ms, ks / ms, -c / ms, c / ms],
    [ks / mu, -(ks + kt) / mu, c / mu, -(c + ct) / mu],
  ]);
  return { b: -(first.re + second.re), c: first.re * second.re - first.im * second.im };
}

/**
 * The same poles from a close start, for one trial of many: Bairstow's iteration on
 * s⁴ + a3·s³ + a2·s² + a1·s + a0.
 *
 * @param from – the poles of the nominal rig
 * @returns the poles; NaN when the iteration did not settle (a trial that is far off)
 * @source Press et al., Numerical Recipes, section 9.5 (from memory)
 */
export function ridePolesNear(model: TwoMass, from: PolePair): PolePair {
  const {
    sprungMass: ms,
    unsprungMass: mu,
    springRate: ks,
    tyreRate: kt,
    damping: c,
    tyreDamping: ct,
  } = model;
  const product = ms * mu;
  const a3 = (ms * (c + ct) + mu * c) / product;
  const a2 = (ms * (ks + kt) + mu * ks + c * ct) / product;
  const a1 = (c * kt + ct * ks) / product;
  const a0 = (ks * kt) / product;
  let b = from.b;
  let k = from.c;
  for (let step = 0; step < 30; step += 1) {
    // Division by s² + b·s + k leaves (s² + q1·s + q0) and the rest r1·s + r0.
    const q1 = a3 - b;
    const q0 = a2 - b * q1 - k;
    const r1 = a1 - b * q0 - k * q1;
    const r0 = a0 - k * q0;
    // Partial derivatives of the rest.
    const r1b = -q0 - b * (-q1 + b) + k;
    const r1k = b - q1;
    const r0b = -k * (b - q1);
    const r0k = k - q0;
    const determinant = r1b * r0k - r1k * r0b;
    const db = (r0 * r1k - r1 * r0k) / determinant;
    const dk = (r1 * r0b - r0 * r1b) / determinant;
    b += db;
    k += dk;
    if (Math.abs(dk) <= 1e-10 * Math.abs(k) && Math.abs(db) <= 1e-10 * (Math.abs(b) + Math.sqrt(Math.abs(k))))
      return { b, c: k };
  }
  return { b: Number.NaN, c: Number.NaN };
}
