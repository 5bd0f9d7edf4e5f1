import { compared, type Judged, type Objective } from './objectives.ts';

/** One objective of a candidate against another's. */
export interface Difference {
  /** Number of the objective. */
  readonly objective: number;
  /** Middle less the other's: negative is better. Never 0 as it is compared. */
  readonly by: number;
  /** Trials in which it is better, and worse, with the same readings for both; as it is compared. */
  readonly better: number;
  readonly worse: number;
}

/** What one candidate beats another in, and what it gives up. */
export interface Comparison {
  /** The other, by number. */
  readonly with: number;
  readonly better: readonly Difference[];
  readonly worse: readonly Difference[];
  /** Objectives in which the two are alike. */
  readonly alike: readonly number[];
  readonly trials: number;
}

/** Compares two judged candidates, objective by objective, in the order of the objectives. */
export function comparisonOf(one: Judged, other: Judged, objectives: readonly Objective[]): Comparison {
  const width = objectives.length;
  const trials = Math.min(one.samples.length, other.samples.length) / width;
  const better: Difference[] = [];
  const worse: Difference[] = [];
  const alike: number[] = [];
  objectives.forEach((objective, k) => {
    const [mine, theirs] = [one.objectives[k].middle, other.objectives[k].middle];
    const lead = compared(mine, objective) - compared(theirs, objective);
    if (lead === 0) {
      alike.push(k);
      return;
    }
    const counts = { better: 0, worse: 0 };
    for (let trial = 0; trial < trials; trial += 1) {
      const at = trial * width + k;
      const sampled = compared(one.samples[at], objective) - compared(other.samples[at], objective);
      if (sampled < 0) counts.better += 1;
      if (sampled > 0) counts.worse += 1;
    }
    (lead < 0 ? better : worse).push({ objective: k, by: mine - theirs, ...counts });
  });
  return { with: other.index, better, worse, alike, trials };
}
