/** A grid of values over a plane, row by row from the lowest y: value of column i in row j at `j * columns + i`. */
export interface LevelGrid {
  readonly columns: number;
  readonly rows: number;
  readonly values: ArrayLike<number>;
  readonly x: (column: number) => number;
  readonly y: (row: number) => number;
}

/**
 * Closed lines around all that is below zero, as x0, y0, x1, y1, …; filled by the even-odd rule they are the region.
 * Marching squares; where two ways lead through a square, its middle decides.
 *
 * @validity values on the rim of the grid are above zero, so that every line closes
 * @source Lorensen and Cline's marching cubes (1987) in two dimensions (from memory)
 */
export const levelRings = (grid: LevelGrid): readonly (readonly number[])[] => {
  const { columns, rows, values } = grid;
  const at = (i: number, j: number): number => values[j * columns + i]!;
  // Points lie on edges: below (2k) and left (2k + 1) of the grid point k.
  const next = new Map<number, number>();
  const points = new Map<number, readonly [number, number]>();
  const below = (i: number, j: number): number => {
    const key = 2 * (j * columns + i);
    if (!points.has(key)) {
      const share = shareOf(at(i, j), at(i + 1, j));
      points.set(key, [grid.x(i) + (grid.x(i + 1) - grid.x(i)) * share, grid.y(j)]);
    }
    return key;
  };
  const left = (i: number, j: number): number => {
    const key = 2 * (j * columns + i) + 1;
    if (!points.has(key)) {
      const share = shareOf(at(i, j), at(i, j + 1));
      points.set(key, [grid.x(i), grid.y(j) + (grid.y(j + 1) - grid.y(j)) * share]);
    }
    return key;
  };
  for (let j = 0; j + 1 < rows; j += 1)
    for (let i = 0; i + 1 < columns; i += 1) {
      const corners = [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)];
      const inside = corners.reduce((bits, value, k) => bits | (value < 0 ? 1 << k : 0), 0);
      if (inside === 0 || inside === 15) continue;
      const edges = [() => below(i, j), () => left(i + 1, j), () => below(i, j + 1), () => left(i, j)];
      const middle = corners.reduce((sum, value) => sum + value, 0) < 0;
      for (const [from, to] of waysOf(inside, middle)) next.set(edges[from]!(), edges[to]!());
    }
  const rings: number[][] = [];
  while (next.size > 0) {
    const [first] = next.keys();
    const ring: number[] = [];
    let key = first;
    while (key !== undefined && next.has(key)) {
      ring.push(...points.get(key)!);
      const following: number = next.get(key)!;
      next.delete(key);
      key = following;
    }
    if (ring.length >= 6) rings.push(ring);
  }
  return rings;
};

const shareOf = (a: number, b: number): number => a / (a - b);

/** Edge in and edge out (0 low, 1 right, 2 high, 3 left), with what is below zero on the left hand. */
const waysOf = (inside: number, middle: boolean): readonly (readonly [number, number])[] => {
  switch (inside) {
    case 1:
      return [[0, 3]];
    case 2:
      return [[1, 0]];
    case 3:
      return [[1, 3]];
    case 4:
      return [[2, 1]];
    case 5:
      return middle
        ? [
            [0, 1],
            [2, 3],
          ]
        : [
            [0, 3],
            [2, 1],
          ];
    case 6:
      return [[2, 0]];
    case 7:
      return [[2, 3]];
    case 8:
      return [[3, 2]];
    case 9:
      return [[0, 2]];
    case 10:
      return middle
        ? [
            [1, 2],
            [3, 0],
          ]
        : [
            [1, 0],
            [3, 2],
          ];
    case 11:
      return [[1, 2]];
    case 12:
      return [[3, 1]];
    case 13:
      return [[0, 1]];
    default:
      return [[3, 0]];
  }
};
