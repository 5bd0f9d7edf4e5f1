import { EigenvalueDecomposition, Matrix } from 'ml-matrix';

/** One eigenvalue; both of a conjugate pair are listed. */
export interface Eigenvalue {
  readonly re: number;
  readonly im: number;
}

/**
 * Eigenvalues of a small square matrix, smallest magnitude first. Not for an inner loop.
 *
 * @param rows – finite entries, as many rows as columns
 * @throws on entries that are not finite: our own mistake
 * @source real Schur form by the library ml-matrix (EISPACK's hqr2 by way of JAMA)
 */
export function eigenvalues(rows: readonly (readonly number[])[]): readonly Eigenvalue[] {
  if (!rows.every((row) => row.length === rows.length && row.every(Number.isFinite)))
    throw new Error('eigenvalues: needs a square matrix of finite entries');
  const { realEigenvalues, imaginaryEigenvalues } = new EigenvalueDecomposition(
    new Matrix(rows.map((row) => [...row])),
  );
  return realEigenvalues
    .map((re, i) => ({ re, im: imaginaryEigenvalues[i] }))
    .sort((a, b) => Math.hypot(a.re, a.im) - Math.hypot(b.re, b.im) || a.im - b.im);
}
