import { makeStepper, ORDER, type Stepper } from '../../src/ride/stepper.ts';
import type { Motion, ShelfProblem } from './problem.ts';

/** The one place where the tests know how the stepper is called. */
export function stepperFor(problem: ShelfProblem, tolerance = 1): Stepper {
  const n = problem.position.length;
  const accepted = new Float64Array(n).fill(tolerance);
  const stepper = makeStepper(problem.accelerate, {
    coordinates: n,
    sums: 0,
    positionScale: accepted,
    speedScale: accepted,
  });
  return restart(stepper, 0, { position: problem.position, speed: problem.speed });
}

/** Puts the stepper into a state. */
export function restart(stepper: Stepper, time: number, { position, speed }: Motion): Stepper {
  stepper.start.position.set(position);
  stepper.start.speed.set(speed);
  stepper.evaluateStart(time);
  return stepper;
}

/** Largest difference from the answer, over positions and speeds. */
export function missOf(stepper: Stepper, problem: ShelfProblem, time: number): number {
  const { position, speed } = problem.exact(time);
  const { start } = stepper;
  return Math.max(
    ...position.map((value, i) => Math.abs(start.position[i] - value)),
    ...speed.map((value, i) => Math.abs(start.speed[i] - value)),
  );
}

/** Even steps in every smooth piece, landing on the switches. @returns largest miss at the end of any step */
export function evenSteps(problem: ShelfProblem, stepsPerPiece: number): number {
  const stepper = stepperFor(problem);
  const ends = [...problem.switches, problem.duration];
  let from = 0;
  let miss = 0;
  for (const to of ends) {
    const step = (to - from) / stepsPerPiece;
    for (let k = 0; k < stepsPerPiece; k += 1) {
      stepper.attempt(from + k * step, step);
      stepper.accept();
      miss = Math.max(miss, missOf(stepper, problem, from + (k + 1) * step));
    }
    from = to;
  }
  return miss;
}

/** What plain error control came to. */
export interface Controlled {
  readonly miss: number;
  readonly steps: number;
  readonly rejected: number;
}

/**
 * Steps by error control, and on request lands on the switches; otherwise it must find out by failing steps.
 * @param tolerance – local error accepted, in the units of the problem
 */
export function controlledSteps(
  problem: ShelfProblem,
  { tolerance, lands }: { readonly tolerance: number; readonly lands: boolean },
): Controlled {
  const stepper = stepperFor(problem, tolerance);
  const stops = lands ? [...problem.switches, problem.duration] : [problem.duration];
  let time = 0;
  let step = problem.duration / 100;
  let steps = 0;
  let rejected = 0;
  for (const stop of stops) {
    while (time < stop) {
      const left = stop - time;
      const h = Math.min(step, left);
      const error = stepper.attempt(time, h);
      const factor = 0.9 * Math.max(error, 1e-6) ** (-1 / ORDER);
      step = h * Math.min(4, Math.max(0.2, factor));
      if (error > 1) {
        rejected += 1;
        continue;
      }
      stepper.accept();
      steps += 1;
      time = h === left ? stop : time + h;
    }
  }
  return { miss: missOf(stepper, problem, problem.duration), steps, rejected };
}
