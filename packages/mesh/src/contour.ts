import { type CutPoint, cutTetrahedron } from './cut-tetrahedron.ts';
import type { FieldBody } from './field-body.ts';
import type { SolidMesh } from './solid-mesh.ts';
import { SurfacePoints } from './surface-points.ts';

/** A value nearer to zero than this share of the grid is moved there: a surface never goes through a grid vertex. */
const NEAREST = 0.01;

/** Even orders of the corners that put one, or two, of them first. */
const ONE_FIRST = [
  [0, 1, 2, 3],
  [1, 0, 3, 2],
  [2, 3, 0, 1],
  [3, 2, 1, 0],
];
const TWO_FIRST: Readonly<Record<number, readonly number[]>> = {
  3: [0, 1, 2, 3],
  5: [0, 2, 3, 1],
  9: [0, 3, 1, 2],
  6: [1, 2, 0, 3],
  10: [1, 3, 2, 0],
  12: [2, 3, 0, 1],
};

/** Corners between two centres along x, y and z: counter-clockwise as seen by who looks back along the axis. */
const AROUND = [
  [
    [0, 0, 0],
    [0, 1, 0],
    [0, 1, 1],
    [0, 0, 1],
  ],
  [
    [0, 0, 0],
    [0, 0, 1],
    [1, 0, 1],
    [1, 0, 0],
  ],
  [
    [0, 0, 0],
    [1, 0, 0],
    [1, 1, 0],
    [0, 1, 0],
  ],
] as const;

/**
 * The surface of a body, closed and manifold by construction.
 *
 * Space is cut into the tetrahedra of a body-centred cubic grid: two neighbouring centres and one edge of the square
 * between them. In each, every field is the linear function through its values at the corners. Where one field changes
 * sign its plane is the surface; where several do the tetrahedron is cut by all of them (`cutTetrahedron`), so that edges
 * stay sharp and a wall thinner than the grid stays whole. Points on grid edges are then moved to the true zero of their
 * field.
 *
 * @param spacing – edge of the grid's cubes [m]
 * @param pairs – fields, as bits, of which two can change sign in one tetrahedron without meeting in it
 * @param onLayer – called after each layer with the share done
 * @source tetrahedra of the body-centred grid: common in isosurface work (from memory); the cutting by many fields is
 *   worked out here
 */
