/**
 * Factors a small square matrix in place: rows swapped so that the largest entry leads.
 *
 * @param matrix – row by row, n×n; holds both factors afterwards
 * @param swaps – of length n; which row came up in each step
 * @returns the determinant; 0 when a pivot vanished, and then the factors are of no use
 * @source Doolittle's elimination with partial pivoting (textbook)
 */
export function factorise(matrix: Float64Array, n: number, swaps: Int32Array): number {
  let determinant = 1;
  for (let k = 0; k < n; k += 1) {
    let lead = k;
    for (let i = k + 1; i < n; i += 1)
      if (Math.abs(matrix[i * n + k]) > Math.abs(matrix[lead * n + k])) lead = i;
    swaps[k] = lead;
    if (lead !== k) {
      determinant = -determinant;
      for (let j = 0; j < n; j += 1) {
        const held = matrix[k * n + j];
        matrix[k * n + j] = matrix[lead * n + j];
        matrix[lead * n + j] = held;
      }
    }
    const pivot = matrix[k * n + k];
    determinant *= pivot;
    if (pivot === 0) return 0;
    for (let i = k + 1; i < n; i += 1) {
      const factor = matrix[i * n + k] / pivot;
      matrix[i * n + k] = factor;
      for (let j = k + 1; j < n; j += 1) matrix[i * n + j] -= factor * matrix[k * n + j];
    }
  }
  return determinant;
}

/** Solves with the factors of `factorise`; `side` is the right-hand side and becomes the answer. */
export function substitute(factors: Float64Array, n: number, swaps: Int32Array, side: Float64Array): void {
  for (let k = 0; k < n; k += 1) {
    const lead = swaps[k];
    const held = side[lead];
    side[lead] = side[k];
    side[k] = held;
  }
  for (let i = 1; i < n; i += 1) for (let j = 0; j < i; j += 1) side[i] -= factors[i * n + j] * side[j];
  for (let i = n - 1; i >= 0; i -= 1) {
    for (let j = i + 1; j < n; j += 1) side[i] -= factors[i * n + j] * side[j];
    side[i] /= factors[i * n + i];
  }
}
