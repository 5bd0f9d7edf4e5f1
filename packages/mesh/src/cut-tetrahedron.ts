/** A tetrahedron of the grid whose corners lie on both sides of two fields or more. */
export interface Tetrahedron {
  /** Grid vertices, rising. */
  readonly vertices: ArrayLike<number>;
  /** Whether the corners in this order make a tetrahedron of positive volume. */
  readonly positive: boolean;
  /** Fields that change sign in it, as bits, and those that are positive in all of it. */
  readonly mixed: number;
  readonly always: number;
  /** Value of a field at a corner; never zero. */
  readonly value: (corner: number, field: number) => number;
}

/** A corner of a piece: between which corners of the tetrahedron it lies (bits), and which fields are zero at it (bits). */
export interface CutPoint {
  readonly between: number;
  readonly fields: number;
  /** Weights of the four corners. */
  readonly weights: readonly number[];
  /** Values of all mixed fields by straight interpolation. */
  readonly values: readonly number[];
}

interface Face {
  /** The field that made it, −1 for a side of the tetrahedron. */
  readonly field: number;
  readonly loop: readonly number[];
}

interface Piece {
  readonly positive: number;
  readonly faces: readonly Face[];
}

/** Below this share of what it was mixed from a value is rounding, and nothing. */
const TIE = 1e-10;

const SIDES: readonly (readonly number[])[] = [
  [1, 2, 3],
  [0, 3, 2],
  [0, 1, 3],
  [0, 2, 1],
];

/**
 * The faces of a body within a tetrahedron, each field taken as the linear function through its values at the corners.
 * The tetrahedron is cut by the plane of each field in turn; where a piece is solid and the one behind its face is not,
 * the face is part of the surface.
 *
 * Whatever lies on a side is worked out from what stands at that side alone, in an order that both neighbours share:
 * so the traces of the surface on it are the same from both.
 *
 * @param emit – a convex polygon, counter-clockwise from outside
 */
export function cutTetrahedron(
  tetrahedron: Tetrahedron,
  isSolid: (positive: number) => boolean,
  emit: (polygon: readonly CutPoint[]) => void,
): void {
  const { mixed, always, positive, value } = tetrahedron;
  const fields: number[] = [];
  for (let k = 0; mixed >> k > 0; k += 1) if ((mixed >> k) & 1) fields.push(k);
  const points: CutPoint[] = [0, 1, 2, 3].map((corner) => ({
    between: 1 << corner,
    fields: 0,
    weights: [0, 1, 2, 3].map((each) => (each === corner ? 1 : 0)),
    values: fields.map((k) => value(corner, k)),
  }));
  let pieces: readonly Piece[] = [
    {
      positive: always,
      faces: SIDES.map((loop) => ({ field: -1, loop: positive ? loop : [...loop].reverse() })),
    },
  ];
  fields.forEach((field, at) => {
    const made = new Map<number, number>();
    const cut = (p: number, q: number): number => {
      const [a, b] = before(points[p], points[q]) ? [p, q] : [q, p];
      const name = a * 4096 + b;
      let found = made.get(name);
      if (found === undefined) {
        found = points.length;
        points.push(between(points[a], points[b], at, field));
        made.set(name, found);
      }
      return found;
    };
    pieces = pieces.flatMap((piece) => split(piece, field, (p) => points[p].values[at] >= 0, cut));
  });
  for (const piece of pieces) {
    if (!isSolid(piece.positive)) continue;
    for (const { field, loop } of piece.faces) {
      if (field < 0 || !((piece.positive >> field) & 1) || isSolid(piece.positive ^ (1 << field))) continue;
      emit(loop.map((p) => points[p]));
    }
  }
}

/** An order of points that both neighbours of a side share: by the corners that hold them, then by their fields. */
const before = (a: CutPoint, b: CutPoint): boolean =>
  a.between !== b.between ? a.between < b.between : a.fields < b.fields;

function between(a: CutPoint, b: CutPoint, at: number, field: number): CutPoint {
  const s = a.values[at] / (a.values[at] - b.values[at]);
  const mix = (from: readonly number[], to: readonly number[]) =>
    from.map((x, i) => {
      const mixed = x + s * (to[i] - x);
      // Where two planes are one, rounding must not scatter its points to both sides.
      return Math.abs(mixed) < TIE * (Math.abs(x) + Math.abs(to[i])) ? 0 : mixed;
    });
  return {
    between: a.between | b.between,
    fields: (a.fields & b.fields) | (1 << field),
    weights: mix(a.weights, b.weights),
    values: mix(a.values, b.values),
  };
}

/** A convex piece on both sides of a plane. */
function split(
  piece: Piece,
  field: number,
  isPositive: (p: number) => boolean,
  cut: (p: number, q: number) => number,
): readonly Piece[] {
  const signs = piece.faces.flatMap(({ loop }) => loop.map(isPositive));
  if (signs.every((sign) => !sign)) return [piece];
  const above = piece.positive | (1 << field);
  if (signs.every((sign) => sign)) return [{ ...piece, positive: above }];
  const [upper, lower]: [Face[], Face[]] = [[], []];
  /** Where the new face goes on from a point, seen from outside of the upper piece. */
  const next = new Map<number, number>();
  for (const face of piece.faces) {
    const [over, under]: [number[], number[]] = [[], []];
    let [leaves, enters] = [-1, -1];
    face.loop.forEach((p, i) => {
      const q = face.loop[(i + 1) % face.loop.length];
      const [here, there] = [isPositive(p), isPositive(q)];
      (here ? over : under).push(p);
      if (here === there) return;
      const point = cut(p, q);
      over.push(point);
      under.push(point);
      if (here) leaves = point;
      else enters = point;
    });
    if (over.length > 2) upper.push({ field: face.field, loop: over });
    if (under.length > 2) lower.push({ field: face.field, loop: under });
    if (leaves >= 0) next.set(enters, leaves);
  }
  const loop: number[] = [];
  const start = next.keys().next().value as number;
  for (let p = start; loop.length < next.size; ) {
    loop.push(p);
    p = next.get(p) ?? start;
    if (p === start) break;
  }
  upper.push({ field, loop });
  lower.push({ field, loop: [...loop].reverse() });
  return [
    { positive: above, faces: upper },
    { positive: piece.positive, faces: lower },
  ];
}
