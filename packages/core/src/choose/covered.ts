import { isNowhereWorse, type Point } from './dominance.ts';
import { shuffled } from './shuffle.ts';

/**
 * Share of a box in objective space that a front is nowhere worse than, on a fixed set of points: it grows with the
 * front and never falls, and a new member costs the uncovered points only. Exact volumes are too slow for this beyond
 * a few objectives.
 *
 * @source hypervolume by sampling: Bader and Zitzler, Evol. Comput. 19 (2011) 45 (from memory); here with a Latin
 * hypercube
 */
export class CoveredShare {
  readonly count: number;
  #open: number[][];

  /** @param count – points of the box; the share comes in steps of 1/count */
  constructor(low: Point, high: Point, count: number, seed: number) {
    this.count = count;
    const columns = low.map((_, k) => shuffled(count, seed, k));
    this.#open = Array.from({ length: count }, (_, i) =>
      low.map((from, k) => from + ((columns[k][i] + 0.5) / count) * (high[k] - from)),
    );
  }

  get share(): number {
    return 1 - this.#open.length / this.count;
  }

  /** How many points a member would cover that are not covered yet. */
  gainOf(member: Point): number {
    let gain = 0;
    for (const point of this.#open) if (isNowhereWorse(member, point)) gain += 1;
    return gain;
  }

  add(member: Point): void {
    this.#open = this.#open.filter((point) => !isNowhereWorse(member, point));
  }
}
