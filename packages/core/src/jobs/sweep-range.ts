import type { Problem } from '../finding/problem.ts';
import type { CourseShape } from '../rig/course-spec.ts';
import { FASTEST, SLOWEST } from './driving.ts';

/** Speeds of a scan when nobody asks for a step: from 5 to 45 mph one each mile an hour. */
const USUAL_PIECES = 40;
/** More would be a mistyped step. */
const MOST_PIECES = 400;

export const usualStep = (from: number, to: number): number => (to - from) / USUAL_PIECES;

/**
 * What is wrong with a sweep; nothing when it can be driven.
 * @failure `ask-sweep-no-speed` on a course that knows none, `ask-sweep-range`, `ask-sweep-step`
 */
export function sweepProblems(ask: {
  readonly course: CourseShape;
  readonly courseName: string;
  readonly from: number;
  readonly to: number;
  readonly step: number;
}): readonly Problem[] {
  const { from, to, step } = ask;
  if (ask.course.kind === 'drop')
    return [
      {
        code: 'ask-sweep-no-speed',
        where: { key: 'course' },
        found: ask.courseName,
        accepted: 'a course that is driven along',
      },
    ];
  if (!(from >= SLOWEST && to <= FASTEST && from < to))
    return [
      {
        code: 'ask-sweep-range',
        where: { key: 'sweep' },
        found: `${from} to ${to} m/s`,
        accepted: `a slower and then a faster speed, from ${SLOWEST} m/s to ${FASTEST} m/s, for example 5..45 mph`,
      },
    ];
  // A hair is left for a step that was converted from another unit.
  if (!(step > 0 && step <= (to - from) * (1 + 1e-9) && (to - from) / step <= MOST_PIECES))
    return [
      {
        code: 'ask-sweep-step',
        where: { key: 'step' },
        found: `${step} m/s`,
        accepted: `a step above zero that takes at most ${MOST_PIECES} steps from the slowest to the fastest speed, for example 1 mph`,
      },
    ];
  return [];
}
