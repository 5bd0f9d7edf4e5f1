import type { Choices, Trim } from '../rig/choices.ts';
import { LIMITS } from './choose-limits.ts';
import type { ChoiceTable } from './choose-table.ts';

/** Trims that are driven, in the order of the courses. */
export const trimsOf = ({ drive }: Choices): readonly Trim[] => [...new Set(drive.map(({ trim }) => trim))];

/** Trials between two looks whether a candidate is beaten already. */
export const TRIALS_A_STAGE = 2;

/**
 * Names of the stages of judging: what is known without driving, each trim, the speed,
 * in how many trials it is short, hoses and shafts, and what is left of the trials.
 */
export function stagesOf(choices: Choices, trials: number): readonly string[] {
  return [
    'undriven',
    ...trimsOf(choices).map((trim) => `trim.${trim}`),
    ...(choices.fastest ? ['speed'] : []),
    ...Array.from(
      { length: Math.ceil(trials / TRIALS_A_STAGE) },
      (_, k) => `short.${Math.min(trials, (k + 1) * TRIALS_A_STAGE)}`,
    ),
    'limits',
    'trials',
  ];
}

export const keepName = (axis: string): string => `keep.${axis}`;
/** A course that a candidate does not get to the end of. */
export const tumblesName = (course: string): string => `ride.${course}`;

/** Names of all that may bar a candidate. */
export function constraintsOf(choices: Choices, { hard }: ChoiceTable): readonly string[] {
  return [
    ...(choices.budget === null ? [] : ['budget']),
    ...(choices.hours === null ? [] : ['hours']),
    ...(choices.liftAtMost === null ? [] : ['lift']),
    ...hard.filter(({ id }) => choices.keep.includes(id)).map(({ id }) => keepName(id)),
    ...new Set(choices.drive.map(({ course }) => tumblesName(course))),
    ...LIMITS,
  ];
}
