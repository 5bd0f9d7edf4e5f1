import type { Judged, Report } from './objectives.ts';
import type { Candidate } from './space.ts';
import type { Tally } from './tally.ts';

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
