/** Terms of the series after scaling: 0.5¹⁸/18! is below the last digit. */
const TERMS = 18;

/**
 * exp(A) of a small square matrix: Taylor series of A/2ˢ, squared s times.
 *
 * @param matrix – row by row
 * @source scaling and squaring, the third method of Moler and Van Loan, SIAM Review 20 (1978) 801 (from memory;
 * checked against published matrices and SciPy)
 */
export function matrixExponential(matrix: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const norm = Math.max(...matrix.map((row) => row.reduce((sum, entry) => sum + Math.abs(entry), 0)));
  const squarings = Math.max(0, Math.ceil(Math.log2(2 * norm)));
  const scaled = matrix.map((row) => row.map((entry) => entry / 2 ** squarings));
  let term: readonly (readonly number[])[] = matrix.map((row, i) => row.map((_, j) => (i === j ? 1 : 0)));
  let sum = term;
  for (let k = 1; k <= TERMS; k += 1) {
    term = product(term, scaled).map((row) => row.map((entry) => entry / k));
    sum = sum.map((row, i) => row.map((entry, j) => entry + term[i]![j]!));
  }
  for (let k = 0; k < squarings; k += 1) sum = product(sum, sum);
  return sum;
}

function product(a: readonly (readonly number[])[], b: readonly (readonly number[])[]): number[][] {
  return a.map((row) => b.map((_, j) => row.reduce((sum, entry, k) => sum + entry * b[k]![j]!, 0)));
}
