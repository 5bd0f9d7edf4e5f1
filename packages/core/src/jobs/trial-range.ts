/**
 * The stretch that holds the middle part of a sampled quantity, whatever its distribution: from the r-th smallest to
 * the r-th largest of n trials. On average it covers (n + 1 − 2r)/(n + 1) of all rigs that the readings allow; r is
 * the largest that covers 95 %, and 1 where no r does. A value without bound (`never broken`) orders like any other.
 *
 * Needs room for 2r values a quantity, not for n.
 *
 * @source distribution-free tolerance limits: Wilks, Ann. Math. Stat. 12 (1941) 91 (from memory): the share between two
 * order statistics of a continuous distribution is a beta variable, with mean (s − r)/(n + 1)
 */
export class TrialRange {
  readonly #kept: number;
  readonly #least: Float64Array;
  readonly #most: Float64Array;
  #unknown = false;

  constructor(trials: number) {
    this.#kept = rankFor(trials);
    this.#least = new Float64Array(this.#kept).fill(Number.POSITIVE_INFINITY);
    this.#most = new Float64Array(this.#kept).fill(Number.NEGATIVE_INFINITY);
  }

  /** @param value – NaN when the trial has no figure: then nothing can be said of all of them */
  take(value: number): void {
    if (Number.isNaN(value)) {
      this.#unknown = true;
      return;
    }
    const { length } = this.#least;
    if (value < this.#least[length - 1]) {
      this.#least[length - 1] = value;
      this.#least.sort();
    }
    if (value > this.#most[0]) {
      this.#most[0] = value;
      this.#most.sort();
    }
  }

  /** Both ends; null when a trial had no figure. */
  ends(): { readonly low: number; readonly high: number } | null {
    return this.#unknown ? null : { low: this.#least[this.#kept - 1], high: this.#most[0] };
  }
}

const COVERAGE = 0.95;

const rankFor = (trials: number): number =>
  Math.max(1, Math.floor(((1 - COVERAGE) / 2) * (trials + 1) + 1e-9));

/** Share of the rigs that the range covers on average. */
export const coverageOf = (trials: number): number =>
  Math.max(0, trials + 1 - 2 * rankFor(trials)) / (trials + 1);

/** The fewest trials whose range covers 95 % of the rigs. */
export const TRIALS_FOR_COVERAGE = 39;
