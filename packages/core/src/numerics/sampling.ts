import { normalQuantile } from './normal-quantile.ts';
import { randomStream } from './random.ts';

/**
 * Standard normals for a Monte Carlo over many uncertain readings: a Latin hypercube whose dimensions are made
 * nearly uncorrelated.
 *
 * Each dimension holds the `count` normal scores z[i] = Φ⁻¹((i + ½)/count), each once, in an order of its own. So every
 * single reading is sampled evenly, and sums of readings have nearly the exact variance, with far fewer trials than
 * plain Monte Carlo. A nested net (Sobol and its kin) does better in a dozen dimensions; a rig has over a hundred,
 * where pairs of its dimensions can move together badly.
 *
 * @invariant a dimension does not depend on how many follow it: more readings leave the earlier ones as they were
 * @source McKay, Beckman, Conover, Technometrics 21 (1979) 239; orders by Owen, JASA 89 (1994) 1517, and Iman and
 * Conover, Commun. Stat. B 11 (1982) 311 (all from memory)
 */
export class NormalTable {
  readonly count: number;
  readonly seed: number;
  readonly #scores: Float64Array;
  readonly #columns: Float64Array[] = [];

  /** @param count – trials, 2 … 65536; @param seed – any whole number */
  constructor(count: number, seed: number) {
    if (!(Number.isInteger(count) && count >= 2 && count <= 65_536))
      throw new Error(`NormalTable: count must be a whole number from 2 to 65536, not ${count}`);
    this.count = count;
    this.seed = seed;
    this.#scores = Float64Array.from({ length: count }, (_, i) => normalQuantile((i + 0.5) / count));
  }

  /** Scores of one dimension, one a trial. Do not write into it. */
  column(dimension: number): Float64Array {
    while (this.#columns.length <= dimension) this.#columns.push(this.#next());
    return this.#columns[dimension];
  }

  /** Shuffles the scores, takes out what moves with the dimensions before, and puts the scores back in that order. */
  #next(): Float64Array {
    const { count } = this;
    const scores = this.#scores;
    const column = scores.slice();
    const random = randomStream(this.seed, this.#columns.length);
    for (let i = count - 1; i > 0; i -= 1) {
      const j = random.below(i + 1);
      const kept = column[i];
      column[i] = column[j];
      column[j] = kept;
    }
    // A dimension can be freed of fewer others than there are trials.
    const others = Math.min(this.#columns.length, count >> 3);
    // What is along one is taken out while what is along the next is summed: one way through the column for both.
    let along = 0;
    let taken: Float64Array | null = null;
    for (let k = this.#columns.length - others; k < this.#columns.length; k += 1) {
      const before = this.#columns[k];
      along = (taken ? takeOutAndSum(column, taken, along, before) : sumAlong(column, before)) / count;
      taken = before;
    }
    if (taken) for (let i = 0; i < count; i += 1) column[i] -= along * taken[i];
    // Order of the values, found by one native sort: value in the high digits, index in the low ones.
    const scale = 2 ** 52 / (32 * count);
    for (let i = 0; i < count; i += 1) column[i] = Math.floor((column[i] + 16) * scale) * count + i;
    column.sort();
    const ordered = new Float64Array(count);
    for (let rank = 0; rank < count; rank += 1) ordered[column[rank] % count] = scores[rank];
    return ordered;
  }
}

function sumAlong(column: Float64Array, next: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < column.length; i += 1) sum += next[i] * column[i];
  return sum;
}

function takeOutAndSum(column: Float64Array, taken: Float64Array, along: number, next: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < column.length; i += 1) {
    const left = column[i] - along * taken[i];
    column[i] = left;
    sum += next[i] * left;
  }
  return sum;
}

/**
 * A table of standard normals, trial by trial.
 *
 * @param count – trials
 * @param dimensions – uncertain numbers a trial
 * @param seed – any whole number; the same seed gives the same table
 * @returns row-major, `count × dimensions`: trial t, dimension d at t·dimensions + d
 */
export function normalTrials(count: number, dimensions: number, seed: number): Float64Array {
  const table = new NormalTable(count, seed);
  const rows = new Float64Array(count * dimensions);
  for (let d = 0; d < dimensions; d += 1) {
    const column = table.column(d);
    for (let t = 0; t < count; t += 1) rows[t * dimensions + d] = column[t];
  }
  return rows;
}
