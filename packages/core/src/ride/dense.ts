import { hermiteSlope, hermiteValue } from '../numerics/hermite.ts';
import { MOTION, STATE } from './layout.ts';
import type { Stepper } from './stepper.ts';

/** State inside an accepted step: a cubic through both ends for every coordinate and every speed. */
export function stateInside(stepper: Stepper, step: number, theta: number, out: Float64Array): void {
  const { state, trial, start, end } = stepper;
  for (let i = 0; i < MOTION; i += 1) {
    out[i] = hermiteValue(state[i], start[i], trial[i], end[i], step, theta);
  }
  for (let i = MOTION; i < STATE; i += 1) out[i] = state[i] + theta * (trial[i] - state[i]);
}

/** Largest value of the cubic with slopes m0 > 0 > m1 at its ends. */
export function crestOf(y0: number, m0: number, y1: number, m1: number, step: number): number {
  // The slope is a quadratic in θ with one root between the ends.
  let low = 0;
  let high = 1;
  for (let k = 0; k < 40; k += 1) {
    const mid = (low + high) / 2;
    if (hermiteSlope(y0, m0, y1, m1, step, mid) > 0) low = mid;
    else high = mid;
  }
  return hermiteValue(y0, m0, y1, m1, step, (low + high) / 2);
}
