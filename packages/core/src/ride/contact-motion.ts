import { heightAt, slopeAt } from '../course/sampled.ts';
import { coilForce } from '../elements/coil.ts';
import { tyreSwitch } from '../elements/tyre.ts';
import * as at from './layout.ts';
import type { Dynamics } from './state.ts';
import { faceAt, pastTip, stopAlong } from './stop-reading.ts';

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
  return which === at.DROOP || which === at.OPEN || which === at.CLOSED ? at.SHOCK_STATION : at.STOP_STATION;
}

/**
 * Positive where the contact should carry force.
 * @param position – compression at its station, or the height of the wheel for a tyre [m]
 * @param velocity – its rate [m/s]
 * @param inner – inner displacement of the stop's viscous branch [m], 0 without one
 */
export function contactSwitch(
  dynamics: Dynamics,
  contact: number,
  time: number,
  position: number,
  velocity: number,
  inner: number,
): number {
  const corner = Math.floor(contact / at.CONTACTS);
  const side = corner & 1;
  const c = dynamics.axles[corner >> 1].numbers;
  switch (contact - at.CONTACTS * corner) {
    case at.STOP: {
      const crush = pastTip(dynamics, corner, position);
      if (dynamics.axles[corner >> 1].maxwell === null) return crush;
      // With a viscous branch it lets go where it would pull, and is met again where its face has come back to.
      const touched = ((dynamics.contacts >> contact) & 1) === 1;
      if (!touched) return crush - faceAt(dynamics, corner, inner);
      const speed = c[at.STOP_RATIO] * velocity;
      return crush > 0 ? stopAlong(dynamics, corner, crush, 0, speed, inner) : crush;
    }
    case at.METAL:
      return pastTip(dynamics, corner, position) - c[at.METAL_AT + side];
    case at.COIL:
      return coilForce(c[at.PRELOAD], c[at.SPRING_RATE], position);
    case at.DROOP:
      return -c[at.DROOP_AT] - position;
    case at.OPEN:
      return -c[at.OPEN_AT] - position;
    case at.CLOSED:
      return position - c[at.CLOSED_AT];
    case at.CLOSING:
      return velocity;
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
