import { coilEnergy, coilForce } from '../elements/coil.ts';
import { droopEnergy } from '../elements/droop-limit.ts';
import { stopEnergy } from '../elements/stop.ts';
import { tyreEnergy } from '../elements/tyre.ts';
import { contactMotion, groundUnder } from './contact-motion.ts';
import type { Dynamics } from './dynamics.ts';
import * as at from './layout.ts';
import type { StepEnd } from './stepper.ts';

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
  const { sprung, axles: models, gravity } = dynamics.model;
  const { position: q, speed: v } = state;
  let energy =
    (sprung.mass * v[at.HEAVE] ** 2 +
      sprung.pitchInertia * v[at.PITCH] ** 2 +
      sprung.rollInertia * v[at.ROLL] ** 2) /
      2 +
    sprung.mass * gravity * q[at.HEAVE];
  [models.front, models.rear].forEach((axle, e) => {
    const first = at.AXLE + 2 * e;
    energy += (axle.mass * v[first] ** 2 + axle.rollInertia * v[first + 1] ** 2) / 2;
    energy += axle.mass * gravity * q[first];
  });
  for (let corner = 0; corner < 4; corner += 1) {
    const { numbers: c, stop } = dynamics.axles[corner >> 1];
    const side = corner & 1;
    const bit = at.CONTACTS * corner;
    const travelOf = (which: number): number => contactMotion(dynamics, bit + which, q);
    const seat = Math.max(0, coilForce(c[at.PRELOAD], c[at.SPRING_RATE], travelOf(at.COIL)));
    energy += coilEnergy(c[at.SPRING_RATE], seat);
    const crush = c[at.STOP_RATIO] * travelOf(at.STOP) - c[at.STOP_GAP + side];
    const metal = Math.max(0, crush - c[at.METAL_AT + side]);
    energy += stopEnergy(stop, c[at.METAL_RATE], Math.max(0, crush), metal);
    const stretch = -c[at.DROOP_AT] - travelOf(at.DROOP);
    if (stretch > 0) energy += droopEnergy(c[at.DROOP_RATE], stretch);
    if (((dynamics.contacts >> (bit + at.TYRE)) & 1) === 1)
      energy += heldByTyre(dynamics, corner, time, state);
  }
  return energy;
}
