import type { HeightAndSlope } from './sampled.ts';

/** A step rounded by a half cosine: height/2·(1 − cos πu/length) for 0 < u < length, u = s − start; then height. */
export function ledge({
  height,
  length,
  start,
}: {
  readonly height: number;
  readonly length: number;
  readonly start: number;
}): HeightAndSlope {
  const k = Math.PI / length;
  return (s) => {
    const u = s - start;
    if (u <= 0) return { height: 0, slope: 0 };
    if (u >= length) return { height, slope: 0 };
    return { height: (height / 2) * (1 - Math.cos(k * u)), slope: (height / 2) * k * Math.sin(k * u) };
  };
}
