import { oilForce } from '../elements/gas-chamber.ts';
import { maxwellForce, restingCrush } from '../elements/maxwell.ts';
import { closingGain, stopElastic } from '../elements/stop.ts';
import { frictionForce, type Reversal } from '../elements/stop-friction.ts';
import * as at from './layout.ts';
import type { Dynamics } from './state.ts';

/** How far the pad has come past the tip of the uncrushed stop at a corner [m]; below zero what is left of its gap. */
export function pastTip(dynamics: Dynamics, corner: number, travel: number): number {
  const { numbers: c } = dynamics.axles[corner >> 1];
  return c[at.STOP_RATIO] * travel - c[at.STOP_GAP + (corner & 1)];
}

/** Crush of the stop at a corner [m], 0 when not touched. */
export const crushAt = (dynamics: Dynamics, corner: number, travel: number): number =>
  Math.max(0, pastTip(dynamics, corner, travel));

/** Axle travel left to metal [m]; negative when metal is driven in. */
export function clearanceAt(dynamics: Dynamics, corner: number, travel: number): number {
  const { numbers: c } = dynamics.axles[corner >> 1];
  const side = corner & 1;
  return (c[at.STOP_GAP + side] + c[at.METAL_AT + side]) / c[at.STOP_RATIO] - travel;
}

/** What the curve of a touched stop is multiplied by: one, and the share that friction adds or takes. */
export function frictionGain(dynamics: Dynamics, corner: number, crush: number): number {
  const { friction } = dynamics.axles[corner >> 1];
  return friction ? 1 + frictionForce(crush, dynamics.reversals[corner], friction) : 1;
}

/** Where the face of a stop stands by itself [m of crush]: beyond zero while its damper has not run out. */
export function faceAt(dynamics: Dynamics, corner: number, inner: number): number {
  const { stop, maxwell } = dynamics.axles[corner >> 1];
  return maxwell && inner > 0 ? restingCrush(stop, 1, maxwell, inner) : 0;
}

/**
 * Force of stop and metal along the stop [N], for contacts that are given. Where they should have let go it is the smooth
 * continuation of the law, and may pull: inside a tried step that is wanted.
 * @param crush – of the stop, 0 while it is not touched
 * @param metalCrush – beyond the metal's place, 0 while it is not reached
 * @param inner – inner displacement of the viscous branch, of no account without one
 */
export function stopAlong(
  dynamics: Dynamics,
  corner: number,
  crush: number,
  metalCrush: number,
  crushSpeed: number,
  inner: number,
): number {
  const { numbers: c, stop, maxwell } = dynamics.axles[corner >> 1];
  const gain = frictionGain(dynamics, corner, crush);
  const elastic = stopElastic(stop, c[at.METAL_RATE], crush, metalCrush, gain);
  const isTouched = crush !== 0;
  const viscous = maxwell !== null && isTouched ? maxwellForce(maxwell, crush, inner) : 0;
  const oil = isTouched ? oilForce(c[at.OIL_FACTOR], crushSpeed) : 0;
  return closingGain(c[at.STOP_RATE_FACTOR], crushSpeed) * elastic + viscous + oil;
}

/** The same at a travel and speed of the axle: 0 when neither stop nor metal is touched there. */
export function stopForceAt(
  dynamics: Dynamics,
  corner: number,
  travel: number,
  speed: number,
  inner: number,
): number {
  const { numbers: c } = dynamics.axles[corner >> 1];
  const crush = pastTip(dynamics, corner, travel);
  const metal = Math.max(0, crush - c[at.METAL_AT + (corner & 1)]);
  const touched = crush > faceAt(dynamics, corner, inner) ? crush : 0;
  if (touched <= 0 && metal <= 0) return 0;
  return Math.max(0, stopAlong(dynamics, corner, touched, metal, c[at.STOP_RATIO] * speed, inner));
}

/** A stop that has not been touched yet has turned round nowhere. */
export const UNTURNED: Reversal = { travel: 0, force: 0 };
