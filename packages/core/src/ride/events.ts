import { hermiteValue } from '../numerics/hermite.ts';
import { contactMotion, contactSwitch } from './contact-motion.ts';
import * as at from './layout.ts';
import { type i32, type Memory, placeAt } from './memory.ts';

/** Contacts that switch within this time of the first are taken with it: both sides of an even course [s]. */
const TOGETHER = 1e-9;
/** How near a switch is found [s]. */
const CLOSE = 1e-12;

/**
 * Finds the first switch inside a tried step among the contacts in `changed`, by root finding on the motion of each, and
 * leaves it in `EVENT_SHARE` and `EVENT_CONTACTS`. Position and speed of a contact are cubics through both ends of the
 * step; the ground is read exactly.
 */
export function findEvent(m: Memory, from: i32, to: i32, step: number, changed: i32): void {
  let first: number = 1;
  for (let contact: i32 = 0; contact < at.ALL_CONTACTS; contact += 1) {
    if (((changed >> contact) & 1) === 0) continue;
    const root = rootOf(m, contact, from, to, step);
    m[at.ROOTS + contact] = root;
    first = Math.min(first, root);
  }
  let together: i32 = 0;
  for (let contact: i32 = 0; contact < at.ALL_CONTACTS; contact += 1) {
    if (((changed >> contact) & 1) === 1 && (m[at.ROOTS + contact] - first) * step <= TOGETHER) {
      together |= 1 << contact;
    }
  }
  m[at.EVENT_SHARE] = first;
  m[at.EVENT_CONTACTS] = together;
}

/** Reads what a contact does at both ends of the step into `SWITCHING`, once for all looks inside. */
function readEnds(m: Memory, contact: i32, from: i32, to: i32): void {
  const inner = at.INNER + (contact >> 3);
  m[at.SWITCHING] = contactMotion(m, contact, from);
  m[at.SWITCHING + 1] = contactMotion(m, contact, from + at.SPEED);
  m[at.SWITCHING + 2] = contactMotion(m, contact, from + at.ACCELERATION);
  m[at.SWITCHING + 3] = contactMotion(m, contact, to);
  m[at.SWITCHING + 4] = contactMotion(m, contact, to + at.SPEED);
  m[at.SWITCHING + 5] = contactMotion(m, contact, to + at.ACCELERATION);
  m[at.SWITCHING + 6] = m[from + inner];
  m[at.SWITCHING + 7] = m[from + inner + at.RATE];
  m[at.SWITCHING + 8] = m[to + inner];
  m[at.SWITCHING + 9] = m[to + inner + at.RATE];
}

/** Value of the switch of that contact at a share of the step. */
function switchInside(m: Memory, contact: i32, start: number, step: number, share: number): number {
  const v0 = m[at.SWITCHING + 1];
  const v1 = m[at.SWITCHING + 4];
  return contactSwitch(
    m,
    contact,
    start + share * step,
    hermiteValue(m[at.SWITCHING], v0, m[at.SWITCHING + 3], v1, step, share),
    hermiteValue(v0, m[at.SWITCHING + 2], v1, m[at.SWITCHING + 5], step, share),
    hermiteValue(
      m[at.SWITCHING + 6],
      m[at.SWITCHING + 7],
      m[at.SWITCHING + 8],
      m[at.SWITCHING + 9],
      step,
      share,
    ),
  );
}

/** Where in the step a contact switches, 0 … 1. */
function rootOf(m: Memory, contact: i32, from: i32, to: i32, step: number): number {
  const wasOn = ((placeAt(m, at.CONTACTS_ON) >> contact) & 1) === 1;
  const start = m[from + at.TIME];
  readEnds(m, contact, from, to);
  let low: number = 0;
  let high: number = 1;
  let atLow = switchInside(m, contact, start, step, low);
  let atHigh = switchInside(m, contact, start, step, high);
  // A contact that has just switched may stand a rounding error on the wrong side: it switches back at once.
  if (atLow > 0 !== wasOn) return 0;
  // Regula falsi with the rule of Anderson and Björck (BIT 13 (1973) 253, from memory): an end that stays twice counts less,
  // so that both ends close in.
  let stayed: i32 = 0;
  // A guess nearer to an end than that is moved away by it, beyond the root: then the other end closes in at once.
  const least = (0.5 * CLOSE) / step;
  for (let k = 0; k < 60 && (high - low) * step > CLOSE; k += 1) {
    const guess = low + ((high - low) * atLow) / (atLow - atHigh);
    const kept = Math.max(low + least, Math.min(high - least, guess));
    const share = kept > low && kept < high ? kept : (low + high) / 2;
    const value = switchInside(m, contact, start, step, share);
    if (value > 0 === wasOn) {
      const before = atLow;
      low = share;
      atLow = value;
      if (stayed > 0) atHigh *= weightOfStaying(value, before);
      stayed = 1;
    } else {
      const before = atHigh;
      high = share;
      atHigh = value;
      if (stayed < 0) atLow *= weightOfStaying(value, before);
      stayed = -1;
    }
  }
  return high;
}

/** How much an end that stays still counts, by the value found and the one that it replaced on the other end. */
function weightOfStaying(found: number, replaced: number): number {
  const weight = 1 - found / replaced;
  return weight > 0 ? weight : 0.5;
}
