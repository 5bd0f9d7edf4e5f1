import { FrontArchive } from './archive.ts';
import type { Point } from './dominance.ts';

/**
 * Numbers of the points that no other point beats, rising. Points alike in every objective stay together.
 * @invariant the same set for any order of the points
 */
export function frontOf(points: readonly Point[]): number[] {
  if (points.length === 0) return [];
  const archive = new FrontArchive<number>();
  // Best first: then hardly any point has to be taken out again. The order decides the time only.
  for (const i of byPromise(points)) archive.offer(points[i], i);
  return archive.entries().sort((a, b) => a - b);
}

/** Numbers of the points by the sum of their objectives, each as a share of its range: the most promising first. */
export function byPromise(points: readonly Point[]): number[] {
  const sums = new Float64Array(points.length);
  const width = points[0]?.length ?? 0;
  for (let k = 0; k < width; k += 1) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (const point of points) {
      // Where nothing is known of an objective yet, it says nothing about the order either.
      if (!Number.isFinite(point[k])) continue;
      low = Math.min(low, point[k]);
      high = Math.max(high, point[k]);
    }
    const range = high - low || 1;
    for (let i = 0; i < points.length; i += 1)
      if (Number.isFinite(points[i][k])) sums[i] += (points[i][k] - low) / range;
  }
  return Array.from(points, (_, i) => i).sort((a, b) => sums[a] - sums[b] || a - b);
}

/**
 * Layer of each point: 0 for the front, 1 for the front of what is left without it, and so on.
 * @source non-dominated sorting: Deb, Pratap, Agarwal, Meyarivan, IEEE Trans. Evol. Comput. 6 (2002) 182
 */
export function layersOf(points: readonly Point[]): number[] {
  const layers = new Array<number>(points.length).fill(0);
  let left = points.map((_, i) => i);
  for (let layer = 0; left.length > 0; layer += 1) {
    const front = new Set(frontOf(left.map((i) => points[i])).map((i) => left[i]));
    for (const i of front) layers[i] = layer;
    left = left.filter((i) => !front.has(i));
  }
  return layers;
}

/**
 * How much room each point of a layer has: the sum, over the objectives, of the distance between its two neighbours as
 * a share of the range. The ends of an objective have room without end.
 * @source crowding distance: Deb et al. (2002), section III-B
 */
export function roomOf(points: readonly Point[]): number[] {
  const room = new Array<number>(points.length).fill(0);
  const width = points[0]?.length ?? 0;
  for (let k = 0; k < width; k += 1) {
    const order = points.map((_, i) => i).sort((a, b) => points[a][k] - points[b][k] || a - b);
    const range = points[order[order.length - 1]][k] - points[order[0]][k];
    if (range === 0) continue;
    room[order[0]] = Number.POSITIVE_INFINITY;
    room[order[order.length - 1]] = Number.POSITIVE_INFINITY;
    for (let at = 1; at < order.length - 1; at += 1)
      room[order[at]] += (points[order[at + 1]][k] - points[order[at - 1]][k]) / range;
  }
  return room;
}
