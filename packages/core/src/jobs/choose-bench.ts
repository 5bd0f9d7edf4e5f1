import { packAnswer, packedWidth } from '../choose/pack.ts';
import { judgeScout, type PartAnswer, searchPart } from '../choose/parts.ts';
import { good, type Result } from '../finding/problem.ts';
import type { Bench } from './bench.ts';
import { type ChooseRequest, openStudy } from './choose-study.ts';

/** A piece of a study that many hands can share. */
export interface ChoosePlan {
  readonly request: ChooseRequest;
  /** What the scouts brought; null while they are out: then the units are the scouts. */
  readonly scouted: readonly PartAnswer[] | null;
  /** Which scouts or parts are to be done, by number. */
  readonly numbers: readonly number[];
}

/**
 * A study as units: a scout each, or a part each. Every part starts from all that the scouts brought.
 * @failure of `openStudy`
 */
export function chooseBench({ request, scouted, numbers }: ChoosePlan): Result<Bench> {
  const opened = openStudy(request);
  if (!opened.ok) return opened;
  const { problem, layout, judge } = opened.value;
  return good({
    units: numbers.length,
    width: packedWidth(problem, layout),
    cost: () => 1,
    run(unit, rows, at) {
      const number = numbers[unit];
      const answer =
        scouted === null
          ? judgeScout(problem, layout, judge, number)
          : searchPart(problem, layout, judge, scouted, number);
      packAnswer(problem, answer, rows, at);
    },
  });
}
