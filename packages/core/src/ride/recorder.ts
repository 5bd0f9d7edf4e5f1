import { contactMotion, groundUnder } from './contact-motion.ts';
import { makeInside, stateInside } from './dense.ts';
import * as at from './layout.ts';
import type { RideHistory } from './result.ts';
import type { Dynamics } from './state.ts';
import type { Stepper } from './stepper.ts';
import { clearanceAt, crushAt, stopForceAt } from './stop-reading.ts';

/** Writes histories at a fixed rate, whatever the steps are. */
export interface Recorder {
  afterStep(stepper: Stepper, time: number, step: number): void;
  finish(): RideHistory;
}

/**
 * @param rate – samples a second, > 0
 * @param duration – longest time recorded [s]
 */
export function makeRecorder(dynamics: Dynamics, rate: number, duration: number): Recorder {
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
  const seatAcceleration = dynamics.model.seat ? new Float64Array(capacity) : null;
  const inside = makeInside(dynamics.coordinates, dynamics.sums);
  let count = 0;

  const write = (time: number): void => {
    const { position, speed, acceleration, sums } = inside;
    coordinates.set(position.subarray(0, at.RIG_COORDINATES), at.RIG_COORDINATES * count);
    dynamics.accelerate(time, position, speed, acceleration, sums);
    bodyAcceleration[count] = acceleration[at.HEAVE];
    pitchAcceleration[count] = acceleration[at.PITCH];
    rollAcceleration[count] = acceleration[at.ROLL];
    if (seatAcceleration) seatAcceleration[count] = acceleration[at.SEAT];
    for (let corner = 0; corner < 4; corner += 1) {
      const contact = at.CONTACTS * corner + at.STOP;
      const x = contactMotion(dynamics, contact, position);
      const k = 4 * count + corner;
      travel[k] = x;
      crush[k] = crushAt(dynamics, corner, x);
      clearance[k] = clearanceAt(dynamics, corner, x);
      stopForce[k] = stopForceAt(
        dynamics,
        corner,
        x,
        contactMotion(dynamics, contact, speed),
        dynamics.hasInner ? sums[at.INNER + corner] : 0,
      );
      ground[k] = groundUnder(dynamics, corner, time);
    }
    count += 1;
  };

  return {
    afterStep(stepper, time, step) {
      while (count < capacity && count / rate <= time + step + 1e-12) {
        const moment = count / rate;
        stateInside(stepper, step, Math.min(1, Math.max(0, (moment - time) / step)), inside);
        write(moment);
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
