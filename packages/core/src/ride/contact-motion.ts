import { coilForce } from '../elements/coil.ts';
import { tyreSwitch } from '../elements/tyre.ts';
import { readGroundUnder } from './ground.ts';
import * as at from './layout.ts';
import { type i32, type Memory, placeAt } from './memory.ts';
import { axleOf, curveAt, faceAt, metAgain, pastTip, ratioOfStop, stopAlong } from './stop-reading.ts';
import { followPath } from './tables.ts';

/**
 * One contact seen alone, for finding the moment at which it switches. `contact` is its bit number.
 * Its motion is linear in the coordinates, so the same function serves positions, speeds and accelerations.
 * @param row – place of the row of coordinates
 */
export function contactMotion(m: Memory, contact: i32, row: i32): number {
  const corner = contact >> 3;
  const which = contact & 7;
  const c = axleOf(corner);
  const sign: number = corner & 1 ? -1 : 1;
  const y = m[c + stationOf(which)];
  const first = row + at.AXLE + 2 * (corner >> 1);
  if (which === at.TYRE) return m[first] + y * (sign * m[first + 1]);
  const tilt = m[first + 1] - m[row + at.ROLL];
  return m[first] - (m[row + at.HEAVE] - m[c + at.X] * m[row + at.PITCH]) + y * (sign * tilt);
}

function stationOf(which: i32): i32 {
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
  m: Memory,
  contact: i32,
  time: number,
  position: number,
  velocity: number,
  inner: number,
): number {
  const corner = contact >> 3;
  const c = axleOf(corner);
  switch (contact & 7) {
    case at.STOP: {
      const crush = pastTip(m, corner, position);
      if (m[c + at.MAXWELL_RATE] === 0) return crush;
      // With a viscous branch it lets go where it would pull, and is met again where its face has come back to.
      const isTouched = ((placeAt(m, at.CONTACTS_ON) >> contact) & 1) === 1;
      const speed = ratioOfStop(m, corner, position) * velocity;
      if (!isTouched) return metAgain(m, corner, crush, faceAt(m, corner, inner), speed, inner);
      return crush > 0 ? stopAlong(m, corner, crush, curveAt(m, corner, crush), 0, speed, inner) : crush;
    }
    case at.METAL:
      return pastTip(m, corner, position) - m[c + at.METAL_AT + (corner & 1)];
    case at.COIL:
      return coilForce(
        m[c + at.PRELOAD],
        m[c + at.SPRING_RATE],
        followPath(m, placeAt(m, c + at.SPRING_PATH), position),
      );
    case at.DROOP:
      return -m[c + at.DROOP_AT] - position;
    case at.OPEN:
      return -m[c + at.OPEN_AT] - position;
    case at.CLOSED:
      return position - m[c + at.CLOSED_AT];
    case at.CLOSING:
      return velocity;
    default: {
      readGroundUnder(m, corner, time);
      const elastic = m[c + at.TYRE_LOAD] + m[c + at.TYRE_RATE] * (m[at.GROUND_HEIGHT] - position);
      return tyreSwitch(elastic, m[c + at.TYRE_DAMPING], m[at.GROUND_RISE] - velocity);
    }
  }
}
