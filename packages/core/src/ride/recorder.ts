import { stateInside } from './dense.ts';
import type { Equations } from './equations.ts';
import { COORDINATES, HEAVE, STATE, STOP, SWITCHES } from './layout.ts';
import type { RideHistory } from './result.ts';
import type { Stepper } from './stepper.ts';

/** Writes histories at a fixed rate, whatever the steps are. */
export interface Recorder {
  afterStep(stepper: Stepper, time: number, step: number): void;
  finish(): RideHistory;
}

/**
 * @param rate – samples a second, > 0
 * @param duration – longest time recorded [s]
 */
export function makeRecorder(equations: Equations, rate: number, duration: number): Recorder {
  const capacity = Math.floor(duration * rate + 1e-9) + 1;
  const coordinates = new Float64Array(COORDINATES * capacity);
  const [crush, clearance, stopForce, travel, ground] = Array.from(
    { length: 5 },
    () => new Float64Array(4 * capacity),
  );
  const bodyAcceleration = new Float64Array(capacity);
  const inner = new Float64Array(STATE);
  const slope = new Float64Array(STATE);
  let count = 0;

  const write = (time: number): void => {
    coordinates.set(inner.subarray(0, COORDINATES), COORDINATES * count);
    equations.derivative(time, inner, slope);
    bodyAcceleration[count] = slope[COORDINATES + HEAVE];
    for (let corner = 0; corner < 4; corner += 1) {
      const end = equations.ends[corner >> 1];
      const side = corner & 1;
      const index = corner * SWITCHES + STOP;
      const x = equations.motion(index, inner, 0);
      const at = 4 * count + corner;
      travel[at] = x;
      crush[at] = Math.max(0, end.stopRatio * x - end.stopGap[side]);
      clearance[at] = (end.stopGap[side] + end.metalAt[side]) / end.stopRatio - x;
      stopForce[at] = equations.stopForceAt(corner, x, equations.motion(index, inner, COORDINATES));
      ground[at] = equations.groundAt(corner, time);
    }
    count += 1;
  };

  return {
    afterStep(stepper, time, step) {
      while (count < capacity && count / rate <= time + step + 1e-12) {
        const at = count / rate;
        stateInside(stepper, step, Math.min(1, Math.max(0, (at - time) / step)), inner);
        write(at);
      }
    },
    finish: () => ({
      rate,
      count,
      coordinates: coordinates.slice(0, COORDINATES * count),
      crush: crush.slice(0, 4 * count),
      clearance: clearance.slice(0, 4 * count),
      stopForce: stopForce.slice(0, 4 * count),
      travel: travel.slice(0, 4 * count),
      bodyAcceleration: bodyAcceleration.slice(0, count),
      ground: ground.slice(0, 4 * count),
    }),
  };
}
