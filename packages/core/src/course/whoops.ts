import type { HeightAndSlope } from './sampled.ts';

/** Half-cosine whoops: height/2·(1 − cos 2πu/spacing) for 0 < u < count·spacing, u = s − start; trough to trough. */
export function whoops({
  height,
  spacing,
  count,
  start,
}: {
  readonly height: number;
  readonly spacing: number;
  readonly count: number;
  readonly start: number;
}): HeightAndSlope {
  const k = (2 * Math.PI) / spacing;
  return (s) => {
    const u = s - start;
    if (u <= 0 || u >= count * spacing) return { height: 0, slope: 0 };
    return { height: (height / 2) * (1 - Math.cos(k * u)), slope: (height / 2) * k * Math.sin(k * u) };
  };
}
