import type { SolidMesh } from './solid-mesh.ts';

const HEADER = 80;
const RECORD = 50;

/**
 * A solid as a binary STL file in millimetres: 80 bytes of text, how many triangles, then for each its normal, its three
 * corners and two bytes of nothing; all little-endian.
 *
 * STL knows no unit and repeats each point in each triangle: take 3MF where the slicer reads it.
 *
 * @source the layout as used everywhere since 1989 (from memory); read back by other programs in `npm run validate:mesh`
 */
export function stlOf({ points, triangles }: SolidMesh, title: string): Uint8Array {
  const count = triangles.length / 3;
  const bytes = new Uint8Array(HEADER + 4 + RECORD * count);
  const view = new DataView(bytes.buffer);
  // A file that begins with "solid" is taken for the text form of STL.
  const text = `Lastinch, millimetres: ${title}`.replace(/[^ -~]/g, '?').slice(0, HEADER);
  for (let i = 0; i < text.length; i += 1) bytes[i] = text.charCodeAt(i);
  view.setUint32(HEADER, count, true);
  const p = new Float32Array(9);
  for (let t = 0; t < count; t += 1) {
    for (let corner = 0; corner < 3; corner += 1)
      for (let axis = 0; axis < 3; axis += 1)
        p[3 * corner + axis] = 1000 * points[3 * triangles[3 * t + corner] + axis];
    const [ux, uy, uz] = [p[3] - p[0], p[4] - p[1], p[5] - p[2]];
    const [vx, vy, vz] = [p[6] - p[0], p[7] - p[1], p[8] - p[2]];
    const normal = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const size = Math.hypot(normal[0], normal[1], normal[2]) || 1;
    const at = HEADER + 4 + RECORD * t;
    for (let axis = 0; axis < 3; axis += 1) view.setFloat32(at + 4 * axis, normal[axis] / size, true);
    for (let i = 0; i < 9; i += 1) view.setFloat32(at + 12 + 4 * i, p[i], true);
  }
  return bytes;
}
