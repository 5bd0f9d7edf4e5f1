import type { SolidMesh } from './solid-mesh.ts';

/**
 * Area of a solid at heights, evenly from `from` to `to`, both at half a step from the ends.
 *
 * A plane cuts each triangle in a segment; the area within the segments is half the sum of x·dy − y·dx along them
 * (Green), so neither the order of the segments nor how many outlines they make is of account.
 *
 * @returns [m²], `count` of them
 */
export function sliceAreas(
  { points, triangles }: SolidMesh,
  from: number,
  to: number,
  count: number,
): Float64Array {
  const areas = new Float64Array(count);
  const step = (to - from) / count;
  const heightOf = (i: number) => from + (i + 0.5) * step;
  for (let t = 0; t < triangles.length; t += 3) {
    const corners = [triangles[t], triangles[t + 1], triangles[t + 2]].map((p) => 3 * p);
    const z = corners.map((p) => points[p + 2]);
    const first = Math.max(0, Math.ceil((Math.min(...z) - from) / step - 0.5));
    const last = Math.min(count - 1, Math.floor((Math.max(...z) - from) / step - 0.5));
    for (let i = first; i <= last; i += 1) {
      const h = heightOf(i);
      // From the side that goes up to the one that goes down, the solid lies on the left as seen from above.
      let [ux, uy, dx, dy, sides] = [0, 0, 0, 0, 0];
      for (let e = 0; e < 3; e += 1) {
        const [p, q] = [corners[e], corners[(e + 1) % 3]];
        const [zp, zq] = [points[p + 2], points[q + 2]];
        if (zp < h === zq < h) continue;
        const s = (h - zp) / (zq - zp);
        const [x, y] = [
          points[p] + s * (points[q] - points[p]),
          points[p + 1] + s * (points[q + 1] - points[p + 1]),
        ];
        sides += 1;
        if (zp < h) [ux, uy] = [x, y];
        else [dx, dy] = [x, y];
      }
      if (sides === 2) areas[i] += (dx * uy - ux * dy) / 2;
    }
  }
  return areas;
}
