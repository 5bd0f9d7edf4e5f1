import { blameAt } from './blame.ts';
import type { AxleGeometry, BushGive, PoseResult } from './geometry.ts';
import { BUMP, GIVE, STATES, X, Y } from './layout.ts';
import { follow, remember, restore, type Solver, solverOf } from './solve.ts';

/**
 * Where the links let the axle stand at a bump and a roll, rods rigid and joints without play.
 *
 *     |centre + shift + R·a − b| = |a₀ − b|   for each rod
 *
 * Four rods are met exactly. Five rods (four links and a Panhard) are one too many: their bushes, taken as equal,
 * share one give in the proportions in which they could lock a force in at ride height; `gives` says how much each
 * takes. Radius arms are rods from clamp to body joint whose clamps turn alike and opposite; `gives` holds that turn.
 * A leaf pair is guided: straight up, turning about its own middle.
 *
 * @param bump – vertical travel of the hub-line centre against the body [m], up positive
 * @param roll – of the axle against the body [rad], left side up positive, below a quarter turn; the roll of the body
 * over the axle, right side down positive, is its negative
 * @returns the pose and what the bushes give; or which links stop it, and where
 * @invariant residual ≤ 1e-9 m; the pose lies on the branch of ride height
 * @validity geometry without problems (`geometryProblems`); bushes give nothing but what is said above
 * @source rigid-body kinematics; Newton's method with exact slopes, followed from ride height
 */
export function poseOf(geometry: AxleGeometry, bump: number, roll: number): PoseResult {
  return posesFrom(geometry)(bump, roll);
}

/** `poseOf` for many poses of one geometry: its conditions are made once, each pose is followed from ride height. */
export function posesFrom(geometry: AxleGeometry): (bump: number, roll: number) => PoseResult {
  const solver = solverOf(geometry);
  const ride = new Float64Array(3 * STATES);
  remember(solver, ride);
  return (bump, roll) => {
    restore(solver, ride);
    if (follow(solver, bump, roll) < 1)
      return { status: 'unreachable', unreachable: blameAt(solver, bump, roll) };
    const { q, conditions } = solver;
    return {
      status: 'reached',
      pose: {
        shift: [q[X], q[Y], q[BUMP]],
        rotation: [...conditions.turn],
        residual: conditions.errors.reduce((most, error) => Math.max(most, Math.abs(error)), 0),
      },
      gives: givesOf(solver),
    };
  };
}

/** What each link's bushes give at the pose where the solver stands, in the order of the geometry. */
function givesOf({ q, conditions }: Solver): BushGive[] {
  const { share, clamps, geometry } = conditions;
  return geometry.links.map(({ id }, i) => ({
    link: id,
    length: share.length === 0 ? 0 : share[i] * q[GIVE],
    turn: i < clamps.length ? clamps[i] : 0,
  }));
}
