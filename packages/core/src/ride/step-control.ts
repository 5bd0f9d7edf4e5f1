/**
 * How long the next step shall be. The local error goes with the fourth power of the step; an accepted step is followed by one
 * that also heeds how the error has been changing (a proportional and an integral part), so that where the motion
 * hardens step by step few steps fail. Powers are fourth and eighth roots: those come out the same on every machine.
 *
 * @source Gustafsson, ACM Trans. Math. Softw. 17 (1991) 533 (from memory), here with exponents 1/4 and 1/8
 */

const SAFE = 0.9;
const MOST = 4;
const LEAST = 0.2;
/** Below this an error says nothing more. */
const SMALLEST_ERROR = 1e-6;

function fourthRoot(x: number): number {
  return Math.sqrt(Math.sqrt(x));
}

/** Fourth root of an error in accepted errors: what the step after the next still wants to know of it. */
export function errorRoot(error: number): number {
  return fourthRoot(Math.max(error, SMALLEST_ERROR));
}

/** After an accepted step: the roots of its error and of that of the step before it. */
export function nextStep(step: number, root: number, rootBefore: number): number {
  return step * Math.min(MOST, (SAFE * Math.sqrt(rootBefore)) / root);
}

/** The step that would have made the accepted error, with the same margin. */
export function rightStep(step: number, root: number): number {
  return (step * SAFE) / root;
}

/** After a step that failed, with error > 1 or not a number. */
export function shorterStep(step: number, error: number): number {
  if (!(error > 1)) return LEAST * step;
  return step * Math.max(LEAST, SAFE / fourthRoot(error));
}
