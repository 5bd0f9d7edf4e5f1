/** What became of the candidates. */
export interface Tally {
  /** Candidates looked at, whatever became of them. */
  readonly seen: number;
  readonly judged: number;
  /** Discarded after each stage, because a judged candidate beats their bound. One a stage. */
  readonly discarded: readonly number[];
  readonly barred: number;
  /** How many each constraint barred, in their order: a candidate may be barred by several. */
  readonly barredBy: readonly number[];
  /** How many of these it barred alone. */
  readonly barredAloneBy: readonly number[];
}

/** Nothing yet. */
export function emptyTally(stages: number, constraints: number): Tally {
  const none = (count: number): number[] => new Array<number>(count).fill(0);
  return {
    seen: 0,
    judged: 0,
    discarded: none(stages),
    barred: 0,
    barredBy: none(constraints),
    barredAloneBy: none(constraints),
  };
}

/** Two tallies over different candidates together. */
export function addTallies(a: Tally, b: Tally): Tally {
  const sum = (x: readonly number[], y: readonly number[]): number[] => x.map((value, i) => value + y[i]);
  return {
    seen: a.seen + b.seen,
    judged: a.judged + b.judged,
    discarded: sum(a.discarded, b.discarded),
    barred: a.barred + b.barred,
    barredBy: sum(a.barredBy, b.barredBy),
    barredAloneBy: sum(a.barredAloneBy, b.barredAloneBy),
  };
}
