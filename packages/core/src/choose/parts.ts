import type { Judged } from './objectives.ts';
import { everyOf } from './picker.ts';
import { isExhaustive, type Judge, type SearchProblem } from './problem.ts';
import type { Search, WhyEnded } from './search.ts';
import { Searching } from './searching.ts';
import { shuffled } from './shuffle.ts';
import { candidateCount, indexOf } from './space.ts';
import { runSearch, startSearch } from './start.ts';
import type { Tally } from './tally.ts';

/** Candidates a part has at least, and parts there are at most, when every candidate is looked at. */
const PART = 64;
const MOST_PARTS = 32;
/** Parts of a Pareto search: few, since each has to find its own way to the front. */
const SEARCH_PARTS = 4;
const SCOUTS = 24;
const SCOUT_STREAM = 0x5c07;

/** How a study is cut: by the problem alone, never by who works on it. */
export interface StudyLayout {
  readonly count: number;
  /** Judged first, each by itself; what comes out is where every part starts from. By number, rising. */
  readonly scouts: readonly number[];
  readonly parts: number;
}

/** What came out of one scout or of one part. */
export interface PartAnswer {
  /** Scout number `unit`, or part number `unit − scouts`. */
  readonly unit: number;
  readonly why: WhyEnded;
  readonly tally: Tally;
  /** Not beaten in this part. */
  readonly front: readonly Judged[];
  /** Of the candidates judged whatever comes, those that this part judged. */
  readonly always: readonly Judged[];
}

/**
 * Cuts a study into scouts and parts. The scouts are do nothing and its like, and a Latin hypercube over the axes.
 * @invariant depends on the problem only
 */
export function layOutStudy(problem: SearchProblem): StudyLayout {
  const { space, always, seed } = problem;
  const count = candidateCount(space);
  const drawn = Math.min(SCOUTS, Math.floor(count / 40));
  const columns = space.axes.map(({ options }, axis) =>
    shuffled(drawn, seed, SCOUT_STREAM + axis).map((place) => Math.floor(((place + 0.5) / drawn) * options)),
  );
  const scouts = new Set([...always, indexOf(space, space.home)]);
  for (let i = 0; i < drawn; i += 1)
    scouts.add(
      indexOf(
        space,
        columns.map((column) => column[i]),
      ),
    );
  return {
    count,
    scouts: [...scouts].sort((a, b) => a - b),
    parts: isExhaustive(problem) ? Math.max(1, Math.min(MOST_PARTS, Math.floor(count / PART))) : SEARCH_PARTS,
  };
}

/** Judges one scout in full: it is never discarded, so that nothing depends on the order of the scouts. */
export function judgeScout(
  problem: SearchProblem,
  layout: StudyLayout,
  judge: Judge,
  scout: number,
): PartAnswer {
  const search = new Searching(problem, everyOf([layout.scouts[scout]]), []);
  runSearch(search, judge);
  return answerOf(search, scout);
}

/** Searches one part, from what the scouts brought: their answers, in any order. */
export function searchPart(
  problem: SearchProblem,
  layout: StudyLayout,
  judge: Judge,
  scouted: readonly PartAnswer[],
  part: number,
): PartAnswer {
  const known = scouted.flatMap(({ front }) => front).sort((a, b) => a.index - b.index);
  const search = startSearch(problem, { known, seen: layout.scouts, part, parts: layout.parts });
  runSearch(search, judge);
  const scouts = new Set(layout.scouts);
  const answer = answerOf(search, layout.scouts.length + part);
  // The scouts, and whoever is judged whatever comes is one, tell of themselves.
  return { ...answer, front: answer.front.filter(({ index }) => !scouts.has(index)), always: [] };
}

function answerOf(search: Search, unit: number): PartAnswer {
  const { why, tally, front, always } = search;
  if (why === null) throw new Error('a search ended without saying why');
  return { unit, why, tally, front, always };
}
