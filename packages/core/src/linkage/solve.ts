import { factorise, substitute } from '../numerics/lu.ts';
import { type Conditions, conditionsOf, evaluate } from './conditions.ts';
import type { AxleGeometry } from './geometry.ts';
import { BUMP, COORDINATES, FREE, GIVE, MOST, ROLL, STATES } from './layout.ts';

/** Error below which a pose is called met [m]: far above rounding of metres, far below the 1e-9 that is promised. */
const MET = 1e-13;
/** With Newton's doubling of digits, more steps than that mean that there is nothing to find. */
const STEPS = 12;
/** Steps of the continuation: no farther than this at once [m, rad]. */
const STRIDE = 0.15;
/** Share of the way at which the continuation gives up. */
const SMALLEST = 1e-7;
/** Newton may not carry the axle farther than this from where it was expected [m, rad]: it would be another branch. */
const JUMP = 0.2;

/** A solver for one geometry; everything in it is written over by each call. */
export interface Solver {
  readonly conditions: Conditions;
  /** Coordinates of the last pose solved, see `layout.ts`. */
  readonly q: Float64Array;
  /** How they change with bump, and with roll, the other held. */
  readonly byBump: Float64Array;
  readonly byRoll: Float64Array;
  readonly matrix: Float64Array;
  readonly swaps: Int32Array;
  readonly side: Float64Array;
  readonly kept: Float64Array;
  /** Sign of the determinant at ride height: where it changes, links have gone over centre. */
  readonly branch: number;
  /** Newton steps so far. */
  readonly counts: { steps: number };
}

/** A solver that stands at ride height. */
export function solverOf(geometry: AxleGeometry): Solver {
  const conditions = conditionsOf(geometry);
  const solver: Solver = {
    conditions,
    q: new Float64Array(STATES),
    byBump: new Float64Array(STATES),
    byRoll: new Float64Array(STATES),
    matrix: new Float64Array(MOST * MOST),
    swaps: new Int32Array(MOST),
    side: new Float64Array(MOST),
    kept: new Float64Array(3 * STATES),
    branch: 0,
    counts: { steps: 0 },
  };
  evaluate(conditions, solver.q);
  const ready = { ...solver, branch: Math.sign(factor(solver)) };
  slopesOf(ready);
  return ready;
}

/** Factors the slopes by what the links decide; gives the determinant. */
function factor({ conditions, matrix, swaps }: Solver): number {
  const { count, slopes, share } = conditions;
  for (let row = 0; row < count; row += 1) {
    for (let k = 0; k < FREE; k += 1) matrix[row * count + k] = slopes[row * COORDINATES + k];
    if (count === MOST) matrix[row * count + FREE] = -share[row];
  }
  return factorise(matrix, count, swaps);
}

/** Writes how the pose changes with what is asked for, from the factors at the pose: exact, by the implicit function. */
function slopesOf({ conditions, matrix, swaps, side, byBump, byRoll }: Solver): void {
  const { count, slopes } = conditions;
  for (let asked = BUMP; asked <= ROLL; asked += 1) {
    const by = asked === BUMP ? byBump : byRoll;
    for (let row = 0; row < count; row += 1) side[row] = -slopes[row * COORDINATES + asked];
    substitute(matrix, count, swaps, side);
    for (let k = 0; k < FREE; k += 1) by[k] = side[k];
    by[BUMP] = asked === BUMP ? 1 : 0;
    by[ROLL] = asked === ROLL ? 1 : 0;
    by[GIVE] = count === MOST ? side[FREE] : 0;
  }
}

/** Newton from where `q` stands, its bump and roll held. Leaves `q` anywhere when it fails. */
function newton(solver: Solver): boolean {
  const { conditions, matrix, swaps, side, q, counts } = solver;
  const { count, errors } = conditions;
  let before = Number.POSITIVE_INFINITY;
  let moved = 0;
  for (let step = 0; step < STEPS; step += 1) {
    evaluate(conditions, q);
    const determinant = factor(solver);
    if (!(determinant * solver.branch > 0)) return false;
    const error = largest(errors, count);
    // Rounding may hold long rods above the mark: then the last step that no longer helps is the end.
    if (error <= MET || (error < 1e-11 && error >= before)) {
      slopesOf(solver);
      return true;
    }
    before = error;
    for (let row = 0; row < count; row += 1) side[row] = -errors[row];
    substitute(matrix, count, swaps, side);
    counts.steps += 1;
    let size = 0;
    for (let k = 0; k < FREE; k += 1) {
      q[k] += side[k];
      size = Math.max(size, Math.abs(side[k]));
    }
    if (count === MOST) q[GIVE] += side[FREE];
    moved += size;
    if (!(moved < JUMP)) return false;
  }
  return false;
}

function largest(errors: Float64Array, count: number): number {
  let most = 0;
  for (let row = 0; row < count; row += 1) most = Math.max(most, Math.abs(errors[row]));
  return most;
}

/**
 * Follows the axle from the pose where the solver stands to another, in strides that are halved until Newton meets the
 * conditions on the same branch.
 *
 * @returns the share of the way that was made: 1 when the pose was reached; else the solver stands at the last pose
 * that was
 */
export function follow(solver: Solver, bump: number, roll: number): number {
  const { q, byBump, byRoll, kept } = solver;
  const fromBump = q[BUMP];
  const fromRoll = q[ROLL];
  const far = Math.max(Math.abs(bump - fromBump), Math.abs(roll - fromRoll));
  let stride = Math.min(1, STRIDE / far);
  let done = 0;
  while (done < 1) {
    const share = Math.min(stride, 1 - done);
    const next = share === 1 - done ? 1 : done + share;
    remember(solver, kept);
    const bumpStep = fromBump + next * (bump - fromBump) - q[BUMP];
    const rollStep = fromRoll + next * (roll - fromRoll) - q[ROLL];
    for (let k = 0; k < STATES; k += 1) q[k] += bumpStep * byBump[k] + rollStep * byRoll[k];
    q[BUMP] = next === 1 ? bump : fromBump + next * (bump - fromBump);
    q[ROLL] = next === 1 ? roll : fromRoll + next * (roll - fromRoll);
    if (newton(solver)) {
      done = next;
      stride = Math.min(2 * stride, STRIDE / far);
      continue;
    }
    restore(solver, kept);
    stride = share / 2;
    // So written, a pose asked for as not-a-number ends too.
    if (!(stride >= SMALLEST)) {
      evaluate(solver.conditions, q);
      return done;
    }
  }
  return 1;
}

/** Puts the solver back to a pose that it gave before: coordinates and slopes, as `remember` copied them. */
export function restore(solver: Solver, remembered: Float64Array): void {
  solver.q.set(remembered.subarray(0, STATES));
  solver.byBump.set(remembered.subarray(STATES, 2 * STATES));
  solver.byRoll.set(remembered.subarray(2 * STATES, 3 * STATES));
}

/** Copies where the solver stands. */
export function remember({ q, byBump, byRoll }: Solver, into: Float64Array): void {
  into.set(q);
  into.set(byBump, STATES);
  into.set(byRoll, 2 * STATES);
}
