import type { CourseShape } from '../rig/course-spec.ts';
import { type SampledSide, sampleSide } from './sampled.ts';
import { between, streamFor } from './scatter.ts';
import { chain, hump } from './stretch.ts';

type Shape = Extract<CourseShape, { readonly kind: 'irregular-whoops' }>;

/** Samples in a whoop of the mean spacing. */
const PIECES = 64;

/**
 * Whoops of which each has its own height and length: Hᵢ/2·(1 − cos 2πu/λᵢ), Hᵢ = height·(1 ± heightScatter) and
 * λᵢ = spacing·(1 ± spacingScatter), each drawn evenly from its band. λᵢ is rounded to 1/64 of the spacing, so that a
 * sample stands in every trough.
 *
 * @source common practice, no source: there is no survey of whoops
 */
export function irregularWhoops({ height, spacing, count, start, seed, ...scatter }: Shape): SampledSide {
  const step = spacing / PIECES;
  const lengths = streamFor(seed, 'spacing');
  const heights = streamFor(seed, 'height');
  const { spacingScatter, heightScatter } = scatter;
  const pieces = Array.from({ length: count }, () =>
    Math.max(2, Math.round(PIECES * between(lengths, 1 - spacingScatter, 1 + spacingScatter))),
  );
  const whoops = pieces.map((each) =>
    hump(each * step, height * between(heights, 1 - heightScatter, 1 + heightScatter)),
  );
  const { law, breaks } = chain(whoops, start);
  const all = pieces.reduce((sum, each) => sum + each, 0);
  return sampleSide(law, { from: start, to: start + all * step, pieces: all, breaks });
}

/** Length of the shortest whoop that can come [m]. */
export const shortestWhoop = ({ spacing, spacingScatter }: Shape): number => spacing * (1 - spacingScatter);
