import { hermiteValue } from '../numerics/hermite.ts';
import type { Equations } from './equations.ts';
import { COORDINATES, SWITCHES } from './layout.ts';
import type { Stepper } from './stepper.ts';

/** Found by `firstEvent`: where in the step the first contact switches, and which ones switch there together. */
export interface Event {
  /** 0 … 1 of the step. */
  theta: number;
  count: number;
  readonly indices: Int32Array;
}

/** Switches that come within this time of the first are taken together: both sides of an even course. */
const TOGETHER = 1e-9;

const TOTAL = 4 * SWITCHES;

/**
 * Finds the first switch inside a tried step, by root finding on the motion of each contact that differs at the end.
 * Position and speed of the contact are cubics through both ends of the step; the ground is read exactly.
 *
 * @returns event with count 0 when nothing switches
 */
export function makeEventFinder(
  equations: Equations,
): (stepper: Stepper, time: number, step: number) => Event {
  const event: Event = { theta: 1, count: 0, indices: new Int32Array(TOTAL) };
  const roots = new Float64Array(TOTAL);
  const changed = new Int32Array(TOTAL);

  const valueInside = (
    index: number,
    stepper: Stepper,
    time: number,
    step: number,
    theta: number,
  ): number => {
    const { state, trial, start, end } = stepper;
    const v0 = equations.motion(index, state, COORDINATES);
    const v1 = equations.motion(index, trial, COORDINATES);
    const position = hermiteValue(
      equations.motion(index, state, 0),
      v0,
      equations.motion(index, trial, 0),
      v1,
      step,
      theta,
    );
    const velocity = hermiteValue(
      v0,
      equations.motion(index, start, COORDINATES),
      v1,
      equations.motion(index, end, COORDINATES),
      step,
      theta,
    );
    return equations.switchOfMotion(index, time + theta * step, position, velocity);
  };

  const rootOf = (index: number, stepper: Stepper, time: number, step: number): number => {
    const wasOn = equations.switches[index] === 1;
    let low = 0;
    let high = 1;
    let atLow = valueInside(index, stepper, time, step, 0);
    let atHigh = valueInside(index, stepper, time, step, 1);
    // A contact that has just switched may stand a rounding error on the wrong side: it switches back at once.
    if (atLow > 0 !== wasOn) return 0;
    // Regula falsi with the Illinois halving: brackets, and converges faster than bisection.
    for (let k = 0; k < 60 && (high - low) * step > 1e-12; k += 1) {
      const theta = low + ((high - low) * atLow) / (atLow - atHigh);
      const inside = theta > low && theta < high ? theta : (low + high) / 2;
      const value = valueInside(index, stepper, time, step, inside);
      if (value > 0 === wasOn) {
        low = inside;
        atLow = value;
        atHigh /= 2;
      } else {
        high = inside;
        atHigh = value;
        atLow /= 2;
      }
      if (Math.abs(value) < 1e-13) break;
    }
    return high;
  };

  return (stepper, time, step) => {
    event.theta = 1;
    event.count = 0;
    let found = 0;
    for (let index = 0; index < TOTAL; index += 1) {
      const on = equations.switchValue(index, time + step, stepper.trial) > 0;
      if (on !== (equations.switches[index] === 1)) changed[found++] = index;
    }
    for (let k = 0; k < found; k += 1) {
      roots[k] = rootOf(changed[k], stepper, time, step);
      if (roots[k] < event.theta) event.theta = roots[k];
    }
    for (let k = 0; k < found; k += 1) {
      if ((roots[k] - event.theta) * step <= TOGETHER) event.indices[event.count++] = changed[k];
    }
    return event;
  };
}
