import { asSolidAxle } from '../elements/independent-axle.ts';
import { rateBySize, rateOnLine, USUAL_TYRE } from '../elements/tyre-rate.ts';
import type { AssumptionRule } from '../rig/assumptions.ts';
import type { TyreSize } from '../rig/parts.ts';

/** A value that stands in for one that nobody measured, with its 95 % half-width [SI]. */
export interface Usual {
  readonly rule: AssumptionRule;
  readonly value: number;
  readonly halfWidth: number;
}

const usual = (rule: AssumptionRule, value: number, halfWidth: number): Usual => ({ rule, value, halfWidth });

const GRAVITY = 9.80665;

/**
 * Constants that fill gaps. All are common practice, no source, from the bands in `docs/theory/assumptions.md`:
 * the middle of the band, and half its width as the 95 % half-width. Limits of the owner have no width.
 */
export const USUAL = {
  /** A contact near the stop's station moves with the axle; off to the side it does not. */
  contactRatio: usual('contact-ratio-one', 1, 0.05),
  stopRatio: usual('stop-ratio-one', 1, 0.02),
  springRatio: usual('spring-ratio-one', 1, 0.03),
  /** Leaning 0 to 20°: cosine 1 to 0.94. */
  shockRatio: usual('shock-ratio-upright', 0.97, 0.03),
  cgHeight: usual('cg-height', 0.8, 0.15),
  /** What springs, links and friction really give against the springs alone: half to one and a half. */
  liftGive: usual('cg-lift-free-suspension', 1, 0.5),
  /** Boxed frame or tube: 6 to 12 mm. */
  flex: usual('flex-boxed-frame', 0.009, 0.003),
  coilReserve: usual('coil-reserve', 0.01, 0),
  shockReserve: usual('shock-reserve', 0.01, 0),
  shockDroopReserve: usual('shock-droop-reserve', 0.01, 0),
  reserve: usual('reserve', 0.01, 0),
  /** 2.5 g above rest. */
  bodyAcceleration: usual('seat-limit', 2.5 * GRAVITY, 0),
  /** Dynamic ÷ static stiffness 1.1 to 1.4 at about 1 m/s of closing speed. */
  stopRateFactor: usual('stop-rate-factor', 0.25, 0.15),
  /** Said otherwise for this stop: no factor on top. */
  noRateFactor: usual('no-rate-factor', 0, 0),
  /** Nitrogen between a slow and a fast stroke: 1 to 1.4. */
  gasIndex: usual('gas-index', 1.2, 0.2),
  /** Sharp edge 0.60 to 0.65, a drilled passage up to 0.8. */
  ventDischarge: usual('vent-discharge', 0.62, 0.1),
  /** 10 to 60 % over the stroke, more without a reservoir. */
  shockGasRise: usual('shock-gas-rise', 0.35, 0.25),
  barRatio: usual('bar-ratio-one', 1, 0.05),
  tyreDamping: usual('tyre-damping', 300, 200),
  tyreRadius: usual('tyre-radius', 0.43, 0.05),
  /** Near rigid: a numerical device, stiff enough that metal gives less than a millimetre under a hard hit. */
  metalRate: usual('metal-rate', 2e7, 1e7),
  /** Webbing 2 to 10 %. */
  strapStretch: usual('strap-stretch', 0.06, 0.04),
  /** A grown driver in clothes, with helmet and boots. */
  driverMass: usual('driver-mass', 85, 20),
  onSeat: usual('driver-on-seat', 0.75, 0.1),
  /** Foam on a pan; suspension seats are softer, a bare shell harder. */
  seatFrequency: usual('seat-frequency', 4, 1.5),
  /** Passes on one and a half to two and a half times at its worst. */
  seatDampingRatio: usual('seat-damping-ratio', 0.3, 0.1),
  strapRatio: usual('strap-ratio-one', 1, 0.05),
  /** A case that sits level to three degrees. */
  caseAngle: usual('case-level', 0, (3 * Math.PI) / 180),
  /** Mild steel as it is sold: 235 to 275 MPa guaranteed, mostly a little more. */
  bracketYield: usual('bracket-yield', 250e6, 30e6),
  bracketUltimate: usual('bracket-ultimate', 400e6, 40e6),
  /** Nobody hits the middle: 0 to 10 mm. */
  bracketOffset: usual('bracket-offset', 0.005, 0.005),
  bracketFactor: usual('bracket-factor', 2, 0),
} as const;

