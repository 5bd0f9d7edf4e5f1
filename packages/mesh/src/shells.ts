import type { SolidMesh } from './solid-mesh.ts';

/** A closed surface within a mesh. */
export interface Shell {
  /** Enclosed [m³]; below zero for the surface of a hollow inside a body. */
  readonly volume: number;
  /** How many triangles it has. */
  readonly triangles: number;
}

export interface Shells {
  readonly shells: readonly Shell[];
  /** For each triangle the place of its shell in the list. */
  readonly of: Int32Array;
}

/** The closed surfaces of a mesh: triangles that hang together by their points. Volume by the divergence theorem. */
export function shellsOf({ points, triangles }: SolidMesh): Shells {
  const root = Int32Array.from({ length: points.length / 3 }, (_, i) => i);
  const find = (point: number): number => {
    let p = point;
    while (root[p] !== p) {
      root[p] = root[root[p]];
      p = root[p];
    }
    return p;
  };
  for (let t = 0; t < triangles.length; t += 3) {
    const a = find(triangles[t]);
    for (const other of [triangles[t + 1], triangles[t + 2]]) {
      const b = find(other);
      if (a !== b) root[b] = a;
    }
  }
  const place = new Map<number, number>();
  const of = new Int32Array(triangles.length / 3);
  const [volume, count]: [number[], number[]] = [[], []];
  for (let t = 0; t < of.length; t += 1) {
    const at = find(triangles[3 * t]);
    let shell = place.get(at);
    if (shell === undefined) {
      shell = volume.length;
      place.set(at, shell);
      volume.push(0);
      count.push(0);
    }
    of[t] = shell;
    volume[shell] += wedge(points, triangles, 3 * t);
    count[shell] += 1;
  }
  return { shells: volume.map((v, i) => ({ volume: v, triangles: count[i] })), of };
}

/** The mesh of some of its shells, with the points that they use. */
export function onlyShells(
  { points, triangles }: SolidMesh,
  { of }: Shells,
  keep: (shell: number) => boolean,
): SolidMesh {
  const renamed = new Int32Array(points.length / 3).fill(-1);
  const kept: number[] = [];
  let used = 0;
  const xyz = new Float32Array(points.length);
  for (let t = 0; t < triangles.length; t += 1) {
    if (!keep(of[Math.floor(t / 3)])) continue;
    const p = triangles[t];
    if (renamed[p] < 0) {
      renamed[p] = used;
      xyz.set(points.subarray(3 * p, 3 * p + 3), 3 * used);
      used += 1;
    }
    kept.push(renamed[p]);
  }
  return { points: xyz.slice(0, 3 * used), triangles: Uint32Array.from(kept) };
}

/** Enclosed by the whole mesh, hollows taken off [m³]. */
export function meshVolume({ points, triangles }: SolidMesh): number {
  let sum = 0;
  for (let t = 0; t < triangles.length; t += 3) sum += wedge(points, triangles, t);
  return sum;
}

/** Volume between a triangle and the origin, signed [m³]. */
function wedge(p: Float32Array, triangles: Uint32Array, t: number): number {
  const [a, b, c] = [3 * triangles[t], 3 * triangles[t + 1], 3 * triangles[t + 2]];
  return (
    (p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1]) +
      p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2]) +
      p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c])) /
    6
  );
}
