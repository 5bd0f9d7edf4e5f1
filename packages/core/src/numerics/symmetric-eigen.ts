/** Sweeps after which rounding has long won: Jacobi converges quadratically. */
const SWEEPS = 30;

/** Of a symmetric matrix: the values rising, and beside each its vector of length 1. */
export interface SymmetricEigen {
  readonly values: readonly number[];
  readonly vectors: readonly (readonly number[])[];
}

/**
 * Eigenvalues and eigenvectors of a small symmetric matrix by Jacobi's rotations.
 *
 * @param matrix – row by row; only its symmetric part counts
 * @source Jacobi (1846); the rotation is that of Golub and Van Loan, Matrix Computations, section 8.5 (from memory)
 */
export function symmetricEigen(matrix: readonly (readonly number[])[]): SymmetricEigen {
  const n = matrix.length;
  const a = matrix.map((row, i) => row.map((entry, j) => 0.5 * (entry + matrix[j][i])));
  const v = matrix.map((row, i) => row.map((_, j): number => (i === j ? 1 : 0)));
  for (let sweep = 0; sweep < SWEEPS; sweep += 1)
    for (let p = 0; p < n; p += 1)
      for (let q = p + 1; q < n; q += 1) {
        if (a[p][q] === 0) continue;
        const half = (a[q][q] - a[p][p]) / (2 * a[p][q]);
        const tangent = Math.sign(half || 1) / (Math.abs(half) + Math.hypot(half, 1));
        const cosine = 1 / Math.hypot(tangent, 1);
        const sine = tangent * cosine;
        for (let k = 0; k < n; k += 1) {
          [a[k][p], a[k][q]] = [cosine * a[k][p] - sine * a[k][q], sine * a[k][p] + cosine * a[k][q]];
          [v[k][p], v[k][q]] = [cosine * v[k][p] - sine * v[k][q], sine * v[k][p] + cosine * v[k][q]];
        }
        for (let k = 0; k < n; k += 1)
          [a[p][k], a[q][k]] = [cosine * a[p][k] - sine * a[q][k], sine * a[p][k] + cosine * a[q][k]];
      }
  const order = a.map((_, i) => i).sort((i, j) => a[i][i] - a[j][j]);
  return { values: order.map((i) => a[i][i]), vectors: order.map((i) => v.map((row) => row[i])) };
}
