import { hermiteValue } from '../numerics/hermite.ts';
import { crestOf, stateInside } from './dense.ts';
import type { Equations } from './equations.ts';
import { COORDINATES, DROOP, HEAVE, METAL, PITCH, ROLL, STATE, STOP, SWITCHES, TYRE } from './layout.ts';
import { STAGE_WEIGHTS, type Stepper } from './stepper.ts';

/** Running extremes and sums of a run: fed with every accepted step, read once at the end. */
export interface Peaks {
  /** Largest axle travel at the stop's station, a corner [m]. */
  readonly travel: Float64Array;
  readonly stopForce: Float64Array;
  readonly airborne: Float64Array;
  readonly touches: Int32Array;
  readonly compressionSpeed: Float64Array;
  readonly reboundSpeed: Float64Array;
  bodyAcceleration: number;
  /** ∫ a² dt of the body's heave. */
  squaredAcceleration: number;
  pitch: number;
  roll: number;
  afterStep(stepper: Stepper, time: number, step: number): void;
}

/** Look inside a step only when its ends come this near to the largest value so far. */
const NEAR = 0.7;
const INSIDE = [0.25, 0.5, 0.75] as const;

/** Largest value of the parabola through three even points, or of the points when it has no crest between them. */
function parabolaCrest(before: number, middle: number, after: number): number {
  const bend = before - 2 * middle + after;
  if (!(middle >= before && middle >= after) || bend >= 0) return Math.max(before, middle, after);
  return middle - (before - after) ** 2 / (8 * bend);
}

export function makePeaks(equations: Equations): Peaks {
  const inner = new Float64Array(STATE);
  const slope = new Float64Array(STATE);
  const samples = new Float64Array(INSIDE.length + 2);

  const largestOfSamples = (): number => {
    let best = 0;
    for (let k = 1; k < samples.length - 1; k += 1) {
      best = Math.max(best, parabolaCrest(samples[k - 1], samples[k], samples[k + 1]));
    }
    return best;
  };

  const accelerationInside = (stepper: Stepper, time: number, step: number): number => {
    samples[0] = Math.abs(stepper.start[COORDINATES + HEAVE]);
    samples[samples.length - 1] = Math.abs(stepper.end[COORDINATES + HEAVE]);
    INSIDE.forEach((theta, k) => {
      stateInside(stepper, step, theta, inner);
      equations.derivative(time + theta * step, inner, slope);
      samples[k + 1] = Math.abs(slope[COORDINATES + HEAVE]);
    });
    return largestOfSamples();
  };

  const peaks: Peaks = {
    travel: new Float64Array(4).fill(-Infinity),
    stopForce: new Float64Array(4),
    airborne: new Float64Array(4),
    touches: new Int32Array(4 * SWITCHES),
    compressionSpeed: new Float64Array(4),
    reboundSpeed: new Float64Array(4),
    bodyAcceleration: 0,
    squaredAcceleration: 0,
    pitch: 0,
    roll: 0,

    afterStep(stepper, time, step) {
      const { state, trial, start, second, third, end } = stepper;
      const a = COORDINATES + HEAVE;
      peaks.squaredAcceleration +=
        step *
        (STAGE_WEIGHTS[0] * start[a] ** 2 +
          STAGE_WEIGHTS[1] * second[a] ** 2 +
          STAGE_WEIGHTS[2] * third[a] ** 2);
      const ends = Math.max(Math.abs(start[a]), Math.abs(end[a]));
      if (ends > NEAR * peaks.bodyAcceleration) {
        peaks.bodyAcceleration = Math.max(peaks.bodyAcceleration, accelerationInside(stepper, time, step));
      }
      peaks.pitch = Math.max(peaks.pitch, Math.abs(trial[PITCH]));
      peaks.roll = Math.max(peaks.roll, Math.abs(trial[ROLL]));

      for (let corner = 0; corner < 4; corner += 1) {
        const base = corner * SWITCHES;
        const x0 = equations.motion(base + STOP, state, 0);
        const x1 = equations.motion(base + STOP, trial, 0);
        const v0 = equations.motion(base + STOP, state, COORDINATES);
        const v1 = equations.motion(base + STOP, trial, COORDINATES);
        let top = Math.max(x0, x1);
        if (v0 > 0 && v1 < 0) top = Math.max(top, crestOf(x0, v0, x1, v1, step));
        if (top > peaks.travel[corner]) peaks.travel[corner] = top;

        if (equations.switches[base + STOP] === 1) {
          const last = samples.length - 1;
          samples[0] = equations.stopForceAt(corner, x0, v0);
          samples[last] = equations.stopForceAt(corner, x1, v1);
          if (Math.max(samples[0], samples[last]) > NEAR * peaks.stopForce[corner]) {
            const a0 = equations.motion(base + STOP, start, COORDINATES);
            const a1 = equations.motion(base + STOP, end, COORDINATES);
            for (let k = 1; k < last; k += 1) {
              const theta = INSIDE[k - 1];
              samples[k] = equations.stopForceAt(
                corner,
                hermiteValue(x0, v0, x1, v1, step, theta),
                hermiteValue(v0, a0, v1, a1, step, theta),
              );
            }
            peaks.stopForce[corner] = Math.max(
              peaks.stopForce[corner],
              samples[0],
              samples[last],
              largestOfSamples(),
            );
          }
        }

        if (equations.switches[base + TYRE] === 0) peaks.airborne[corner] += step;
        const shockSpeed =
          equations.motion(base + DROOP, trial, COORDINATES) * equations.ends[corner >> 1].shockRatio;
        if (shockSpeed > peaks.compressionSpeed[corner]) peaks.compressionSpeed[corner] = shockSpeed;
        if (-shockSpeed > peaks.reboundSpeed[corner]) peaks.reboundSpeed[corner] = -shockSpeed;
      }
    },
  };
  return peaks;
}

/** Contacts counted when they are newly made; lift-off is the tyre's own sum. */
export const COUNTED = [STOP, METAL, DROOP] as const;
