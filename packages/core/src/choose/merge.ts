import { FrontArchive } from './archive.ts';
import { comparedMiddles, type Judged } from './objectives.ts';
import type { PartAnswer, StudyLayout } from './parts.ts';
import type { SearchProblem } from './problem.ts';
import type { WhyEnded } from './search.ts';
import { type ChoiceSpace, candidateAt, changedAxes } from './space.ts';
import { addTallies, emptyTally, type Tally } from './tally.ts';

/** One who stands on the front. */
export interface Member extends Judged {
  /** Candidates alike in every objective as it is compared, by number; they change more, or come later. */
  readonly alike: readonly number[];
}

/** The whole answer of a study. */
export interface Study {
  readonly why: WhyEnded;
  readonly tally: Tally;
  /** By the first objective, then the second, and so on. */
  readonly members: readonly Member[];
  /** Judged whatever came: by number, those that were barred missing. */
  readonly always: readonly Judged[];
}

/** Why answers cannot be made one: units that nobody did. */
export interface MergeTrouble {
  readonly missing: readonly number[];
}

/**
 * Makes one study of the answers of all its scouts and parts; the same unit more than once counts once.
 * @invariant the same to the last bit for any order of the answers
 */
export function mergeAnswers(
  problem: SearchProblem,
  layout: StudyLayout,
  answers: readonly PartAnswer[],
): Study | MergeTrouble {
  const units = layout.scouts.length + layout.parts;
  const byUnit = new Map(answers.map((answer) => [answer.unit, answer]));
  const missing = Array.from({ length: units }, (_, unit) => unit).filter((unit) => !byUnit.has(unit));
  if (missing.length > 0) return { missing };
  const archive = new FrontArchive<Judged>();
  const always: Judged[] = [];
  const whys = new Set<WhyEnded>();
  let tally = emptyTally(problem.stages.length, problem.constraints.length);
  for (let unit = 0; unit < units; unit += 1) {
    const answer = byUnit.get(unit);
    if (answer === undefined) continue;
    for (const judged of answer.front) archive.offer(comparedMiddles(judged, problem.objectives), judged);
    always.push(...answer.always);
    tally = addTallies(tally, answer.tally);
    whys.add(answer.why);
  }
  return {
    why: whys.has('limit-reached')
      ? 'limit-reached'
      : whys.has('front-stable')
        ? 'front-stable'
        : 'every-candidate',
    tally,
    members: membersOf(problem, archive.entries()),
    always: always.sort((a, b) => a.index - b.index),
  };
}

/** Groups who is alike; the one with the fewest changes from what is there now stands, then the first by number. */
function membersOf(problem: SearchProblem, judged: readonly Judged[]): Member[] {
  const groups = new Map<string, { readonly point: readonly number[]; readonly all: Judged[] }>();
  for (const one of judged) {
    const point = comparedMiddles(one, problem.objectives);
    const key = point.join();
    const group = groups.get(key) ?? { point, all: [] };
    groups.set(key, group);
    group.all.push(one);
  }
  return [...groups.values()]
    .sort((a, b) => byValues(a.point, b.point))
    .map(({ all }) => {
      const [stands, ...others] = all
        .map((one) => ({ one, changes: changesOf(problem.space, one.index) }))
        .sort((a, b) => a.changes - b.changes || a.one.index - b.one.index)
        .map(({ one }) => one);
      return { ...stands, alike: others.map(({ index }) => index) };
    });
}

const changesOf = (space: ChoiceSpace, index: number): number =>
  changedAxes(space.home, candidateAt(space, index)).length;

function byValues(a: readonly number[], b: readonly number[]): number {
  for (let k = 0; k < a.length; k += 1) if (a[k] !== b[k]) return a[k] - b[k];
  return 0;
}
