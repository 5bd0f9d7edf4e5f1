import { hermiteValue } from '../numerics/hermite.ts';
import { contactMotion } from './contact-motion.ts';
import { crestOf, makeInside, parabolaCrest, stateInside } from './dense.ts';
import * as at from './layout.ts';
import type { Dynamics } from './state.ts';
import type { Stepper } from './stepper.ts';
import { stopForceAt } from './stop-reading.ts';

/** Running extremes of a run: fed with every accepted step, read once at the end. */
export interface Peaks {
  /** Largest axle travel at the stop's station, a corner [m]. */
  readonly travel: Float64Array;
  readonly stopForce: Float64Array;
  /** Time without tyre force [s]. */
  readonly airborne: Float64Array;
  readonly compressionSpeed: Float64Array;
  readonly reboundSpeed: Float64Array;
  bodyAcceleration: number;
  /** 0 without a seat. */
  seatAcceleration: number;
  pitch: number;
  roll: number;
  /** Takes in a step; the dynamics' probe must be that of its end. */
  afterStep(stepper: Stepper, time: number, step: number): void;
}

/** Look inside a step only when its ends come this near to the largest value so far. */
const NEAR = 0.7;
const INSIDE = [0.25, 0.5, 0.75] as const;
const LAST = INSIDE.length + 1;

/** @param dynamics – in the state of the first step's start: `accelerate` was called there */
export function makePeaks(dynamics: Dynamics): Peaks {
  const { probe } = dynamics;
  const hasSeat = dynamics.model.seat !== undefined;
  const before = Float64Array.from(probe);
  const inside = makeInside(dynamics.coordinates, dynamics.sums);
  const samples = new Float64Array(LAST + 1);

  const innerOf = (sums: Float64Array, corner: number): number =>
    dynamics.hasInner ? sums[at.INNER + corner] : 0;

  const crestOfSamples = (): number => {
    let best = 0;
    for (let k = 1; k < LAST; k += 1) {
      best = Math.max(best, parabolaCrest(samples[k - 1], samples[k], samples[k + 1]));
    }
    return best;
  };

  const accelerationCrest = (stepper: Stepper, time: number, step: number, coordinate: number): number => {
    samples[0] = Math.abs(stepper.start.acceleration[coordinate]);
    samples[LAST] = Math.abs(stepper.end.acceleration[coordinate]);
    for (let k = 1; k < LAST; k += 1) {
      const theta = INSIDE[k - 1];
      stateInside(stepper, step, theta, inside);
      const { position, speed, acceleration, sums } = inside;
      dynamics.accelerate(time + theta * step, position, speed, acceleration, sums);
      samples[k] = Math.abs(acceleration[coordinate]);
    }
    return crestOfSamples();
  };

  const stopCrest = (stepper: Stepper, step: number, corner: number, x1: number, v1: number): number => {
    const x0 = before[at.PROBE * corner + at.STOP_TRAVEL];
    const v0 = before[at.PROBE * corner + at.STOP_SPEED];
    const contact = at.CONTACTS * corner + at.STOP;
    const a0 = contactMotion(dynamics, contact, stepper.start.acceleration);
    const a1 = contactMotion(dynamics, contact, stepper.end.acceleration);
    const u0 = innerOf(stepper.start.sums, corner);
    const u1 = innerOf(stepper.end.sums, corner);
    for (let k = 1; k < LAST; k += 1) {
      const theta = INSIDE[k - 1];
      samples[k] = stopForceAt(
        dynamics,
        corner,
        hermiteValue(x0, v0, x1, v1, step, theta),
        hermiteValue(v0, a0, v1, a1, step, theta),
        u0 + theta * (u1 - u0),
      );
    }
    return crestOfSamples();
  };

  const peaks: Peaks = {
    travel: new Float64Array(4).fill(-Infinity),
    stopForce: new Float64Array(4),
    airborne: new Float64Array(4),
    compressionSpeed: new Float64Array(4),
    reboundSpeed: new Float64Array(4),
    bodyAcceleration: 0,
    seatAcceleration: 0,
    pitch: 0,
    roll: 0,

    afterStep(stepper, time, step) {
      const { contacts } = dynamics;
      for (let corner = 0; corner < 4; corner += 1) {
        const p = at.PROBE * corner;
        const x0 = before[p + at.STOP_TRAVEL];
        const v0 = before[p + at.STOP_SPEED];
        const x1 = probe[p + at.STOP_TRAVEL];
        const v1 = probe[p + at.STOP_SPEED];
        const on = contacts >> (at.CONTACTS * corner);
        let top = Math.max(x0, x1);
        if (v0 > 0 && v1 < 0) top = Math.max(top, crestOf(x0, v0, x1, v1, step));
        if (top > peaks.travel[corner]) peaks.travel[corner] = top;
        if ((on & ((1 << at.STOP) | (1 << at.METAL))) !== 0) {
          samples[0] = stopForceAt(dynamics, corner, x0, v0, innerOf(stepper.start.sums, corner));
          samples[LAST] = stopForceAt(dynamics, corner, x1, v1, innerOf(stepper.end.sums, corner));
          const larger = Math.max(samples[0], samples[LAST]);
          if (larger > NEAR * peaks.stopForce[corner]) {
            const crest = Math.max(larger, stopCrest(stepper, step, corner, x1, v1));
            if (crest > peaks.stopForce[corner]) peaks.stopForce[corner] = crest;
          }
        }
        if ((on & (1 << at.TYRE)) === 0) peaks.airborne[corner] += step;
        const shockSpeed = probe[p + at.SHOCK_SPEED];
        if (shockSpeed > peaks.compressionSpeed[corner]) peaks.compressionSpeed[corner] = shockSpeed;
        if (-shockSpeed > peaks.reboundSpeed[corner]) peaks.reboundSpeed[corner] = -shockSpeed;
      }
      for (let i = 0; i < probe.length; i += 1) before[i] = probe[i];

      const { start, end } = stepper;
      const heave = Math.max(Math.abs(start.acceleration[at.HEAVE]), Math.abs(end.acceleration[at.HEAVE]));
      if (heave > NEAR * peaks.bodyAcceleration) {
        const crest = accelerationCrest(stepper, time, step, at.HEAVE);
        if (crest > peaks.bodyAcceleration) peaks.bodyAcceleration = crest;
      }
      if (hasSeat) {
        const seat = Math.max(Math.abs(start.acceleration[at.SEAT]), Math.abs(end.acceleration[at.SEAT]));
        if (seat > NEAR * peaks.seatAcceleration) {
          const crest = accelerationCrest(stepper, time, step, at.SEAT);
          if (crest > peaks.seatAcceleration) peaks.seatAcceleration = crest;
        }
      }
      peaks.pitch = Math.max(peaks.pitch, Math.abs(end.position[at.PITCH]));
      peaks.roll = Math.max(peaks.roll, Math.abs(end.position[at.ROLL]));
    },
  };
  return peaks;
}
