import { symmetricEigen } from '../numerics/symmetric-eigen.ts';
import { evaluate } from './conditions.ts';
import type { Unreachable } from './geometry.ts';
import { BUMP, COORDINATES, FREE, ROLL, STATES } from './layout.ts';
import type { Solver } from './solve.ts';

/** Lever by which a turn is counted as a length [m]: about half the spread of links on an axle. */
export const LEVER = 0.5;
/** A link is named when it has at least this share in what jams, against the largest. */
const NAMED = 0.3;
/** Rods whose grip on all that is free is below this stand square to it: they have run out of length. */
const SQUARE = 0.3;
/** Steps and first damping of the least squares behind a gap. */
const STEPS = 60;
const DAMPING = 1e-3;

/**
 * Says which links keep a pose from being reached; the solver stands at the last pose that could be.
 *
 * There the forces that the links can hold against each other no longer fix the axle: one combination of them, the
 * left null vector of the slopes, holds nothing. The links in it are to blame.
 */
export function blameAt(solver: Solver, bump: number, roll: number): Unreachable {
  const { conditions, q } = solver;
  const { geometry, count } = conditions;
  evaluate(conditions, q);
  const rows = freeRows(solver);
  const jam = symmetricEigen(rows.map((a) => rows.map((b) => dot(a, b)))).vectors[count === FREE ? 0 : 1];
  const parts = geometry.links
    .map(({ id }, row) => ({ id, row, part: Math.abs(jam[row]) }))
    .sort((a, b) => b.part - a.part);
  const clamps = conditions.arms === null ? 0 : Math.abs(jam[FREE - 1]);
  const most = Math.max(parts[0].part, clamps);
  const named = parts.filter(({ part }) => part >= NAMED * most);
  const blamed = named.length > 0 ? named : parts.slice(0, 2);
  const square = blamed.every(({ row }) => Math.sqrt(dot(rows[row], rows[row])) < SQUARE);
  return {
    why: square || named.length === 1 ? 'short' : 'over-centre',
    links: blamed.map(({ id }) => id),
    bump: q[BUMP],
    roll: q[ROLL],
    gap: gapAt(solver, bump, roll),
  };
}

/** Slopes by what is free, turns counted at `LEVER`. */
export function freeRows({ conditions: { count, slopes } }: Solver): number[][] {
  return Array.from({ length: count }, (_, row) =>
    Array.from({ length: FREE }, (_, k) => slopes[row * COORDINATES + k] / (k < 2 ? 1 : LEVER)),
  );
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, entry, k) => sum + entry * b[k], 0);

/**
 * The largest condition error that is left where the links come nearest to the pose, in least squares.
 *
 * @source Levenberg's damped least squares, with exact slopes
 */
function gapAt(solver: Solver, bump: number, roll: number): number {
  const { conditions } = solver;
  const { count, errors } = conditions;
  let q = new Float64Array(STATES);
  q.set(solver.q);
  q[BUMP] = bump;
  q[ROLL] = roll;
  let damping = DAMPING;
  evaluate(conditions, q);
  let squares = sumOfSquares(errors);
  for (let step = 0; step < STEPS; step += 1) {
    evaluate(conditions, q);
    const rows = freeRows(solver);
    const columns = Array.from({ length: FREE }, (_, k) => rows.map((row) => row[k]));
    const normal = symmetricEigen(columns.map((a) => columns.map((b) => dot(a, b))));
    const pull = columns.map((column) => -dot(column, [...errors]));
    const moved = new Float64Array(q);
    normal.values.forEach((value, i) => {
      const along = dot(normal.vectors[i], pull) / (Math.max(value, 0) + damping);
      for (let k = 0; k < FREE; k += 1) moved[k] += (normal.vectors[i][k] * along) / (k < 2 ? 1 : LEVER);
    });
    evaluate(conditions, moved);
    const now = sumOfSquares(errors);
    if (now < squares) {
      q = moved;
      squares = now;
      damping /= 4;
    } else damping *= 8;
  }
  evaluate(conditions, q);
  return errors.subarray(0, count).reduce((most, error) => Math.max(most, Math.abs(error)), 0);
}

const sumOfSquares = (errors: Float64Array): number => errors.reduce((sum, error) => sum + error * error, 0);
