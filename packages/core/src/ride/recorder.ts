import { contactMotion } from './contact-motion.ts';
import { stateInside } from './dense.ts';
import { accelerate } from './dynamics.ts';
import { readGroundUnder } from './ground.ts';
import * as at from './layout.ts';
import type { i32, Memory } from './memory.ts';
import type { RideHistory } from './result.ts';
import { clearanceAt, crushAt, stopForceAt } from './stop-reading.ts';

/** Writes histories at a fixed rate, whatever the steps are. */
export interface Recorder {
  /** Takes in a step, the contacts being those that were held in it. */
  afterStep(m: Memory, from: i32, to: i32): void;
  finish(): RideHistory;
}

/**
 * @param rate – samples a second, > 0
 * @param duration – longest time recorded [s]
 */
export function makeRecorder(rate: number, duration: number, hasSeat: boolean): Recorder {
  const capacity = Math.floor(duration * rate + 1e-9) + 1;
  const perCorner = (): Float64Array => new Float64Array(4 * capacity);
  const coordinates = new Float64Array(at.RIG_COORDINATES * capacity);
  const crush = perCorner();
  const clearance = perCorner();
  const stopForce = perCorner();
  const travel = perCorner();
  const ground = perCorner();
  const bodyAcceleration = new Float64Array(capacity);
  const pitchAcceleration = new Float64Array(capacity);
  const rollAcceleration = new Float64Array(capacity);
  const seatAcceleration = hasSeat ? new Float64Array(capacity) : null;
  let count = 0;

  /** Writes the state that stands in `INSIDE`. */
  const write = (m: Memory): void => {
    const state = at.INSIDE;
    accelerate(m, state);
    for (let i = 0; i < at.RIG_COORDINATES; i += 1)
      coordinates[at.RIG_COORDINATES * count + i] = m[state + i];
    const acceleration = state + at.ACCELERATION;
    bodyAcceleration[count] = m[acceleration + at.HEAVE];
    pitchAcceleration[count] = m[acceleration + at.PITCH];
    rollAcceleration[count] = m[acceleration + at.ROLL];
    if (seatAcceleration) seatAcceleration[count] = m[acceleration + at.SEAT];
    for (let corner = 0; corner < 4; corner += 1) {
      const contact = at.CONTACTS * corner + at.STOP;
      const x = contactMotion(m, contact, state);
      const speed = contactMotion(m, contact, state + at.SPEED);
      const k = 4 * count + corner;
      travel[k] = x;
      crush[k] = crushAt(m, corner, x);
      clearance[k] = clearanceAt(m, corner, x);
      stopForce[k] = stopForceAt(m, corner, x, speed, m[state + at.INNER + corner]);
      readGroundUnder(m, corner, m[state + at.TIME]);
      ground[k] = m[at.GROUND_HEIGHT];
    }
    count += 1;
  };

  return {
    afterStep(m, from, to) {
      const time = m[from + at.TIME];
      const step = m[to + at.TIME] - time;
      while (count < capacity && count / rate <= time + step + 1e-12) {
        const share = Math.min(1, Math.max(0, (count / rate - time) / step));
        stateInside(m, from, to, step, share, at.INSIDE);
        write(m);
      }
    },
    finish: () => ({
      rate,
      count,
      coordinates: coordinates.slice(0, at.RIG_COORDINATES * count),
      crush: crush.slice(0, 4 * count),
      clearance: clearance.slice(0, 4 * count),
      stopForce: stopForce.slice(0, 4 * count),
      travel: travel.slice(0, 4 * count),
      bodyAcceleration: bodyAcceleration.slice(0, count),
      pitchAcceleration: pitchAcceleration.slice(0, count),
      rollAcceleration: rollAcceleration.slice(0, count),
      seatAcceleration: seatAcceleration?.slice(0, count) ?? null,
      ground: ground.slice(0, 4 * count),
    }),
  };
}