export function contourOf(
  body: FieldBody,
  spacing: number,
  pairs: number,
  onLayer: (share: number) => void = () => {},
): SolidMesh {
  const { fields, from, to } = body;
  const n = fields.length;
  const solid = Uint8Array.from({ length: 1 << n }, (_, positive) => (body.isSolid(positive) ? 1 : 0));
  const isSolid = (positive: number): boolean => solid[positive] === 1;
  const nearest = NEAREST * spacing;
  // A cube of room all round, and an odd shift, so that no plane of a part lies in a plane of the grid.
  const origin = from.map((low, i) => low - (1.271 + 0.0737 * i) * spacing);
  const cells = to.map((high, i) => Math.ceil((high - origin[i]) / spacing + 1.2));
  const [nx, ny, nz] = cells;
  const row = nx + 1;
  const layer = row * (ny + 1);

  const placeOf = (vertex: number, into: Float64Array): void => {
    const half = vertex % 2;
    const cube = (vertex - half) / 2;
    const i = cube % row;
    const j = ((cube - i) / row) % (ny + 1);
    const k = (cube - i - j * row) / layer;
    into[0] = origin[0] + (i + half / 2) * spacing;
    into[1] = origin[1] + (j + half / 2) * spacing;
    into[2] = origin[2] + (k + half / 2) * spacing;
  };
  const points = new SurfacePoints(body, spacing, placeOf);
  const triangles = new TriangleList();

  // Two layers of corners and two of centres at a time; slot of a vertex: which of the four, then its place in the layer.
  const values = new Float64Array(4 * layer * n);
  const signs = new Int32Array(4 * layer);
  const place = new Float64Array(3);
  const base = (half: 0 | 1, k: number): number => (2 * half + (k % 2)) * layer;
  const fill = (k: number, half: 0 | 1): void => {
    const start = base(half, k);
    for (let j = 0; j <= ny - half; j += 1)
      for (let i = 0; i <= nx - half; i += 1) {
        const slot = start + j * row + i;
        placeOf(2 * (k * layer + j * row + i) + half, place);
        let bits = 0;
        for (let f = 0; f < n; f += 1) {
          let value = fields[f](place[0], place[1], place[2]);
          if (Math.abs(value) < nearest) value = value < 0 ? -nearest : nearest;
          values[slot * n + f] = value;
          if (value > 0) bits |= 1 << f;
        }
        signs[slot] = bits;
      }
  };

  const slots = new Int32Array(4);
  const ids = new Float64Array(4);
  const edgePoint = (a: number, b: number, field: number): number => {
    const [va, vb] = [values[slots[a] * n + field], values[slots[b] * n + field]];
    const crossing = signs[slots[a]] ^ signs[slots[b]];
    const isAlone = crossing === 1 << field || crossing === pairs;
    return ids[a] < ids[b]
      ? points.onEdge(ids[a], ids[b], field, va, vb, isAlone)
      : points.onEdge(ids[b], ids[a], field, vb, va, isAlone);
  };
  /** The surface of one field alone: a triangle or two. */
  const oneField = (field: number): void => {
    let positive = 0;
    for (let c = 0; c < 4; c += 1) if ((signs[slots[c]] >> field) & 1) positive |= 1 << c;
    const two = TWO_FIRST[positive];
    if (two !== undefined) {
      const [a, b, c, d] = two;
      const [ac, ad] = [edgePoint(a, c, field), edgePoint(a, d, field)];
      const [bd, bc] = [edgePoint(b, d, field), edgePoint(b, c, field)];
      triangles.add(ac, ad, bd);
      triangles.add(ac, bd, bc);
      return;
    }
    const single = positive & (positive - 1) ? ~positive & 0b1111 : positive;
    const [a, b, c, d] = ONE_FIRST[31 - Math.clz32(single)];
    const [ab, ac, ad] = [edgePoint(a, b, field), edgePoint(a, c, field), edgePoint(a, d, field)];
    if (single === positive) triangles.add(ab, ac, ad);
    else triangles.add(ab, ad, ac);
  };

  const named = (point: CutPoint, order: readonly number[]): number => {
    const held = order.filter((_, c) => (point.between >> c) & 1);
    if (held.length === 2) return edgePoint(held[0], held[1], 31 - Math.clz32(point.fields));
    let [x, y, z] = [0, 0, 0];
    order.forEach((c, i) => {
      placeOf(ids[c], place);
      x += point.weights[i] * place[0];
      y += point.weights[i] * place[1];
      z += point.weights[i] * place[2];
    });
    return points.onCrossing(`${held.map((c) => ids[c]).join()}:${point.fields}`, point.fields, x, y, z);
  };
  const manyFields = (mixed: number, always: number): void => {
    const order = [0, 1, 2, 3].sort((a, b) => ids[a] - ids[b]);
    const positive = isEven(order);
    cutTetrahedron(
      {
        vertices: order.map((c) => ids[c]),
        positive,
        mixed,
        always,
        value: (corner, field) => values[slots[order[corner]] * n + field],
      },
      isSolid,
      (polygon) => {
        const loop = polygon.map((point) => named(point, order));
        for (let i = 2; i < loop.length; i += 1) triangles.add(loop[0], loop[i - 1], loop[i]);
      },
    );
  };

  const tetrahedron = (): void => {
    const [s0, s1, s2, s3] = [signs[slots[0]], signs[slots[1]], signs[slots[2]], signs[slots[3]]];
    const always = s0 & s1 & s2 & s3;
    const some = s0 | s1 | s2 | s3;
    if (always === some || isSolid(always) || !isSolid(some)) return;
    const mixed = some & ~always;
    if ((mixed & (mixed - 1)) === 0) oneField(31 - Math.clz32(mixed));
    else if (mixed === pairs) {
      for (let f = 0; f < n; f += 1) if ((mixed >> f) & 1) oneField(f);
    } else manyFields(mixed, always);
  };
  const around = AROUND.map((corners) => corners.map(([i, j, k]) => ({ inLayer: j * row + i, up: k })));
  const back = [1, row, 0];
  const cornerSlot = new Int32Array(4);
  const cornerId = new Float64Array(4);
  /** Two neighbouring centres along an axis and the four corners between them. */
  const square = (axis: number, at: number, k: number): void => {
    const below = axis === 2 ? k - 1 : k;
    const [first, second] = [base(1, below) + at - back[axis], base(1, k) + at];
    let all = signs[first] & signs[second];
    let some = signs[first] | signs[second];
    for (let m = 0; m < 4; m += 1) {
      const { inLayer, up } = around[axis][m];
      cornerSlot[m] = base(0, k + up) + at + inLayer;
      cornerId[m] = 2 * ((k + up) * layer + at + inLayer);
      all &= signs[cornerSlot[m]];
      some |= signs[cornerSlot[m]];
    }
    if (all === some || solid[all] === solid[some]) return;
    slots[0] = first;
    slots[1] = second;
    ids[0] = 2 * (below * layer + at - back[axis]) + 1;
    ids[1] = 2 * (k * layer + at) + 1;
    for (let m = 0; m < 4; m += 1) {
      const next = (m + 1) % 4;
      slots[2] = cornerSlot[m];
      slots[3] = cornerSlot[next];
      ids[2] = cornerId[m];
      ids[3] = cornerId[next];
      tetrahedron();
    }
  };

  fill(0, 0);
  for (let k = 0; k < nz; k += 1) {
    fill(k, 1);
    if (k > 0) for (let j = 0; j < ny; j += 1) for (let i = 0; i < nx; i += 1) square(2, j * row + i, k);
    fill(k + 1, 0);
    for (let j = 0; j < ny; j += 1)
      for (let i = 0; i < nx; i += 1) {
        if (i > 0) square(0, j * row + i, k);
        if (j > 0) square(1, j * row + i, k);
      }
    onLayer((k + 1) / nz);
  }
  return { points: points.points(), triangles: triangles.all() };
}

function isEven(order: readonly number[]): boolean {
  let swaps = 0;
  for (let a = 0; a < 4; a += 1) for (let b = a + 1; b < 4; b += 1) if (order[a] > order[b]) swaps += 1;
  return swaps % 2 === 0;
}

class TriangleList {
  private corners = new Uint32Array(3 * 4096);
  private length = 0;

  add(a: number, b: number, c: number): void {
    if (this.length + 3 > this.corners.length) {
      const wider = new Uint32Array(2 * this.corners.length);
      wider.set(this.corners);
      this.corners = wider;
    }
    this.corners[this.length] = a;
    this.corners[this.length + 1] = b;
    this.corners[this.length + 2] = c;
    this.length += 3;
  }

  all(): Uint32Array {
    return this.corners.slice(0, this.length);
  }
}
