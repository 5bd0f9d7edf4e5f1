import type { Judged } from './objectives.ts';
import type { PartAnswer, StudyLayout } from './parts.ts';
import { isExhaustive, type SearchProblem } from './problem.ts';
import type { WhyEnded } from './search.ts';

const WHYS: readonly WhyEnded[] = ['every-candidate', 'front-stable', 'limit-reached'];
/** unit, why, members, always, seen, judged, barred. */
const HEAD = 7;

/** Numbers of one packed judgement: index, three an objective, one an objective and trial. */
const judgedWidth = ({ objectives, trials }: SearchProblem): number => 1 + objectives.length * (3 + trials);

/** Judgements that a part may bring at most. */
function mostEntries(problem: SearchProblem, layout: StudyLayout): number {
  const most = isExhaustive(problem) ? layout.count : problem.limits.mostJudged;
  return Math.ceil(most / layout.parts) + problem.always.length + 1;
}

/** Numbers in a packed answer, the same for every unit of a study. */
export function packedWidth(problem: SearchProblem, layout: StudyLayout): number {
  const { stages, constraints } = problem;
  return HEAD + stages.length + 2 * constraints.length + mostEntries(problem, layout) * judgedWidth(problem);
}

/** Writes an answer as a row of numbers from `at` on, so that it can go between workers like any other row. */
export function packAnswer(problem: SearchProblem, answer: PartAnswer, row: Float64Array, at: number): void {
  const { unit, why, tally, front, always } = answer;
  let to = at;
  const put = (values: readonly number[]): void => {
    for (const value of values) {
      row[to] = value;
      to += 1;
    }
  };
  put([unit, WHYS.indexOf(why), front.length, always.length, tally.seen, tally.judged, tally.barred]);
  put([...tally.discarded, ...tally.barredBy, ...tally.barredAloneBy]);
  const width = judgedWidth(problem);
  for (const judged of [...front, ...always]) {
    const start = to;
    put([judged.index]);
    for (const { low, middle, high } of judged.objectives) put([low, middle, high]);
    put(judged.samples);
    if (to - start !== width)
      throw new Error(`candidate ${judged.index} has ${to - start} numbers, not the ${width} of this study`);
  }
}

/** Reads what `packAnswer` wrote. */
export function unpackAnswer(problem: SearchProblem, row: Float64Array, at: number): PartAnswer {
  let from = at;
  const take = (count: number): number[] => {
    const values = Array.from(row.subarray(from, from + count));
    from += count;
    return values;
  };
  const { stages, constraints, objectives, trials } = problem;
  const [unit, why, members, alwaysCount, seen, judged, barred] = take(HEAD);
  const discarded = take(stages.length);
  const barredBy = take(constraints.length);
  const barredAloneBy = take(constraints.length);
  const one = (): Judged => {
    const [index] = take(1);
    return {
      index,
      objectives: objectives.map(() => {
        const [low, middle, high] = take(3);
        return { low, middle, high };
      }),
      samples: take(objectives.length * trials),
    };
  };
  const front = Array.from({ length: members }, one);
  const always = Array.from({ length: alwaysCount }, one);
  return {
    unit,
    why: WHYS[why],
    tally: { seen, judged, barred, discarded, barredBy, barredAloneBy },
    front,
    always,
  };
}
