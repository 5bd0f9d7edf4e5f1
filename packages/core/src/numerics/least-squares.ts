import { Matrix, QrDecomposition } from 'ml-matrix';

/** What a fit of parameters to readings found. */
export interface LeastSquares {
  readonly parameters: Float64Array;
  /** Σ residual². */
  readonly sumOfSquares: number;
  /**
   * Covariance of the parameters, row-major: s²·(JᵀJ)⁻¹ with s² = sum of squares ÷ (residuals − parameters). Null when
   * there are no more residuals than parameters, or when the residuals do not tell some parameter.
   */
  readonly covariance: Float64Array | null;
  readonly steps: number;
  /** False when the steps ran out before the parameters stood still. */
  readonly settled: boolean;
}

export interface LeastSquaresOptions {
  /** ∂ residual ÷ ∂ parameter, residuals by rows, row-major. Left out: central differences. */
  readonly jacobian?: (parameters: Float64Array) => Float64Array;
  /** Parameters stand still when no step moves one by more than this share of its size; 1e-11 unless given. */
  readonly still?: number;
  /** At the bottom when a step promises no more than this share of the sum of squares; 1e-15 unless given. */
  readonly flat?: number;
}

const STILL = 1e-11;
const FLAT = 1e-15;
const MOST_STEPS = 200;

/**
 * Parameters that make Σ residual² least, from a first guess: Levenberg's and Marquardt's method, the steps damped in
 * the scale that each parameter has in the residuals, and solved by QR, so that a badly conditioned Jacobian is not
 * squared.
 *
 * @param residuals – at given parameters; always as many. A NaN makes the step be refused, so a model may refuse
 *   parameters outside its validity
 * @param guess – finite residuals there
 * @throws when the residuals of the guess are not finite: the caller's mistake
 * @source Marquardt, SIAM J. Appl. Math. 11 (1963) 431; scaling and gain rule as in Moré, Lecture Notes in Mathematics
 *   630 (1978) 105, and Nielsen, IMM-REP-1999-05 (from memory)
 */
export function leastSquares(
  residuals: (parameters: Float64Array) => ArrayLike<number>,
  guess: ArrayLike<number>,
  { jacobian: given, still = STILL, flat = FLAT }: LeastSquaresOptions = {},
): LeastSquares {
  const n = guess.length;
  // A parameter that comes near zero on its way is still moved by a share of what it began with.
  const size = Float64Array.from(guess, (value) => 0.01 * (Math.abs(value) || 1));
  const jacobianOf = (p: Float64Array, r: Float64Array): Matrix =>
    given ? Matrix.from1DArray(r.length, n, given(p)) : jacobianAt(residuals, p, r, size);
  let p = Float64Array.from(guess);
  let r = Float64Array.from(residuals(p));
  let sum = squares(r);
  if (!Number.isFinite(sum)) throw new Error('leastSquares: residuals of the guess are not finite');
  let jacobian = jacobianOf(p, r);
  const scale = new Float64Array(n);
  let damping = 1e-3;
  let growth = 2;
  let settled = false;
  let steps = 0;
  while (!settled && steps < MOST_STEPS) {
    steps += 1;
    for (let j = 0; j < n; j += 1) scale[j] = Math.max(scale[j], columnNorm(jacobian, j));
    const move = dampedStep(jacobian, r, scale, damping);
    const next = p.map((value, j) => value + move[j]);
    const nextR = Float64Array.from(residuals(next));
    const nextSum = squares(nextR);
    const promised = sum - promisedSum(jacobian, r, move);
    settled =
      move.every((step, j) => Math.abs(step) <= still * (Math.abs(p[j]) + still)) || promised <= flat * sum;
    if (nextSum < sum) {
      const gain = (sum - nextSum) / promised;
      damping *= Math.max(1 / 3, 1 - (2 * gain - 1) ** 3);
      growth = 2;
      p = next;
      r = nextR;
      sum = nextSum;
      jacobian = jacobianOf(p, r);
    } else {
      damping *= growth;
      growth *= 2;
    }
  }
  return { parameters: p, sumOfSquares: sum, covariance: covarianceOf(jacobian, sum), steps, settled };
}

