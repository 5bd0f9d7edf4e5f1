import { heightAt, slopeAt } from '../course/sampled.ts';
import { coilForce } from '../elements/coil.ts';
import { tyreSwitch } from '../elements/tyre.ts';
import type { Dynamics } from './dynamics.ts';
import * as at from './layout.ts';

/**
 * One contact seen alone, for finding the moment at which it switches. `contact` is its bit number.
 * Its motion is linear in the coordinates, so the same function serves positions, speeds and accelerations.
 */
export function contactMotion(dynamics: Dynamics, contact: number, of: Float64Array): number {
  const corner = Math.floor(contact / at.CONTACTS);
  const which = contact - at.CONTACTS * corner;
  const c = dynamics.axles[corner >> 1].numbers;
  const sign = corner & 1 ? -1 : 1;
  const y = c[stationOf(which)];
  const first = at.AXLE + 2 * (corner >> 1);
  const wheel = of[first] + y * (sign * of[first + 1]);
  if (which === at.TYRE) return wheel;
  return of[first] - (of[at.HEAVE] - c[at.X] * of[at.PITCH]) + y * (sign * (of[first + 1] - of[at.ROLL]));
}

function stationOf(which: number): number {
  if (which === at.TYRE) return at.HALF_TRACK;
  if (which === at.COIL) return at.SPRING_STATION;
  return which === at.DROOP ? at.SHOCK_STATION : at.STOP_STATION;
}

/**
 * Positive where the contact should carry force.
 * @param position – compression at its station, or the height of the wheel for a tyre [m]
 * @param velocity – its rate [m/s]
 */
export function contactSwitch(
  dynamics: Dynamics,
  contact: number,
  time: number,
  position: number,
  velocity: number,
): number {
  const corner = Math.floor(contact / at.CONTACTS);
  const side = corner & 1;
  const c = dynamics.axles[corner >> 1].numbers;
  switch (contact - at.CONTACTS * corner) {
    case at.STOP:
      return c[at.STOP_RATIO] * position - c[at.STOP_GAP + side];
    case at.METAL:
      return c[at.STOP_RATIO] * position - c[at.STOP_GAP + side] - c[at.METAL_AT + side];
    case at.COIL:
      return coilForce(c[at.PRELOAD], c[at.SPRING_RATE], position);
    case at.DROOP:
      return -c[at.DROOP_AT] - position;
    default: {
      const ground = dynamics.sides[side];
      const distance = dynamics.speed * time - c[at.BEHIND_FRONT];
      const elastic = c[at.TYRE_LOAD] + c[at.TYRE_RATE] * (heightAt(ground, distance) - position);
      return tyreSwitch(elastic, c[at.TYRE_DAMPING], dynamics.speed * slopeAt(ground, distance) - velocity);
    }
  }
}

/** Height of the ground under a tyre [m]. */
export const groundUnder = (dynamics: Dynamics, corner: number, time: number): number =>
  heightAt(
    dynamics.sides[corner & 1],
    dynamics.speed * time - dynamics.axles[corner >> 1].numbers[at.BEHIND_FRONT],
  );
