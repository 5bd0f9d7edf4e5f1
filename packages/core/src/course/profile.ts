import type { Side } from '../finding/place.ts';
import { type MonotoneCubic, monotoneCubic } from '../numerics/monotone-cubic.ts';
import type { CourseShape } from '../rig/course-spec.ts';
import { fadeSamples } from './fade.ts';
import type { SampledSide } from './sampled.ts';

type Shape = Extract<CourseShape, { readonly kind: 'profile' }>;

/** Longest piece [m], so that the fade at the beginning is followed. */
const LONGEST_PIECE = 0.25;
/** Shortest piece [m]: no tyre feels less. */
const SHORTEST_PIECE = 0.005;
/** Pieces in the closest pair of points, when points are not evenly spaced. */
const PIECES_PER_SPACING = 10;
/** However close two points of a long ground are. */
const MOST_PIECES = 2 ** 20;
/** Spacings that differ by no more than this share are even. */
const EVEN = 1e-6;

/**
 * A measured ground: monotone cubic through the points of each track, which never goes above or below its neighbours,
 * less the mean height of both first points, faded in from flat. Even points are followed exactly; between uneven ones
 * the cubic is sampled at a tenth of the smallest spacing, at least 5 mm, and then off by at most step²/60 of a step in
 * its curvature.
 */
export function measuredGround(shape: Shape): Readonly<Record<Side, SampledSide>> {
  const { distance, fadeIn: fade, mirrored } = shape;
  const from = distance[0]!;
  const length = distance[distance.length - 1]! - from;
  const pieces = piecesFor(distance);
  const datum = (shape.left[0]! + shape.right[0]!) / 2;
  const sampled = (heights: readonly number[]): SampledSide => ({
    origin: 0,
    step: length / pieces,
    samples: sampleCubic(monotoneCubic(distance, heights), { from, length, pieces, datum, fade }),
    breaks: [0, Math.min(fade, length), length],
  });
  const [left, right] = [sampled(shape.left), sampled(shape.right)];
  return mirrored ? { left: right, right: left } : { left, right };
}

export function smallestSpacing(distance: readonly number[]): number {
  let smallest = Infinity;
  for (let i = 1; i < distance.length; i += 1) smallest = Math.min(smallest, distance[i]! - distance[i - 1]!);
  return smallest;
}

function piecesFor(distance: readonly number[]): number {
  const spacings = distance.length - 1;
  const length = distance[spacings]! - distance[0]!;
  const mean = length / spacings;
  const isEven = distance.every((at, i) => Math.abs(at - distance[0]! - i * mean) <= EVEN * mean);
  if (isEven) return spacings * Math.ceil(mean / LONGEST_PIECE);
  const step = Math.max(SHORTEST_PIECE, smallestSpacing(distance) / PIECES_PER_SPACING);
  return Math.min(MOST_PIECES, Math.ceil(length / Math.min(LONGEST_PIECE, step)));
}

function sampleCubic(
  { x, y, b, c, d }: MonotoneCubic,
  grid: { from: number; length: number; pieces: number; datum: number; fade: number },
): Float64Array {
  const samples = new Float64Array(2 * (grid.pieces + 1));
  let piece = 0;
  for (let i = 0; i <= grid.pieces; i += 1) {
    const s = (grid.length * i) / grid.pieces;
    // One step along with the grid: looking each place up would cost the square of the points.
    while (piece < c.length - 1 && x[piece + 1] <= grid.from + s) piece += 1;
    const v = grid.from + s - x[piece];
    samples[2 * i] = y[piece] - grid.datum + v * (b[piece] + v * (c[piece] + v * d[piece]));
    samples[2 * i + 1] = b[piece] + v * (2 * c[piece] + 3 * v * d[piece]);
  }
  return fadeSamples(samples, grid.length / grid.pieces, grid.fade);
}
