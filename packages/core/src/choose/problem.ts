import type { Objective, Report } from './objectives.ts';
import { type Candidate, type ChoiceSpace, candidateCount } from './space.ts';

/** What is searched, and how long: together with the judge it decides the answer to the last bit. */
export interface SearchProblem {
  readonly space: ChoiceSpace;
  readonly objectives: readonly Objective[];
  /** Names of the stages of judging, first the cheap bound; what was discarded is counted by them. */
  readonly stages: readonly string[];
  /** Names of what may bar a candidate. */
  readonly constraints: readonly string[];
  /** Trials that a judgement brings samples of; 0 when it brings none. */
  readonly trials: number;
  /** Candidates judged in full whatever comes: do nothing, only the settings. By number. */
  readonly always: readonly number[];
  readonly seed: number;
  readonly limits: SearchLimits;
}

export interface SearchLimits {
  /** Up to so many candidates every one is judged or discarded by a bound; beyond, a Pareto search picks them. */
  readonly exhaustUpTo: number;
  /** Pareto search: most candidates judged in full, over all parts together. */
  readonly mostJudged: number;
  /** Pareto search: it is stable when the dominated share of the box grew by less than this … */
  readonly stableShare: number;
  /** … in so many rounds. */
  readonly stableRounds: number;
}

/** Judges candidates by stages. Pure: the same candidate gives the same reports wherever and whenever it is asked. */
export interface Judge {
  /** Stage 0. Must cost next to nothing against a full judgement. */
  bound(candidate: Candidate): Report;
  /** The stages after, for a candidate that its bound did not discard. */
  open(candidate: Candidate): Trial;
}

/** One candidate on its way through the stages. */
export interface Trial {
  /** The next stage. After the last one the report is `judged` or `barred`. */
  next(): Report;
}

/** What a study takes unless it is told otherwise. */
export const USUAL_LIMITS: SearchLimits = {
  exhaustUpTo: 50_000,
  mostJudged: 4_000,
  stableShare: 0.001,
  stableRounds: 5,
};

/** Whether every candidate is looked at, or a Pareto search picks them. */
export function isExhaustive({ space, limits }: SearchProblem): boolean {
  return candidateCount(space) <= limits.exhaustUpTo;
}
