import { errorRoot, nextStep, shorterStep } from '../../src/ride/step-control.ts';
import type { Motion, ShelfProblem } from './problem.ts';
import { makeStepper, type Stepper } from './stepper.ts';

export function stepperFor(problem: ShelfProblem, tolerance = 1): Stepper {
  const accepted = { position: tolerance, speed: tolerance };
  const stepper = makeStepper(problem.accelerate, problem.position.length, accepted);
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

/**
 * Even steps in every smooth piece, landing on the switches, with the law of the piece held in it as the engine does.
 * @returns largest miss at the end of any step
 */
export function evenSteps(problem: ShelfProblem, stepsPerPiece: number): number {
  const isBlind = problem.switches.length === 0;
  let passed = 0;
  const stepper = stepperFor({
    ...problem,
    accelerate: (time, position, speed, out) =>
      problem.accelerate(time, position, speed, out, isBlind ? undefined : passed),
  });
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
    passed += 1;
    stepper.evaluateStart(from);
  }
  return miss;
}

/** What error control came to. */
export interface Controlled {
  readonly steps: number;
  readonly rejected: number;
  readonly evaluations: number;
}

/**
 * Steps by error control alone from time 0, landing on the given times; the last of them is the end. It shrinks and grows
 * its steps by the same rule as the engine, and knows nothing of switches: it must find them by failing steps.
 */
export function underControl(
  stepper: Stepper,
  {
    landings,
    firstStep,
    watch,
  }: { landings: readonly number[]; firstStep: number; watch?: (step: number) => void },
): Controlled {
  let time = 0;
  let step = firstStep;
  let steps = 0;
  let rejected = 0;
  let rootBefore = 1;
  for (const landing of landings) {
    while (time < landing) {
      const left = landing - time;
      const h = Math.min(step, left);
      const error = stepper.attempt(time, h);
      if (!(error <= 1)) {
        rejected += 1;
        step = shorterStep(h, error);
        continue;
      }
      const root = errorRoot(error);
      step = nextStep(h, root, rootBefore);
      rootBefore = root;
      stepper.accept();
      steps += 1;
      time = h === left ? landing : time + h;
      watch?.(h);
    }
  }
  return { steps, rejected, evaluations: stepper.evaluations };
}

/** A problem of the shelf under error control, landing on its switches or blind to them. */
export function controlledSteps(
  problem: ShelfProblem,
  { tolerance, lands }: { readonly tolerance: number; readonly lands: boolean },
): Controlled & { readonly miss: number } {
  const stepper = stepperFor(problem, tolerance);
  const landings = lands ? [...problem.switches, problem.duration] : [problem.duration];
  const count = underControl(stepper, { landings, firstStep: problem.duration / 100 });
  return { ...count, miss: missOf(stepper, problem, problem.duration) };
}
