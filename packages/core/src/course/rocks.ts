import type { Side } from '../finding/place.ts';
import type { CourseShape } from '../rig/course-spec.ts';
import { type SampledSide, sampleSide } from './sampled.ts';
import { between, streamFor } from './scatter.ts';
import { chain, hump, level, type Stretch } from './stretch.ts';

type Shape = Extract<CourseShape, { readonly kind: 'rocks' }>;

/** Samples in the longest rock. */
const PIECES = 64;
/** Smallest rock beside the largest: height, and length along the track. */
const SMALLEST_HEIGHT = 1 / 3;
export const SMALLEST_LENGTH = 1 / 2;

/**
 * Rocks bedded in level ground under one track, each rounded by a cosine: H/2·(1 − cos 2πu/ℓ). Heights are drawn evenly
 * from a third of the largest up, lengths from half of the longest up, and the level ground between two rocks so that
 * their spacing is right on average. Lengths are rounded to 1/64 of the longest rock, so that samples stand at the
 * foot of each. The other track has rocks of its own.
 *
 * @source common practice, no source
 */
export function rocks(shape: Shape, side: Side): SampledSide {
  const { height, rockLength, spacing, length, start, seed } = shape;
  const stream = streamFor(seed, side);
  const step = rockLength / PIECES;
  const meanRock = (rockLength * (1 + SMALLEST_LENGTH)) / 2;
  const widestGap = 2 * (spacing - meanRock);
  const total = Math.floor(length / step);
  const stretches: Stretch[] = [];
  let used = 0;
  const take = (wanted: number): number => {
    const pieces = Math.round(wanted / step);
    used += pieces;
    return pieces * step;
  };
  for (;;) {
    const gap = between(stream, 0, widestGap);
    const rock = between(stream, SMALLEST_LENGTH * rockLength, rockLength);
    const rise = between(stream, SMALLEST_HEIGHT * height, height);
    if (used + Math.round(gap / step) + Math.round(rock / step) > total) break;
    stretches.push(level(take(gap)), hump(take(rock), rise));
  }
  stretches.push(level((total - used) * step));
  const { law, breaks } = chain(stretches, start);
  return sampleSide(law, { from: start, to: start + total * step, pieces: total, breaks });
}
