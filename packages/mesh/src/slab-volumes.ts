import type { SolidMesh } from './solid-mesh.ts';

/**
 * Volume of a solid between even heights, exactly.
 *
 * By the divergence theorem the volume of a closed body is the integral of x over its surface, each part as large as it
 * shows along x. The level faces that a slab is cut with show nothing along x, so each slab is the sum over the parts
 * of the triangles that lie in it.
 *
 * @returns [m³], `count` of them from `from` to `to`
 */
export function slabVolumes(
  { points, triangles }: SolidMesh,
  from: number,
  to: number,
  count: number,
): Float64Array {
  const volumes = new Float64Array(count);
  const step = (to - from) / count;
  const slabOf = (z: number) => (z - from) / step;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t], 3 * triangles[t + 1], 3 * triangles[t + 2]];
    const heights = [slabOf(points[a + 2]), slabOf(points[b + 2]), slabOf(points[c + 2])];
    const first = Math.floor(Math.min(...heights));
    const last = Math.floor(Math.max(...heights));
    if (first === last) {
      if (first >= 0 && first < count) volumes[first] += shown(points, [a, b, c]);
      continue;
    }
    const corners = [a, b, c].map((p): Corner => [points[p], points[p + 1], points[p + 2]]);
    for (let slab = Math.max(0, first); slab <= Math.min(count - 1, last); slab += 1) {
      const above = kept(corners, from + slab * step, 1);
      volumes[slab] += shownPolygon(kept(above, from + (slab + 1) * step, -1));
    }
  }
  return volumes;
}

type Corner = readonly [x: number, y: number, z: number];

/** Mean x of a triangle times its area as seen along x. */
function shown(p: Float32Array, [a, b, c]: readonly [number, number, number]): number {
  const area =
    ((p[b + 1] - p[a + 1]) * (p[c + 2] - p[a + 2]) - (p[b + 2] - p[a + 2]) * (p[c + 1] - p[a + 1])) / 2;
  return (area * (p[a] + p[b] + p[c])) / 3;
}

function shownPolygon(corners: readonly Corner[]): number {
  let sum = 0;
  for (let i = 2; i < corners.length; i += 1) {
    const [a, b, c] = [corners[0], corners[i - 1], corners[i]];
    const area = ((b[1] - a[1]) * (c[2] - a[2]) - (b[2] - a[2]) * (c[1] - a[1])) / 2;
    sum += (area * (a[0] + b[0] + c[0])) / 3;
  }
  return sum;
}

/** What of a polygon lies above a height (side 1) or below it (side −1). */
function kept(corners: readonly Corner[], height: number, side: 1 | -1): readonly Corner[] {
  return corners.flatMap((p, i): readonly Corner[] => {
    const q = corners[(i + 1) % corners.length];
    const [dp, dq] = [side * (p[2] - height), side * (q[2] - height)];
    const here: readonly Corner[] = dp >= 0 ? [p] : [];
    if (dp >= 0 === dq >= 0) return here;
    const s = dp / (dp - dq);
    return [...here, [p[0] + s * (q[0] - p[0]), p[1] + s * (q[1] - p[1]), height]];
  });
}
