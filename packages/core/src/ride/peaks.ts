import { hermiteValue, quinticValue } from '../numerics/hermite.ts';
import { contactMotion } from './contact-motion.ts';
import { crestOf, MOST_ABOVE_ENDS, stateInside } from './dense.ts';
import { accelerate } from './dynamics.ts';
import * as at from './layout.ts';
import { type i32, type Memory, placeAt } from './memory.ts';
import { axleOf, curveAt, pastTip, ratioOfStop, stopAlong } from './stop-reading.ts';

/** Look inside a step only when its ends come this near to the largest value so far. */
const NEAR = 0.7;
/** The same of a crest that is only guessed. */
const NEAR_CREST = 0.9;
/** Parts of a step at whose ends it is looked at, and how large each is. */
const PARTS = 4;
const PART = 0.25;

function raise(m: Memory, place: i32, value: number): void {
  if (value > m[place]) m[place] = value;
}

/** Takes a step into the running extremes. */
export function takeInPeaks(m: Memory, from: i32, to: i32, step: number): void {
  const contacts = placeAt(m, at.CONTACTS_ON);
  for (let corner: i32 = 0; corner < 4; corner += 1) {
    const x0 = m[from + at.STOP_TRAVEL + corner];
    const v0 = m[from + at.STOP_SPEED + corner];
    const x1 = m[to + at.STOP_TRAVEL + corner];
    const v1 = m[to + at.STOP_SPEED + corner];
    const on = contacts >> (at.CONTACTS * corner);
    const peak = m[at.PEAK_TRAVEL + corner];
    const higher = Math.max(x0, x1);
    if (higher > peak) m[at.PEAK_TRAVEL + corner] = higher;
    if (v0 > 0 && v1 < 0 && higher + MOST_ABOVE_ENDS * (step * (v0 - v1)) > peak) {
      raise(m, at.PEAK_TRAVEL + corner, crestOf(x0, v0, x1, v1, step));
    }
    if ((on & ((1 << at.STOP) | (1 << at.METAL))) !== 0) stopPeak(m, corner, from, to, step);
    if ((on & (1 << at.TYRE)) === 0) m[at.AIRBORNE + corner] += step;
    const shockSpeed = m[to + at.SHOCK_SPEED + corner];
    raise(m, at.PEAK_COMPRESSION + corner, shockSpeed);
    raise(m, at.PEAK_REBOUND + corner, -shockSpeed);
  }
  accelerationPeak(m, at.PEAK_ACCELERATION, at.ACCELERATION + at.HEAVE, from, to, step);
  if (m[at.SEAT_MASS] !== 0) accelerationPeak(m, at.PEAK_SEAT, at.ACCELERATION + at.SEAT, from, to, step);
  raise(m, at.PEAK_PITCH, Math.abs(m[to + at.PITCH]));
  raise(m, at.PEAK_ROLL, Math.abs(m[to + at.ROLL]));
}

/** Where in the step the largest of the readings inside has its crest, by the parabola through it and its neighbours. */
function crestShare(m: Memory): number {
  let best: i32 = 1;
  for (let k: i32 = 2; k < PARTS; k += 1) if (m[at.READINGS + k] > m[at.READINGS + best]) best = k;
  const middle = at.READINGS + best;
  const slope = m[middle + 1] - m[middle - 1];
  const bend = m[middle + 1] - 2 * m[middle] + m[middle - 1];
  const moved: number = bend < 0 ? Math.max(-1, Math.min(1, (-0.5 * slope) / bend)) : 0;
  return PART * (best + moved);
}

