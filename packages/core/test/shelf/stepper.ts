import * as at from '../../src/ride/layout.ts';
import type { Memory } from '../../src/ride/memory.ts';
import { end, fourth, localError, placeStages, second, third } from '../../src/ride/stepper.ts';

/** Accelerations of a mechanical system, q″ = f(t, q, q′), written into `out`. */
export type Accelerate = (
  time: number,
  position: Float64Array,
  speed: Float64Array,
  out: Float64Array,
) => void;

/** One end of a step, as views of the memory. */
interface StepEnd {
  readonly place: number;
  readonly position: Float64Array;
  readonly speed: Float64Array;
  readonly acceleration: Float64Array;
}

/** The step of the ride kernel under any law, in a memory of its own. */
export interface Stepper {
  start: StepEnd;
  end: StepEnd;
  evaluations: number;
  evaluateStart(time: number): void;
  /** @returns largest local error ÷ accepted error; NaN when the result is not finite */
  attempt(time: number, step: number): number;
  /** Makes the tried end the start of the next step. */
  accept(): void;
}

/** @param accepted – local error accepted in each position and in each speed, in their own units */
export function makeStepper(
  accelerate: Accelerate,
  coordinates: number,
  accepted: { readonly position: number; readonly speed: number },
): Stepper {
  const m: Memory = new Float64Array(at.HEAP);
  for (let i = 0; i < coordinates; i += 1) {
    m[at.PER_ERROR + i] = 1 / accepted.position;
    m[at.PER_ERROR + at.COORDINATES + i] = 1 / accepted.speed;
  }
  const row = (place: number): Float64Array => m.subarray(place, place + coordinates);
  const stepEnd = (place: number): StepEnd => ({
    place,
    position: row(place + at.POSITION),
    speed: row(place + at.SPEED),
    acceleration: row(place + at.ACCELERATION),
  });
  const stages = [stepEnd(at.SECOND), stepEnd(at.THIRD), stepEnd(at.FOURTH)];
  const evaluate = ({ place, position, speed, acceleration }: StepEnd): void => {
    accelerate(m[place + at.TIME], position, speed, acceleration);
    stepper.evaluations += 1;
  };
  const stepper: Stepper = {
    start: stepEnd(at.ONE_END),
    end: stepEnd(at.OTHER_END),
    evaluations: 0,
    evaluateStart(time) {
      m[stepper.start.place + at.TIME] = time;
      evaluate(stepper.start);
    },
    attempt(time, step) {
      const from = stepper.start.place;
      const to = stepper.end.place;
      m[from + at.TIME] = time;
      placeStages(m, from, to, step);
      second(m, from, step);
      evaluate(stages[0]);
      third(m, from, step);
      evaluate(stages[1]);
      fourth(m, from, step);
      evaluate(stages[2]);
      end(m, from, to, step);
      evaluate(stepper.end);
      return localError(m, from, to, step);
    },
    accept() {
      const { start } = stepper;
      stepper.start = stepper.end;
      stepper.end = start;
    },
  };
  return stepper;
}
