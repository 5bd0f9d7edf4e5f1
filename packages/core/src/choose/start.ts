import { Evolving } from './evolving.ts';
import type { Judged } from './objectives.ts';
import { everyOf } from './picker.ts';
import { isExhaustive, type Judge, type SearchProblem, type Trial } from './problem.ts';
import type { Search } from './search.ts';
import { Searching } from './searching.ts';
import { sliceOf } from './slice.ts';
import { candidateCount } from './space.ts';

/** What a search starts from, and which part of the candidates is its own. */
export interface SearchStart {
  /** Judged already: they stand on the front from the start. */
  readonly known?: readonly Judged[];
  /** Looked at already, judged or not: they are not looked at again. */
  readonly seen?: readonly number[];
  /** Part 0 … parts − 1; all candidates when it is not said. */
  readonly part?: number;
  readonly parts?: number;
}

/**
 * Begins a search over all candidates, or over one part of them. Nothing is judged here: ask, judge, tell.
 * @invariant the same problem, start and reports give the same front to the last bit
 */
export function startSearch(problem: SearchProblem, start: SearchStart = {}): Search {
  const { known = [], seen = [], part = 0, parts = 1 } = start;
  if (!isExhaustive(problem))
    return new Searching(problem, new Evolving(problem, part, parts, known, seen), known);
  const skipped = new Set(seen);
  const slice = sliceOf(candidateCount(problem.space), part, parts, problem.seed);
  return new Searching(problem, everyOf(slice.filter((index) => !skipped.has(index))), known);
}

/** Judges all that a search asks for, until it ends. */
export function runSearch(search: Search, judge: Judge): void {
  const trials = new Map<number, Trial>();
  for (let tasks = search.ask(); tasks.length > 0; tasks = search.ask()) {
    const reports = tasks.map(({ index, candidate, stage }) => {
      if (stage === 0) return judge.bound(candidate);
      let trial = trials.get(index);
      if (trial === undefined) {
        // One candidate goes through its stages at a time: whoever came before is done with.
        trials.clear();
        trial = judge.open(candidate);
        trials.set(index, trial);
      }
      return trial.next();
    });
    search.tell(reports);
  }
}
