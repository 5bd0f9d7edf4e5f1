import { fadeIn } from './fade.ts';
import type { HeightAndSlope } from './sampled.ts';

/** How many whole waves there are in the length. */
export const wavesIn = ({ length, spacing }: { readonly length: number; readonly spacing: number }): number =>
  Math.max(1, Math.round(length / spacing));

/**
 * Washboard about the level of the road: g·height/2·sin(2πu/spacing) over a whole number of waves, u = s − start; g
 * fades it in at the beginning and out at the end.
 *
 * @source common practice, no source: real washboard leans and wanders
 */
export function washboard(shape: {
  readonly height: number;
  readonly spacing: number;
  readonly length: number;
  readonly fadeIn: number;
  readonly start: number;
}): HeightAndSlope {
  const k = (2 * Math.PI) / shape.spacing;
  const end = wavesIn(shape) * shape.spacing;
  return (s) => {
    const u = s - shape.start;
    const height = (shape.height / 2) * Math.sin(k * u);
    const slope = (shape.height / 2) * k * Math.cos(k * u);
    const first = fadeIn(u, shape.fadeIn);
    const last = fadeIn(end - u, shape.fadeIn);
    return {
      height: first.gain * last.gain * height,
      slope: first.gain * last.gain * slope + (first.slope * last.gain - first.gain * last.slope) * height,
    };
  };
}
