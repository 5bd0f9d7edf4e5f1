import { hermiteValue } from '../numerics/hermite.ts';
import { contactMotion, contactSwitch } from './contact-motion.ts';
import { CONTACTS, INNER } from './layout.ts';
import type { Dynamics } from './state.ts';
import type { Stepper } from './stepper.ts';

/** Where in a tried step the first contacts switch, and which. */
export interface Event {
  /** 0 … 1 of the step. */
  theta: number;
  /** Bits of the contacts that switch there together. */
  contacts: number;
}

/** Contacts that switch within this time of the first are taken with it: both sides of an even course [s]. */
const TOGETHER = 1e-9;
const TOTAL = 4 * CONTACTS;

/**
 * Finds the first switch inside a tried step among the contacts in `changed`, by root finding on the motion of each.
 * Position and speed of a contact are cubics through both ends of the step; the ground is read exactly.
 */
export function makeEventFinder(
  dynamics: Dynamics,
): (stepper: Stepper, time: number, step: number, changed: number) => Event {
  const event: Event = { theta: 1, contacts: 0 };
  const roots = new Float64Array(TOTAL);

  const rootOf = (contact: number, { start, end }: Stepper, time: number, step: number): number => {
    const wasOn = ((dynamics.contacts >> contact) & 1) === 1;
    const x0 = contactMotion(dynamics, contact, start.position);
    const v0 = contactMotion(dynamics, contact, start.speed);
    const a0 = contactMotion(dynamics, contact, start.acceleration);
    const x1 = contactMotion(dynamics, contact, end.position);
    const v1 = contactMotion(dynamics, contact, end.speed);
    const a1 = contactMotion(dynamics, contact, end.acceleration);
    const slot = INNER + Math.floor(contact / CONTACTS);
    const u0 = dynamics.hasInner ? start.sums[slot] : 0;
    const u1 = dynamics.hasInner ? end.sums[slot] : 0;
    const w0 = dynamics.hasInner ? start.acceleration[dynamics.coordinates + slot] : 0;
    const w1 = dynamics.hasInner ? end.acceleration[dynamics.coordinates + slot] : 0;
    const valueAt = (theta: number): number =>
      contactSwitch(
        dynamics,
        contact,
        time + theta * step,
        hermiteValue(x0, v0, x1, v1, step, theta),
        hermiteValue(v0, a0, v1, a1, step, theta),
        hermiteValue(u0, w0, u1, w1, step, theta),
      );
    let low = 0;
    let high = 1;
    let atLow = valueAt(0);
    let atHigh = valueAt(1);
    // A contact that has just switched may stand a rounding error on the wrong side: it switches back at once.
    if (atLow > 0 !== wasOn) return 0;
    // Regula falsi with the Illinois rule: an end that stays twice counts half, so that both ends close in.
    let stayed = 0;
    for (let k = 0; k < 60 && (high - low) * step > 1e-12; k += 1) {
      const guess = low + ((high - low) * atLow) / (atLow - atHigh);
      const theta = guess > low && guess < high ? guess : (low + high) / 2;
      const value = valueAt(theta);
      if (value > 0 === wasOn) {
        low = theta;
        atLow = value;
        if (stayed > 0) atHigh /= 2;
        stayed = 1;
      } else {
        high = theta;
        atHigh = value;
        if (stayed < 0) atLow /= 2;
        stayed = -1;
      }
    }
    return high;
  };

  return (stepper, time, step, changed) => {
    event.theta = 1;
    event.contacts = 0;
    for (let contact = 0; contact < TOTAL; contact += 1) {
      if (((changed >> contact) & 1) === 0) continue;
      roots[contact] = rootOf(contact, stepper, time, step);
      if (roots[contact] < event.theta) event.theta = roots[contact];
    }
    for (let contact = 0; contact < TOTAL; contact += 1) {
      if (((changed >> contact) & 1) === 1 && (roots[contact] - event.theta) * step <= TOGETHER) {
        event.contacts |= 1 << contact;
      }
    }
    return event;
  };
}
