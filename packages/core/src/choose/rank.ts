import { normalQuantile } from '../numerics/normal-quantile.ts';
import { compared, type Judged, type Objective } from './objectives.ts';

/** How firmly a member stands on the front when all of it is measured again. */
export interface RankHeld {
  /** Trials in which no other member beats it, and trials there were. */
  readonly held: number;
  readonly trials: number;
  /**
   * In each trial, how far the member is from being beaten: of all others the one that comes nearest, in the objective
   * in which it is still behind, as a share of the front's range. 0 or less: beaten, or alike.
   */
  readonly margins: readonly number[];
}

/**
 * Rank of each member in each trial, with the same readings for all (common random numbers).
 *
 *     margin of m = min over others r of max over objectives k of (r_k − m_k) ÷ range_k
 *
 * @validity among the members only: who was beaten at the middles is not asked again
 */
export function ranksHeld(members: readonly Judged[], objectives: readonly Objective[]): RankHeld[] {
  const width = objectives.length;
  const trials = Math.floor(
    Math.min(...members.map(({ samples }) => samples.length), Number.MAX_VALUE) / width,
  );
  if (members.length === 0 || trials === 0) return members.map(() => ({ held: 0, trials: 0, margins: [] }));
  const values = members.map(({ samples }) =>
    Float64Array.from({ length: trials * width }, (_, i) => compared(samples[i], objectives[i % width])),
  );
  const ranges = rangesOf(members, objectives);
  return values.map((own, m) => {
    let held = 0;
    const margins = new Array<number>(trials).fill(Number.POSITIVE_INFINITY);
    for (let trial = 0; trial < trials; trial += 1) {
      const at = trial * width;
      let isBeaten = false;
      for (let r = 0; r < values.length; r += 1) {
        if (r === m) continue;
        const other = values[r];
        let ahead = Number.NEGATIVE_INFINITY;
        let behind = 0;
        for (let k = 0; k < width; k += 1) {
          const lead = (other[at + k] - own[at + k]) / ranges[k];
          ahead = Math.max(ahead, lead);
          behind = Math.min(behind, lead);
        }
        margins[trial] = Math.min(margins[trial], ahead);
        if (ahead <= 0 && behind < 0) isBeaten = true;
      }
      if (!isBeaten) held += 1;
    }
    return { held, trials, margins };
  });
}

/** Range of each objective over the members, as it is compared; 1 where they are all alike. */
export function rangesOf(members: readonly Judged[], objectives: readonly Objective[]): number[] {
  return objectives.map((objective, k) => {
    const values = members.map((member) => compared(member.objectives[k].middle, objective));
    return Math.max(...values) - Math.min(...values) || 1;
  });
}

/** An uncertain reading with which a margin goes up and down. */
export interface Deciding {
  /** Its number among the readings. */
  readonly input: number;
  /** Share of the margin's variance that goes with it, 0…1, and whether the margin rises with it. */
  readonly share: number;
  readonly rises: boolean;
}

/** Chance, over all readings together, of naming one that has nothing to do with it. */
const FALSE_ALARM = 0.05;

/**
 * Which readings decide over a margin: those whose correlation with it is larger than chance gives any of so many
 * readings in so few trials. With few trials only a reading that decides nearly alone can be told.
 *
 *     |artanh r|·√(n − 3) > z(1 − 0.05 ÷ 2·readings)
 *
 * @param margins – one a trial; @param scoresOf – what each reading was in each trial, in the same order
 * @returns the most telling first; none where none can be told
 * @validity at least 5 trials, margins that are not all alike
 * @source Fisher's z, Bonferroni's bound over the readings (textbook, from memory)
 */
export function decidingInputs(
  margins: readonly number[],
  inputs: number,
  scoresOf: (input: number) => ArrayLike<number>,
): Deciding[] {
  const n = margins.length;
  if (n < 5 || inputs === 0 || !margins.every(Number.isFinite)) return [];
  const least = Math.tanh(normalQuantile(1 - FALSE_ALARM / (2 * inputs)) / Math.sqrt(n - 3));
  const deciding: Deciding[] = [];
  for (let input = 0; input < inputs; input += 1) {
    const r = correlation(margins, scoresOf(input));
    if (Math.abs(r) > least) deciding.push({ input, share: r * r, rises: r > 0 });
  }
  return deciding.sort((a, b) => b.share - a.share || a.input - b.input);
}

function correlation(x: ArrayLike<number>, y: ArrayLike<number>): number {
  const n = x.length;
  let [meanX, meanY] = [0, 0];
  for (let i = 0; i < n; i += 1) {
    meanX += x[i] / n;
    meanY += y[i] / n;
  }
  let [xx, yy, xy] = [0, 0, 0];
  for (let i = 0; i < n; i += 1) {
    xx += (x[i] - meanX) ** 2;
    yy += (y[i] - meanY) ** 2;
    xy += (x[i] - meanX) * (y[i] - meanY);
  }
  return xx > 0 && yy > 0 ? xy / Math.sqrt(xx * yy) : 0;
}
