import { hermiteValue } from '../numerics/hermite.ts';
import { contactMotion } from './contact-motion.ts';
import { crestOf, parabolaCrest, stateInside } from './dense.ts';
import { accelerate } from './dynamics.ts';
import * as at from './layout.ts';
import { type i32, type Memory, whole } from './memory.ts';
import { axleOf, curveAt, pastTip, ratioOfStop, stopAlong } from './stop-reading.ts';

/** Look inside a step only when its ends come this near to the largest value so far. */
const NEAR = 0.7;
/** Parts of a step at whose ends it is looked at, and how large each is. */
const PARTS = 4;
const PART = 0.25;

function raise(m: Memory, place: i32, value: number): void {
  if (value > m[place]) m[place] = value;
}

/** Takes a step into the running extremes. */
export function takeInPeaks(m: Memory, from: i32, to: i32, step: number): void {
  const contacts = whole(m[at.CONTACTS_ON]);
  for (let corner: i32 = 0; corner < 4; corner += 1) {
    const probe = at.PROBES + at.PROBE * corner;
    const x0 = m[from + probe + at.STOP_TRAVEL];
    const v0 = m[from + probe + at.STOP_SPEED];
    const x1 = m[to + probe + at.STOP_TRAVEL];
    const v1 = m[to + probe + at.STOP_SPEED];
    const on = contacts >> (at.CONTACTS * corner);
    raise(m, at.PEAK_TRAVEL + corner, Math.max(x0, x1));
    if (v0 > 0 && v1 < 0) raise(m, at.PEAK_TRAVEL + corner, crestOf(x0, v0, x1, v1, step));
    if ((on & ((1 << at.STOP) | (1 << at.METAL))) !== 0) stopPeak(m, corner, from, to, step);
    if ((on & (1 << at.TYRE)) === 0) m[at.AIRBORNE + corner] += step;
    const shockSpeed = m[to + probe + at.SHOCK_SPEED];
    raise(m, at.PEAK_COMPRESSION + corner, shockSpeed);
    raise(m, at.PEAK_REBOUND + corner, -shockSpeed);
  }
  accelerationPeak(m, at.PEAK_ACCELERATION, at.ACCELERATION + at.HEAVE, from, to, step);
  if (m[at.SEAT_MASS] !== 0) accelerationPeak(m, at.PEAK_SEAT, at.ACCELERATION + at.SEAT, from, to, step);
  raise(m, at.PEAK_PITCH, Math.abs(m[to + at.PITCH]));
  raise(m, at.PEAK_ROLL, Math.abs(m[to + at.ROLL]));
}

/** Largest value of the readings, with the crests between them. */
function crestOfReadings(m: Memory): number {
  let best: number = 0;
  for (let k = 1; k < PARTS; k += 1) {
    const middle = at.READINGS + k;
    best = Math.max(best, parabolaCrest(m[middle - 1], m[middle], m[middle + 1]));
  }
  return best;
}

function accelerationPeak(m: Memory, place: i32, what: i32, from: i32, to: i32, step: number): void {
  const first = Math.abs(m[from + what]);
  const last = Math.abs(m[to + what]);
  raise(m, place, Math.max(first, last));
  // The stages of the step tell, roughly but for nothing, whether there is a crest in it that could be the largest.
  const between = Math.max(Math.abs(m[at.HALF_WAY + what]), Math.abs(m[at.LATER + what]));
  if (!(between > Math.max(first, last) && between > NEAR * m[place])) return;
  m[at.READINGS] = first;
  m[at.READINGS + PARTS] = last;
  for (let k = 1; k < PARTS; k += 1) {
    stateInside(m, from, to, step, k * PART, at.INSIDE);
    accelerate(m, at.INSIDE);
    m[at.READINGS + k] = Math.abs(m[at.INSIDE + what]);
  }
  raise(m, place, crestOfReadings(m));
}

function stopPeak(m: Memory, corner: i32, from: i32, to: i32, step: number): void {
  const probe = at.PROBES + at.PROBE * corner;
  const x0 = m[from + probe + at.STOP_TRAVEL];
  const v0 = m[from + probe + at.STOP_SPEED];
  const x1 = m[to + probe + at.STOP_TRAVEL];
  const v1 = m[to + probe + at.STOP_SPEED];
  const first = m[from + probe + at.STOP_FORCE];
  const last = m[to + probe + at.STOP_FORCE];
  raise(m, at.PEAK_STOP_FORCE + corner, Math.max(first, last));
  if (!(Math.max(first, last) > NEAR * m[at.PEAK_STOP_FORCE + corner])) return;
  const u0 = m[from + at.INNER + corner];
  const u1 = m[to + at.INNER + corner];
  m[at.READINGS] = first;
  m[at.READINGS + PARTS] = last;
  const contact = at.CONTACTS * corner + at.STOP;
  const a0 = contactMotion(m, contact, from + at.ACCELERATION);
  const a1 = contactMotion(m, contact, to + at.ACCELERATION);
  for (let k = 1; k < PARTS; k += 1) {
    const share = k * PART;
    m[at.READINGS + k] = forceWhileOn(
      m,
      corner,
      hermiteValue(x0, v0, x1, v1, step, share),
      hermiteValue(v0, a0, v1, a1, step, share),
      u0 + share * (u1 - u0),
    );
  }
  raise(m, at.PEAK_STOP_FORCE + corner, crestOfReadings(m));
}

/**
 * Force of a stop whose contacts are what they are in this step [N]. At its ends they hold as well: read by place, a
 * rounding error at the touch would be a jump from nothing, and a parabola through a jump shoots over it by an eighth.
 */
function forceWhileOn(m: Memory, corner: i32, travel: number, speed: number, inner: number): number {
  const c = axleOf(corner);
  const on = whole(m[at.CONTACTS_ON]) >> (at.CONTACTS * corner);
  const past = pastTip(m, corner, travel);
  const crush: number = (on & (1 << at.STOP)) !== 0 ? past : 0;
  const metal: number = (on & (1 << at.METAL)) !== 0 ? past - m[c + at.METAL_AT + (corner & 1)] : 0;
  const curve = curveAt(m, corner, crush);
  return Math.max(
    0,
    stopAlong(m, corner, crush, curve, metal, ratioOfStop(m, corner, travel) * speed, inner),
  );
}
