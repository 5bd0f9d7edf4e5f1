/**
 * Ground under one side, sampled once and read by cubic pieces with the exact slope at each sample.
 * Before the first sample it is flat at the first height, after the last flat at the last one.
 *
 * A sample stands on every place where the shape changes its law (start of a ledge, end of the whoops),
 * so the cubic never smooths a corner of the curvature.
 */
export interface SampledSide {
  /** Distance of the first sample [m]. */
  readonly origin: number;
  /** Distance between samples [m]. */
  readonly step: number;
  /** Height [m] and slope [1], interleaved: height at 2i, slope at 2i + 1. */
  readonly samples: Float64Array;
  /** Distances at which the law changes [m]: the stepper lands on them. */
  readonly breaks: readonly number[];
}

/** Both sides of a course, for the front axle; the rear axle reads the same ground a wheelbase later. */
export interface Track {
  readonly left: SampledSide;
  readonly right: SampledSide;
  /** Length of the shortest thing on the ground [m]: no time step may jump over it. */
  readonly shortestFeature: number;
  /** Distance after which nothing more happens [m]. */
  readonly end: number;
  /** Height above the ground from which the whole rig is let go [m]. */
  readonly initialLift: number;
}

/** Height and slope of an exact shape at a distance. */
export type HeightAndSlope = (distance: number) => { height: number; slope: number };

/** Samples a shape from `from` to `to` in `pieces` equal pieces. */
export function sampleSide(
  shape: HeightAndSlope,
  { from, to, pieces, breaks }: { from: number; to: number; pieces: number; breaks: readonly number[] },
): SampledSide {
  const step = (to - from) / pieces;
  const samples = new Float64Array(2 * (pieces + 1));
  for (let i = 0; i <= pieces; i += 1) {
    const at = shape(i === pieces ? to : from + i * step);
    samples[2 * i] = at.height;
    samples[2 * i + 1] = at.slope;
  }
  return { origin: from, step, samples, breaks };
}

/** Flat ground at height zero. */
export function flatSide(): SampledSide {
  return { origin: 0, step: 1, samples: new Float64Array(4), breaks: [] };
}

/** Height at a distance [m]. */
export function heightAt(side: SampledSide, distance: number): number {
  const { samples, step } = side;
  const place = (distance - side.origin) / step;
  if (place <= 0) return samples[0];
  const last = samples.length - 2;
  const i = 2 * Math.floor(place);
  if (i >= last) return samples[last];
  const u = place - i / 2;
  const away = 1 - u;
  return (
    away * away * ((1 + 2 * u) * samples[i] + u * step * samples[i + 1]) +
    u * u * ((3 - 2 * u) * samples[i + 2] - away * step * samples[i + 3])
  );
}

/** Slope at a distance [1]; zero on the flat before and after. */
export function slopeAt(side: SampledSide, distance: number): number {
  const { samples, step } = side;
  const place = (distance - side.origin) / step;
  if (place <= 0) return 0;
  const i = 2 * Math.floor(place);
  if (i >= samples.length - 2) return 0;
  const u = place - i / 2;
  const away = 1 - u;
  return (
    (6 * u * away * (samples[i + 2] - samples[i])) / step +
    away * (1 - 3 * u) * samples[i + 1] +
    u * (3 * u - 2) * samples[i + 3]
  );
}
