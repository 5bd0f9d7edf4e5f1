import { oilForce } from '../elements/gas-chamber.ts';
import { springPull } from '../elements/maxwell.ts';
import { closingGain, stopSum } from '../elements/stop.ts';
import { bergForce } from '../elements/stop-friction.ts';
import * as at from './layout.ts';
import { type i32, type Memory, placeAt } from './memory.ts';
import { cubicAreaTo, cubicAt, cubicSlopeAt, followPath } from './tables.ts';

/** Constants of the axle of a corner. */
export function axleOf(corner: i32): i32 {
  return at.FRONT + (corner >> 1) * at.AXLE_SIZE;
}

/** How far the pad has come past the tip of the uncrushed stop at a corner [m]; below zero what is left of its gap. */
export function pastTip(m: Memory, corner: i32, travel: number): number {
  const c = axleOf(corner);
  const along = followPath(m, placeAt(m, c + at.STOP_PATH), travel);
  return m[c + at.STOP_RATIO] * along - m[c + at.STOP_GAP + (corner & 1)];
}

/** Crush of the stop ÷ axle travel at its station, there. */
export function ratioOfStop(m: Memory, corner: i32, travel: number): number {
  const c = axleOf(corner);
  followPath(m, placeAt(m, c + at.STOP_PATH), travel);
  return m[c + at.STOP_RATIO] * m[at.LEVER];
}

/** Crush of the stop at a corner [m], 0 when not touched. */
export function crushAt(m: Memory, corner: i32, travel: number): number {
  return Math.max(0, pastTip(m, corner, travel));
}

/** Axle travel left to metal [m]; negative when metal is driven in. */
export function clearanceAt(m: Memory, corner: i32, travel: number): number {
  return m[axleOf(corner) + at.METAL_TRAVEL + (corner & 1)] - travel;
}

/** What the curve of a touched stop is multiplied by: one, and the share that friction adds or takes. */
export function frictionGain(m: Memory, corner: i32, crush: number): number {
  const c = axleOf(corner);
  const limit = m[c + at.FRICTION_LIMIT];
  if (limit === 0) return 1;
  const turned = at.REVERSALS + 2 * corner;
  return 1 + bergForce(crush, m[turned], m[turned + 1], limit, m[c + at.FRICTION_TRAVEL]);
}

/**
 * Where the face of a stop that has let go stands by itself [m of crush]: beyond zero while its damper has not run out.
 * Its friction stays what it was at that moment.
 */
export function faceAt(m: Memory, corner: i32, inner: number): number {
  const c = axleOf(corner);
  const rate = m[c + at.MAXWELL_RATE];
  if (rate === 0 || !(inner > 0)) return 0;
  // Where the curve pushes as hard as the spring of the branch: `restingCrush` of elements, on a table in the memory.
  const table = placeAt(m, c + at.STOP_TABLE);
  const gain = 1 + m[at.REVERSALS + 2 * corner + 1];
  let low: number = 0;
  let high = inner;
  let crush = inner / 2;
  for (let k = 0; k < 60 && high - low > 1e-15 * inner; k += 1) {
    const excess = gain * cubicAt(m, table, crush) - rate * (inner - crush);
    if (excess === 0) return crush;
    if (excess > 0) high = crush;
    else low = crush;
    const step = crush - excess / (gain * cubicSlopeAt(m, table, crush) + rate);
    const next = step > low && step < high ? step : (low + high) / 2;
    if (next === crush) return crush;
    crush = next;
  }
  return crush;
}

/**
 * What friction adds to the energy of a stop whose face stands back by itself [J], below zero: while it is free the face
 * moves as on a curve that is so much lower. The books ask for it when the stop lets go and when it is met again.
 */
export function heldByFriction(m: Memory, corner: i32, crush: number): number {
  const share = m[at.REVERSALS + 2 * corner + 1];
  return share === 0 ? 0 : share * cubicAreaTo(m, placeAt(m, axleOf(corner) + at.STOP_TABLE), crush);
}

/** Force of the curve of a stop, pressed slowly and without friction [N]. */
export function curveAt(m: Memory, corner: i32, crush: number): number {
  return cubicAt(m, placeAt(m, axleOf(corner) + at.STOP_TABLE), crush);
}

/** Force of the viscous branch of a touched stop [N]. */
export function viscousAlong(m: Memory, corner: i32, crush: number, inner: number): number {
  return crush !== 0 ? springPull(m[axleOf(corner) + at.MAXWELL_RATE], crush, inner) : 0;
}

/**
 * Force of stop and metal along the stop [N], for contacts that are given. Where they should have let go it is the smooth
 * continuation of the law, and may pull: inside a tried step that is wanted.
 * @param crush – of the stop, 0 while it is not touched
 * @param curve – force of its curve there
 * @param metalCrush – beyond the metal's place, 0 while it is not reached
 * @param inner – inner displacement of the viscous branch, of no account without one
 */
export function stopAlong(
  m: Memory,
  corner: i32,
  crush: number,
  curve: number,
  metalCrush: number,
  crushSpeed: number,
  inner: number,
): number {
  const c = axleOf(corner);
  return stopSum(
    frictionGain(m, corner, crush),
    curve,
    m[c + at.METAL_RATE] * metalCrush,
    closingGain(m[c + at.STOP_RATE_FACTOR], crushSpeed),
    viscousAlong(m, corner, crush, inner),
    crush !== 0 ? oilForce(m[c + at.OIL_FACTOR], crushSpeed) : 0,
  );
}

/**
 * Positive where a stop that has let go is met: beyond its face, and, while that still stands back, where it would push.
 * The face is found at rest and the push is not: let go in a fast opening, it would be met again at once.
 */
export function metAgain(
  m: Memory,
  corner: i32,
  crush: number,
  face: number,
  crushSpeed: number,
  inner: number,
): number {
  if (face === 0 || crush <= face) return crush - face;
  const along = stopAlong(m, corner, crush, curveAt(m, corner, crush), 0, crushSpeed, inner);
  return along > 0 ? crush - face : along;
}

/** The same at a travel and speed of the axle: 0 when neither stop nor metal is touched there. */
export function stopForceAt(m: Memory, corner: i32, travel: number, speed: number, inner: number): number {
  const c = axleOf(corner);
  const crush = pastTip(m, corner, travel);
  const metal = Math.max(0, crush - m[c + at.METAL_AT + (corner & 1)]);
  const touched = crush > faceAt(m, corner, inner) ? crush : 0;
  if (touched <= 0 && metal <= 0) return 0;
  const curve = curveAt(m, corner, touched);
  return Math.max(
    0,
    stopAlong(m, corner, touched, curve, metal, ratioOfStop(m, corner, travel) * speed, inner),
  );
}