const squares = (r: Float64Array): number => r.reduce((sum, value) => sum + value * value, 0);

function columnNorm(jacobian: Matrix, column: number): number {
  let sum = 0;
  for (let i = 0; i < jacobian.rows; i += 1) sum += jacobian.get(i, column) ** 2;
  return Math.sqrt(sum);
}

/** Central differences, each parameter moved by the cube root of the rounding error: good to about ten digits. */
function jacobianAt(
  residuals: (parameters: Float64Array) => ArrayLike<number>,
  p: Float64Array,
  r: Float64Array,
  size: Float64Array,
): Matrix {
  const jacobian = Matrix.zeros(r.length, p.length);
  for (let j = 0; j < p.length; j += 1) {
    const h = Math.cbrt(Number.EPSILON) * Math.max(Math.abs(p[j]), size[j]);
    const moved = (by: number): ArrayLike<number> =>
      residuals(p.map((value, k) => (k === j ? value + by : value)));
    const [up, down] = [moved(h), moved(-h)];
    for (let i = 0; i < r.length; i += 1) {
      // At the edge of a model's validity one side has no value: then the other side has to do.
      const slope = Number.isFinite(up[i])
        ? Number.isFinite(down[i])
          ? (up[i] - down[i]) / (2 * h)
          : (up[i] - r[i]) / h
        : (r[i] - down[i]) / h;
      jacobian.set(i, j, slope);
    }
  }
  return jacobian;
}

/** The step that makes ‖r + J·step‖² + damping·‖scale·step‖² least. */
function dampedStep(jacobian: Matrix, r: Float64Array, scale: Float64Array, damping: number): Float64Array {
  const [m, n] = [jacobian.rows, jacobian.columns];
  const rows = Matrix.zeros(m + n, n);
  rows.setSubMatrix(jacobian, 0, 0);
  for (let j = 0; j < n; j += 1) rows.set(m + j, j, Math.sqrt(damping) * (scale[j] || 1));
  const right = Matrix.zeros(m + n, 1);
  for (let i = 0; i < m; i += 1) right.set(i, 0, -r[i]);
  return Float64Array.from(new QrDecomposition(rows).solve(right).getColumn(0));
}

function promisedSum(jacobian: Matrix, r: Float64Array, move: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < r.length; i += 1) {
    let value = r[i];
    for (let j = 0; j < move.length; j += 1) value += jacobian.get(i, j) * move[j];
    sum += value * value;
  }
  return sum;
}

function covarianceOf(jacobian: Matrix, sum: number): Float64Array | null {
  const [m, n] = [jacobian.rows, jacobian.columns];
  if (m <= n) return null;
  // Each column in its own size first, or units alone would make the matrix look singular.
  const size = Array.from({ length: n }, (_, j) => columnNorm(jacobian, j) || 1);
  const scaled = jacobian.clone();
  for (let j = 0; j < n; j += 1) scaled.mulColumn(j, 1 / size[j]);
  const qr = new QrDecomposition(scaled);
  const triangle = qr.upperTriangularMatrix;
  for (let j = 0; j < n; j += 1) if (Math.abs(triangle.get(j, j)) < 1e-10) return null;
  const inverse = new QrDecomposition(triangle).solve(Matrix.eye(n));
  const covariance = new Float64Array(n * n);
  for (let i = 0; i < n; i += 1)
    for (let j = 0; j < n; j += 1) {
      let product = 0;
      for (let k = 0; k < n; k += 1) product += inverse.get(i, k) * inverse.get(j, k);
      covariance[i * n + j] = ((sum / (m - n)) * product) / (size[i] * size[j]);
    }
  return covariance;
}
