import type { Judged, Objective, Report } from './objectives.ts';
import type { Candidate, ChoiceSpace } from './space.ts';

/** What is searched, and how long: together with the judge it decides the answer to the last bit. */
export interface SearchProblem {
  readonly space: ChoiceSpace;
  readonly objectives: readonly Objective[];
  /** Names of the stages of judging, first the cheap bound; what was discarded is counted by them. */
  readonly stages: readonly string[];
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

/** A candidate to be taken through its next stage. */
export interface Task {
  readonly index: number;
  readonly candidate: Candidate;
  /** 0 is the cheap bound. */
  readonly stage: number;
}

/** Why a search ended. */
export type WhyEnded =
  /** Every candidate was judged, barred, or discarded by a bound: the front is exact. */
  | 'every-candidate'
  /** The front did not grow any more. */
  | 'front-stable'
  /** The limit of judged candidates was reached first: more may be found. */
  | 'limit-reached';

/** What became of the candidates. */
export interface Tally {
  /** Candidates looked at, whatever became of them. */
  readonly seen: number;
  readonly judged: number;
  /** Discarded after each stage, because a judged candidate beats their bound. One a stage. */
  readonly discarded: readonly number[];
  readonly barred: number;
  /** By constraint: how many it barred, and how many of these by itself alone. */
  readonly constraints: readonly Barred[];
}

export interface Barred {
  readonly constraint: string;
  readonly candidates: number;
  readonly byItselfAlone: number;
}

/** A search that is asked what to judge next and told what came out: judging can be done anywhere. */
export interface Search {
  /** What to judge next, none when it is over. The same until it was told. */
  ask(): readonly Task[];
  /** What came out, one report a task, in their order. */
  tell(reports: readonly Report[]): void;
  /** Null while it goes on. */
  readonly why: WhyEnded | null;
  readonly tally: Tally;
  /** Those judged so far that no other judged one beats. */
  readonly front: readonly Judged[];
  /** Those judged whatever comes, even when others beat them. */
  readonly always: readonly Judged[];
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
