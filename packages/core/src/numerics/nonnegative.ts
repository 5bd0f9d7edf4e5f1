import { Matrix, QrDecomposition } from 'ml-matrix';

/** Turns that the method ever needs, times the number of unknowns. */
const TURNS = 3;

/**
 * x ≥ 0 that makes ‖A·x − b‖ least, by the method of active sets: unknowns come in one at a time while the residual asks
 * for more of them, and leave where they would fall below zero.
 *
 * @param rows – A, at least as many rows as columns, of full rank
 * @invariant where x is above zero the residual has no part along its column; where it is zero, none that asks for more
 * @source Lawson and Hanson, Solving Least Squares Problems, 1974, chapter 23 (from memory; checked against SciPy)
 */
export function nonNegativeLeastSquares(rows: Matrix, right: Float64Array): Float64Array {
  const [m, n] = [rows.rows, rows.columns];
  const x = new Float64Array(n);
  const isIn = Array.from({ length: n }, () => false);
  const asks = (): Float64Array => {
    const rest = right.slice();
    for (let j = 0; j < n; j += 1)
      if (x[j] !== 0) for (let i = 0; i < m; i += 1) rest[i] -= rows.get(i, j) * x[j];
    return Float64Array.from({ length: n }, (_, j) => {
      let sum = 0;
      for (let i = 0; i < m; i += 1) sum += rows.get(i, j) * rest[i];
      return sum;
    });
  };
  const floor = 1e-13 * Math.max(...asks().map(Math.abs), Number.MIN_VALUE);
  for (let turn = 0; turn < TURNS * n; turn += 1) {
    const pull = asks();
    let next = -1;
    for (let j = 0; j < n; j += 1)
      if (!isIn[j] && pull[j] > floor && (next < 0 || pull[j] > pull[next])) next = j;
    if (next < 0) return x;
    isIn[next] = true;
    for (;;) {
      const columns = isIn.flatMap((is, j) => (is ? [j] : []));
      if (columns.length === 0) break;
      const solved = new QrDecomposition(rows.subMatrixColumn(columns)).solve(Matrix.columnVector(right));
      const wrong = columns.filter((_, k) => solved.get(k, 0) <= 0);
      if (wrong.length === 0) {
        columns.forEach((j, k) => {
          x[j] = solved.get(k, 0);
        });
        break;
      }
      // As far towards the solution as nothing falls below zero; what comes to zero there leaves.
      let share = 1;
      columns.forEach((j, k) => {
        const to = solved.get(k, 0);
        if (to <= 0) share = Math.min(share, x[j] / (x[j] - to || 1));
      });
      columns.forEach((j, k) => {
        x[j] += share * (solved.get(k, 0) - x[j]);
        if (x[j] <= 1e-14) [x[j], isIn[j]] = [0, false];
      });
    }
  }
  return x;
}
