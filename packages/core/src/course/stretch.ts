import { type HeightAndSlope, type SampledSide, sampleSide } from './sampled.ts';

/** One stretch of a ground put together of several: its law for 0 ≤ u ≤ length, height from where it begins. */
export interface Stretch {
  readonly length: number;
  readonly law: HeightAndSlope;
}

export const level = (length: number): Stretch => ({ length, law: () => ({ height: 0, slope: 0 }) });

export const straight = (length: number, slope: number): Stretch => ({
  length,
  law: (u) => ({ height: slope * u, slope }),
});

/** Even curvature: the slope goes from one to the other evenly, a parabola. */
export const bend = (length: number, from: number, to: number): Stretch => ({
  length,
  law: (u) => ({
    height: from * u + ((to - from) * u * u) / (2 * length),
    slope: from + ((to - from) * u) / length,
  }),
});

/** Half a cosine, level at both ends: rise/2·(1 − cos πu/length). */
export function cosineRise(length: number, rise: number): Stretch {
  const k = Math.PI / length;
  return {
    length,
    law: (u) => ({ height: (rise / 2) * (1 - Math.cos(k * u)), slope: (rise / 2) * k * Math.sin(k * u) }),
  };
}

/** A whole cosine, level at both ends and back where it began: height/2·(1 − cos 2πu/length). */
export function hump(length: number, height: number): Stretch {
  const k = (2 * Math.PI) / length;
  return {
    length,
    law: (u) => ({ height: (height / 2) * (1 - Math.cos(k * u)), slope: (height / 2) * k * Math.sin(k * u) }),
  };
}

/** Stretches one behind the other. */
export interface Chain {
  readonly law: HeightAndSlope;
  /** Where each stretch begins, and the end of the last [m]. */
  readonly breaks: readonly number[];
}

/**
 * Puts stretches together, each at the height at which the one before ended. Those of no length are left out.
 * @invariant height is continuous; slope is where each stretch begins with the slope at which the last one ended
 */
export function chain(stretches: readonly Stretch[], start: number): Chain {
  const parts = stretches.filter(({ length }) => length > 0);
  const breaks = [start];
  const heights = [0];
  for (const { length, law } of parts) {
    heights.push(heights[heights.length - 1]! + law(length).height);
    breaks.push(breaks[breaks.length - 1]! + length);
  }
  const law: HeightAndSlope = (s) => {
    if (s <= start) return { height: 0, slope: 0 };
    let low = 0;
    let high = parts.length;
    while (high - low > 1) {
      const mid = (low + high) >> 1;
      if (breaks[mid]! <= s) low = mid;
      else high = mid;
    }
    const part = parts[low];
    if (part === undefined || s >= breaks[parts.length]!) return { height: heights[parts.length]!, slope: 0 };
    const { height, slope } = part.law(s - breaks[low]!);
    return { height: heights[low]! + height, slope };
  };
  return { law, breaks };
}

/** Samples in the shortest stretch of a chain. */
const PIECES_PER_STRETCH = 64;
/** However short a stretch is beside the others [pieces]. */
const MOST_PIECES = 200_000;

/**
 * Samples a chain so finely that even its shortest stretch has 64 pieces. Where two stretches meet within a piece, the
 * cubic through both its ends is off by at most step²/60 of the step in curvature, and its slope by step/12 of it.
 */
export function sampleChain(stretches: readonly Stretch[], start: number): SampledSide {
  const { law, breaks } = chain(stretches, start);
  const from = breaks[0]!;
  const to = breaks[breaks.length - 1]!;
  const shortest = Math.min(...stretches.map(({ length }) => length).filter((length) => length > 0));
  const pieces = Math.min(MOST_PIECES, Math.ceil(((to - from) / shortest) * PIECES_PER_STRETCH));
  return sampleSide(law, { from, to, pieces, breaks });
}
