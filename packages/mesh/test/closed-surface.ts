import { expect } from 'vitest';
import type { SolidMesh } from '../src/solid-mesh.ts';

/** What holds for the surface of one body, counted edge by edge: nothing here is shared with what made it. */
export interface Counted {
  readonly points: number;
  readonly edges: number;
  readonly triangles: number;
  /** Edges that are not run once each way. */
  readonly open: number;
  /** Points at which more than one fan of triangles meets. */
  readonly pinched: number;
  readonly flat: number;
}

export function counted({ points, triangles }: SolidMesh): Counted {
  const n = points.length / 3;
  const runs = new Map<number, number>();
  const around = Array.from({ length: n }, () => [] as number[]);
  let flat = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const corners = [triangles[t], triangles[t + 1], triangles[t + 2]];
    if (new Set(corners).size < 3) flat += 1;
    corners.forEach((p, i) => {
      const q = corners[(i + 1) % 3];
      runs.set(p * n + q, (runs.get(p * n + q) ?? 0) + 1);
      around[p].push(q, corners[(i + 2) % 3]);
    });
  }
  let open = 0;
  for (const [edge, times] of runs) {
    const [p, q] = [Math.floor(edge / n), edge % n];
    if (times !== 1 || runs.get(q * n + p) !== 1) open += 1;
  }
  // The triangles at a point make one closed fan: from neighbour to neighbour every one of them is met.
  const pinched = around.filter((pairs) => {
    const next = new Map<number, number>();
    for (let i = 0; i < pairs.length; i += 2) next.set(pairs[i], pairs[i + 1]);
    let [at, met] = [pairs[0], 0];
    do {
      at = next.get(at) ?? pairs[0];
      met += 1;
    } while (at !== pairs[0] && met <= pairs.length);
    return met !== pairs.length / 2;
  }).length;
  return { points: n, edges: runs.size / 2, triangles: triangles.length / 3, open, pinched, flat };
}

export function expectClosed(mesh: SolidMesh): void {
  const { open, pinched, flat } = counted(mesh);
  expect({ open, pinched, flat }).toEqual({ open: 0, pinched: 0, flat: 0 });
}

/** Volume by adding prisms below each triangle: another way than the one in `src`. */
export function volumeByPrisms({ points, triangles }: SolidMesh): number {
  let sum = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t], 3 * triangles[t + 1], 3 * triangles[t + 2]];
    const area =
      ((points[b] - points[a]) * (points[c + 1] - points[a + 1]) -
        (points[c] - points[a]) * (points[b + 1] - points[a + 1])) /
      2;
    sum += (area * (points[a + 2] + points[b + 2] + points[c + 2])) / 3;
  }
  return sum;
}