/** Springs, shocks and stops stand inboard of the tyres by half to three quarters of the track. */
export const spreadFromTrack = (track: number): Usual =>
  usual('spread-share-of-track', 0.63 * track, 0.1 * track);

/** Hips a little behind the middle of the wheelbase. */
export const behindFrontAxleOfSeat = (wheelbase: number): Usual =>
  usual('seat-place', 0.55 * wheelbase, 0.1 * wheelbase);

/** The left one of two seats, a quarter of the track off the middle. */
export const leftOfSeat = (track: number): Usual => usual('seat-place', 0.24 * track, 0.05 * track);

/** Unsprung share of the weight on an axle: 22 to 35 %. */
export const unsprungFromWeight = (axleMass: number): Usual =>
  usual('unsprung-share', 0.285 * axleMass, 0.065 * axleMass);

/** The same of independent wheels, without a beam: 12 to 20 %. */
export const unsprungOfWheels = (axleMass: number): Usual =>
  usual('unsprung-share-independent', 0.16 * axleMass, 0.04 * axleMass);

/** Two wheels that move apart: no beam and no choice, see `elements/independent-axle`. */
export const independentRollInertia = (unsprungMass: number, track: number): Usual =>
  usual('independent-roll-inertia', asSolidAxle({ mass: unsprungMass, track }).rollInertia, 0);

/** Gas column that goes with the force at full stroke; a third of what is left there as half-width. */
export const usualGasColumn = (column: number, stroke: number): Usual =>
  usual('gas-column', column, 0.3 * (column - stroke));

/**
 * Solid axle in roll: wheels at half the track (about two fifths of the mass) and a uniform beam between them,
 * I = m·(track/2)²·(0.4 + 0.6/3).
 */
export function axleRollInertia(unsprungMass: number, track: number): Usual {
  const value = 0.6 * unsprungMass * (track / 2) ** 2;
  return usual('axle-roll-inertia', value, 0.3 * value);
}

/** Sprung mass in pitch: radius of gyration squared a little over the product of its distances to the axles. */
export function bodyPitchInertia(sprungMass: number, toFrontAxle: number, toRearAxle: number): Usual {
  const value = 1.15 * sprungMass * toFrontAxle * toRearAxle;
  return usual('body-inertia', value, 0.3 * value);
}

/** Sprung mass in roll: radius of gyration about two fifths of the track. */
export function bodyRollInertia(sprungMass: number, track: number): Usual {
  const value = sprungMass * (0.42 * track) ** 2;
  return usual('body-inertia', value, 0.3 * value);
}

/**
 * Vertical rate of a 33 to 37 in light-truck tyre; without a pressure, the whole band.
 *
 * @param pressure – [Pa], null when unknown
 */
export function tyreRate(pressure: number | null): Usual {
  if (pressure === null) return usual('tyre-rate', 190e3, 110e3);
  const value = rateOnLine(USUAL_TYRE, pressure);
  return usual('tyre-rate', value, 0.33 * value);
}

/** The same by the size on its side. */
export function tyreRateBySize(size: TyreSize, pressure: number): Usual {
  const value = rateOnLine(rateBySize(size), pressure);
  return usual('tyre-rate-by-size', value, 0.3 * value);
}

/** Shares of critical damping of a dual-use rig near zero speed: compression 0.2 to 0.35, rebound 0.45 to 0.75. */
export const USUAL_DAMPING_RATIO = { compression: 0.28, rebound: 0.6 } as const;

/** Exponent n of F = F_full·(x/x_full)ⁿ by what a stop is made of: 1.8–2.5, 1.3–2, 2.3–4. */
export const STOP_EXPONENT = { rubber: 2.2, polyurethane: 1.6, foam: 2.6 } as const;
export type StopMaterial = keyof typeof STOP_EXPONENT;

/** Force at full crush when nothing else is known: rubber 5 to 15 kN, cast polyurethane 10 to 30, foam 6 to 15. */
export const STOP_FORCE = { rubber: 10e3, polyurethane: 18e3, foam: 10e3 } as const;