function accelerationPeak(m: Memory, place: i32, what: i32, from: i32, to: i32, step: number): void {
  const first = Math.abs(m[from + what]);
  const last = Math.abs(m[to + what]);
  raise(m, place, Math.max(first, last));
  // The cubic through speeds and accelerations at both ends tells, roughly but for nothing, whether there is a crest inside
  // that could be the largest: its slope is a parabola, which rises at the start and falls at the end.
  const sign: number = m[from + what] + m[to + what] < 0 ? -1 : 1;
  const a0 = sign * m[from + what];
  const a1 = sign * m[to + what];
  const mean = (sign * (m[to + what - at.RATE] - m[from + what - at.RATE])) / step;
  const rising = 6 * mean - 4 * a0 - 2 * a1;
  const falling = 6 * mean - 4 * a1 - 2 * a0;
  if (!(rising > 0 && falling > 0)) return;
  if (a0 + (0.5 * rising * rising) / (rising + falling) < NEAR_CREST * m[place]) return;
  m[at.READINGS] = first;
  m[at.READINGS + PARTS] = last;
  for (let k: i32 = 1; k < PARTS; k += 1) {
    m[at.READINGS + k] = accelerationInside(m, what, from, to, step, k * PART);
    raise(m, place, m[at.READINGS + k]);
  }
  raise(m, place, accelerationInside(m, what, from, to, step, crestShare(m)));
}

function accelerationInside(m: Memory, what: i32, from: i32, to: i32, step: number, share: number): number {
  stateInside(m, from, to, step, share, at.INSIDE);
  accelerate(m, at.INSIDE);
  return Math.abs(m[at.INSIDE + what]);
}

function stopPeak(m: Memory, corner: i32, from: i32, to: i32, step: number): void {
  const x0 = m[from + at.STOP_TRAVEL + corner];
  const v0 = m[from + at.STOP_SPEED + corner];
  const x1 = m[to + at.STOP_TRAVEL + corner];
  const v1 = m[to + at.STOP_SPEED + corner];
  const first = m[from + at.STOP_FORCE + corner];
  const last = m[to + at.STOP_FORCE + corner];
  raise(m, at.PEAK_STOP_FORCE + corner, Math.max(first, last));
  // Once it opens, its force has had its crest.
  if (!(v0 > 0 && Math.max(first, last) > NEAR * m[at.PEAK_STOP_FORCE + corner])) return;
  const u0 = m[from + at.INNER + corner];
  const u1 = m[to + at.INNER + corner];
  m[at.READINGS] = first;
  m[at.READINGS + PARTS] = last;
  const contact = at.CONTACTS * corner + at.STOP;
  const a0 = contactMotion(m, contact, from + at.ACCELERATION);
  const a1 = contactMotion(m, contact, to + at.ACCELERATION);
  for (let k: i32 = 1; k <= PARTS; k += 1) {
    // The last look is where the others say that the crest is.
    const share: number = k < PARTS ? k * PART : crestShare(m);
    const force = forceWhileOn(
      m,
      corner,
      quinticValue(x0, v0, a0, x1, v1, a1, step, share),
      hermiteValue(v0, a0, v1, a1, step, share),
      u0 + share * (u1 - u0),
    );
    if (k < PARTS) m[at.READINGS + k] = force;
    raise(m, at.PEAK_STOP_FORCE + corner, force);
  }
}

/**
 * Force of a stop whose contacts are what they are in this step [N]. At its ends they hold as well: read by place, a
 * rounding error at the touch would be a jump from nothing, and a parabola through a jump shoots over it by an eighth.
 */
function forceWhileOn(m: Memory, corner: i32, travel: number, speed: number, inner: number): number {
  const c = axleOf(corner);
  const on = placeAt(m, at.CONTACTS_ON) >> (at.CONTACTS * corner);
  const past = pastTip(m, corner, travel);
  const crush: number = (on & (1 << at.STOP)) !== 0 ? past : 0;
  const metal: number = (on & (1 << at.METAL)) !== 0 ? past - m[c + at.METAL_AT + (corner & 1)] : 0;
  const curve = curveAt(m, corner, crush);
  return Math.max(
    0,
    stopAlong(m, corner, crush, curve, metal, ratioOfStop(m, corner, travel) * speed, inner),
  );
}
