import type { Point } from './dominance.ts';
import { frontOf } from './pareto.ts';

/**
 * Volume of what a set of points is nowhere worse than, up to a far corner: the union of the boxes between each point
 * and the corner.
 *
 * For each point its own box less what the points after it cover of it (`limit set`), down to a sweep in two
 * objectives. Exact; the time grows steeply with points and objectives (some hundreds in three, some dozens in six).
 *
 * @param corner – one value an objective; what lies beyond it counts nothing
 * @returns volume in the product of the units of the objectives, 0 or more
 * @source While, Bradstreet, Barone, IEEE Trans. Evol. Comput. 16 (2012) 86 (from memory); the measure itself by
 * Zitzler and Thiele, IEEE Trans. Evol. Comput. 3 (1999) 257 (from memory)
 */
export function hypervolume(points: readonly Point[], corner: Point): number {
  const inside = points.filter((point) => point.every((value, k) => value < corner[k]));
  return unionOf(distinctFront(inside), corner);
}

/** The front, each point once. */
function distinctFront(points: readonly Point[]): Point[] {
  const seen = new Set<string>();
  return frontOf(points)
    .map((i) => points[i])
    .filter((point) => {
      const key = point.join();
      return seen.has(key) ? false : seen.add(key);
    });
}

function unionOf(front: readonly Point[], corner: Point): number {
  if (front.length === 0) return 0;
  if (corner.length === 1) return corner[0] - front[0][0];
  if (corner.length === 2) return areaOf(front, corner);
  // Worst in the last objective first: what is left over of the later boxes gets small soon.
  const last = corner.length - 1;
  const sorted = [...front].sort((a, b) => b[last] - a[last]);
  let volume = 0;
  for (let i = 0; i < sorted.length; i += 1) {
    const point = sorted[i];
    const covered = sorted.slice(i + 1).map((other) => other.map((value, k) => Math.max(value, point[k])));
    volume += boxOf(point, corner) - unionOf(distinctFront(covered), corner);
  }
  return volume;
}

function boxOf(point: Point, corner: Point): number {
  let volume = 1;
  for (let k = 0; k < corner.length; k += 1) volume *= corner[k] - point[k];
  return volume;
}

/** Two objectives: a staircase. */
function areaOf(front: readonly Point[], corner: Point): number {
  const sorted = [...front].sort((a, b) => a[0] - b[0]);
  let area = 0;
  let top = corner[1];
  for (const [x, y] of sorted) {
    area += (corner[0] - x) * (top - y);
    top = y;
  }
  return area;
}
