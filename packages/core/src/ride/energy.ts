import { antiRollEnergy } from '../elements/anti-roll-bar.ts';
import { coilEnergy, coilForce } from '../elements/coil.ts';
import { droopEnergy } from '../elements/droop-limit.ts';
import { maxwellEnergy } from '../elements/maxwell.ts';
import { stopEnergy } from '../elements/stop.ts';
import { tyreEnergy } from '../elements/tyre.ts';
import { contactMotion, groundUnder } from './contact-motion.ts';
import * as at from './layout.ts';
import type { Dynamics } from './state.ts';
import type { StepEnd } from './stepper.ts';
import { faceAt, pastTip } from './stop-reading.ts';

/**
 * Energy held by the tyre of a corner [J]. A tyre lets go a little before it is unpressed, while its damping pulls:
 * what it holds at that moment is lost, so the books ask for it at every lift-off and touch.
 */
export function heldByTyre(dynamics: Dynamics, corner: number, time: number, state: StepEnd): number {
  const c = dynamics.axles[corner >> 1].numbers;
  const wheel = contactMotion(dynamics, at.CONTACTS * corner + at.TYRE, state.position);
  return tyreEnergy(
    c[at.TYRE_RATE],
    c[at.TYRE_LOAD] + c[at.TYRE_RATE] * (groundUnder(dynamics, corner, time) - wheel),
  );
}

/** Energy in motion, in height and in all elements that carry force [J]. */
export function storedEnergy(dynamics: Dynamics, time: number, state: StepEnd): number {
  const { sprung, axles: models, gravity, seat } = dynamics.model;
  const { position: q, speed: v, sums } = state;
  const bodyMass = sprung.mass - (seat?.mass ?? 0);
  let energy =
    (bodyMass * v[at.HEAVE] ** 2 +
      sprung.pitchInertia * v[at.PITCH] ** 2 +
      sprung.rollInertia * v[at.ROLL] ** 2) /
      2 +
    sprung.mass * gravity * q[at.HEAVE];
  if (seat) {
    const give = q[at.HEAVE] - seat.ahead * q[at.PITCH] + seat.left * q[at.ROLL] - q[at.SEAT];
    // His weight stands in that of the sprung mass; the cushion holds only what it gives beyond rest.
    energy += (seat.mass * v[at.SEAT] ** 2 + seat.rate * give ** 2) / 2;
  }
  [models.front, models.rear].forEach((axle, e) => {
    const first = at.AXLE + 2 * e;
    energy += (axle.mass * v[first] ** 2 + axle.rollInertia * v[first + 1] ** 2) / 2;
    energy += axle.mass * gravity * q[first];
    const tilt = q[first + 1] - q[at.ROLL];
    energy += antiRollEnergy(dynamics.axles[e].numbers[at.ANTI_ROLL_RATE], tilt);
  });
  for (let corner = 0; corner < 4; corner += 1) {
    const { numbers: c, stop, maxwell } = dynamics.axles[corner >> 1];
    const side = corner & 1;
    const bit = at.CONTACTS * corner;
    const travelOf = (which: number): number => contactMotion(dynamics, bit + which, q);
    const seat = Math.max(0, coilForce(c[at.PRELOAD], c[at.SPRING_RATE], travelOf(at.COIL)));
    energy += coilEnergy(c[at.SPRING_RATE], seat);
    const pressed = pastTip(dynamics, corner, travelOf(at.STOP));
    const inner = maxwell ? sums[at.INNER + corner] : 0;
    const isTouched = ((dynamics.contacts >> (bit + at.STOP)) & 1) === 1;
    const crush = isTouched ? Math.max(0, pressed) : faceAt(dynamics, corner, inner);
    energy += stopEnergy(stop, c[at.METAL_RATE], crush, Math.max(0, pressed - c[at.METAL_AT + side]));
    if (maxwell) energy += maxwellEnergy(maxwell, crush, inner);
    const shockTravel = travelOf(at.DROOP);
    energy += shockTravel * (c[at.GAS_FORCE] + (c[at.GAS_RATE] * shockTravel) / 2);
    const beyondEnd = Math.max(0, -c[at.OPEN_AT] - shockTravel, shockTravel - c[at.CLOSED_AT]);
    energy += (c[at.SHOCK_END_RATE] * beyondEnd ** 2) / 2;
    const stretch = -c[at.DROOP_AT] - shockTravel;
    if (stretch > 0) energy += droopEnergy(c[at.DROOP_RATE], stretch);
    if (((dynamics.contacts >> (bit + at.TYRE)) & 1) === 1)
      energy += heldByTyre(dynamics, corner, time, state);
  }
  return energy;
}
