/** One thing that is wanted, always such that smaller is better: what shall be large is negated where it comes in. */
export interface Objective {
  readonly id: string;
  /**
   * Values are rounded to whole multiples of it before they are compared, so that what reads alike counts as alike.
   * 0 compares the values as they are.
   */
  readonly resolution: number;
}

/** What an objective may be, over the trials: 95 % interval and middle. */
export interface Spread {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** A candidate judged in full. */
export interface Judged {
  /** Its number in the space. */
  readonly index: number;
  /** One an objective; candidates are compared by the middles. All finite. */
  readonly objectives: readonly Spread[];
  /**
   * The objectives in each trial, trial after trial: sample s, objective k at s·objectives + k. Trial s must draw the
   * same readings for every candidate (common random numbers). Empty when there were no trials.
   */
  readonly samples: readonly number[];
}

/** What came out of one stage of judging a candidate. */
export type Report =
  /**
   * Not finished: no middle can come out below these; −∞ where nothing is known yet. The further the stages, the higher
   * they are.
   */
  | { readonly kind: 'bound'; readonly atLeast: readonly number[] }
  /** It breaks constraints; all that it is known to break by now. */
  | { readonly kind: 'barred'; readonly by: readonly string[] }
  | {
      readonly kind: 'judged';
      readonly objectives: readonly Spread[];
      readonly samples: readonly number[];
    };

/**
 * The figure by which an objective is compared: the number of its resolutions, rounded; the value itself when the
 * resolution is 0.
 * @invariant never falls when the value rises, so the rounded bound is a bound of the rounded value
 */
export function compared(value: number, { resolution }: Objective): number {
  // + 0 makes −0 to 0, which a file could not keep.
  return (resolution > 0 ? Math.round(value / resolution) : value) + 0;
}

/** What sums taken in another order may differ by, as a share. */
const ROUNDING = 1e-9;

/**
 * The figures by which a bound is compared: a hair lower than it is, so that a sum taken in another order cannot make
 * it one step too high.
 */
export function comparedBound(atLeast: readonly number[], objectives: readonly Objective[]): number[] {
  return objectives.map((objective, k) => {
    const value = atLeast[k];
    return compared(Number.isFinite(value) ? value - ROUNDING * Math.abs(value) : value, objective);
  });
}

/** The middles of a judged candidate as they are compared. */
export function comparedMiddles(judged: Judged, objectives: readonly Objective[]): number[] {
  return objectives.map((objective, k) => compared(judged.objectives[k].middle, objective));
}
