import { antiRollEnergy } from '../elements/anti-roll-bar.ts';
import { coilEnergy, coilForce } from '../elements/coil.ts';
import { droopEnergy } from '../elements/droop-limit.ts';
import { maxwellEnergy } from '../elements/maxwell.ts';
import { stopEnergy } from '../elements/stop.ts';
import { contactMotion } from './contact-motion.ts';
import { heldByTyre } from './drive.ts';
import * as at from './layout.ts';
import { type i32, type Memory, whole } from './memory.ts';
import type { Ride } from './start.ts';
import { axleOf, faceAt, heldByFriction, pastTip } from './stop-reading.ts';
import { followPath } from './tables.ts';

/** Energy in motion, in height and in all elements that carry force in a state [J]. */
export function storedEnergy(m: Memory, ride: Ride, state: i32): number {
  const { sprung, axles, gravity, seat } = ride.model;
  const contacts = whole(m[at.CONTACTS_ON]);
  const q = (i: number): number => m[state + i];
  const v = (i: number): number => m[state + at.SPEED + i];
  const bodyMass = sprung.mass - (seat?.mass ?? 0);
  let energy =
    (bodyMass * v(at.HEAVE) ** 2 +
      sprung.pitchInertia * v(at.PITCH) ** 2 +
      sprung.rollInertia * v(at.ROLL) ** 2) /
      2 +
    sprung.mass * gravity * q(at.HEAVE);
  if (seat) {
    const give = q(at.HEAVE) - seat.ahead * q(at.PITCH) + seat.left * q(at.ROLL) - q(at.SEAT);
    // His weight stands in that of the sprung mass; the cushion holds only what it gives beyond rest.
    energy += (seat.mass * v(at.SEAT) ** 2 + seat.rate * give ** 2) / 2;
  }
  [axles.front, axles.rear].forEach((axle, e) => {
    const first = at.AXLE + 2 * e;
    energy += (axle.mass * v(first) ** 2 + axle.rollInertia * v(first + 1) ** 2) / 2;
    energy += axle.mass * gravity * q(first);
    energy += antiRollEnergy(axle.antiRollRate ?? 0, q(first + 1) - q(at.ROLL));
  });
  for (let corner = 0; corner < 4; corner += 1) {
    const c = axleOf(corner);
    const { maxwell } = (corner < 2 ? axles.front : axles.rear).stop;
    const { stop } = corner < 2 ? ride.rig.front : ride.rig.rear;
    const bit = at.CONTACTS * corner;
    const isOn = (which: number): boolean => ((contacts >> (bit + which)) & 1) === 1;
    const travelOf = (which: number): number => contactMotion(m, bit + which, state);
    const springAlong = followPath(m, whole(m[c + at.SPRING_PATH]), travelOf(at.COIL));
    const seated = Math.max(0, coilForce(m[c + at.PRELOAD], m[c + at.SPRING_RATE], springAlong));
    energy += coilEnergy(m[c + at.SPRING_RATE], seated);
    const pressed = pastTip(m, corner, travelOf(at.STOP));
    const inner = m[state + at.INNER + corner];
    const crush = isOn(at.STOP) ? Math.max(0, pressed) : faceAt(m, corner, inner);
    const beyondMetal = Math.max(0, pressed - m[c + at.METAL_AT + (corner & 1)]);
    energy += stopEnergy(stop, m[c + at.METAL_RATE], crush, beyondMetal);
    if (maxwell) energy += maxwellEnergy(maxwell, crush, inner);
    if (maxwell && !isOn(at.STOP)) energy += heldByFriction(m, corner, crush);
    const shockTravel = travelOf(at.DROOP);
    const shockAlong = followPath(m, whole(m[c + at.SHOCK_PATH]), shockTravel);
    energy += shockAlong * (m[c + at.GAS_FORCE] + (m[c + at.GAS_RATE] * shockAlong) / 2);
    const beyondEnd = Math.max(0, -m[c + at.OPEN_AT] - shockTravel, shockTravel - m[c + at.CLOSED_AT]);
    energy += (m[c + at.SHOCK_END_RATE] * beyondEnd ** 2) / 2;
    const stretch = -m[c + at.DROOP_AT] - shockTravel;
    if (stretch > 0) energy += droopEnergy(m[c + at.DROOP_RATE], stretch);
    if (isOn(at.TYRE)) energy += heldByTyre(m, corner, state);
  }
  return energy;
}
