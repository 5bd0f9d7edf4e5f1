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

/** After an accepted step: its error and that of the step before it, both in accepted errors. */
export function nextStep(step: number, error: number, errorBefore: number): number {
  const now = fourthRoot(Math.max(error, SMALLEST_ERROR));
  const before = fourthRoot(Math.max(errorBefore, SMALLEST_ERROR));
  return step * Math.min(MOST, (SAFE * Math.sqrt(before)) / now);
}

/** After a step that failed, with error > 1 or not a number. */
export function shorterStep(step: number, error: number): number {
  if (!(error > 1)) return LEAST * step;
  return step * Math.max(LEAST, SAFE / fourthRoot(error));
}
