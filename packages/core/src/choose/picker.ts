import type { Judged } from './objectives.ts';
import type { WhyEnded } from './search.ts';

/** Says which candidates are looked at next. They are bounded together, then judged, the most promising first. */
export interface Picker {
  /** Numbers of candidates, none twice over all rounds; or why there are no more. */
  pick(front: readonly Judged[]): readonly number[] | WhyEnded;
  /** What of the picked was judged in full. */
  took(judged: readonly Judged[]): void;
}

/** All of a list in one round. */
export function everyOf(indices: readonly number[]): Picker {
  let isPicked = indices.length === 0;
  return {
    pick() {
      if (isPicked) return 'every-candidate';
      isPicked = true;
      return indices;
    },
    took() {},
  };
}
