import type { DragLink } from './curves-result.ts';
import { BUMP, X, Y } from './layout.ts';
import type { Solver } from './solve.ts';

const STEPS = 20;
const MET = 1e-13;

/**
 * Where a drag link of fixed length points the wheels at the pose where the solver stands, steering box held.
 *
 *     |centre + shift + R·(k + arm·(cos δ, sin δ, 0)) − b| = L
 *
 * k is the steering axis at the height of the ball; δ the turn of the knuckle. The wheels point along R·(cos δ, sin δ, 0).
 *
 * @param from – turn of the knuckle at a pose near by [rad]
 * @returns turn of the knuckle [rad]; not a number where the drag link cannot reach
 * @validity steering axis square to the hub line and upright at ride height; tie rod and joints without play
 */
export function knuckleTurn(solver: Solver, { body, axle, arm }: DragLink, from: number): number {
  const {
    q,
    conditions: { turn, geometry },
  } = solver;
  const c = geometry.centre;
  const kx = axle[0] - arm - c[0];
  const ky = axle[1] - c[1];
  const kz = axle[2] - c[2];
  const gx = c[0] - body[0] + q[X];
  const gy = c[1] - body[1] + q[Y];
  const gz = c[2] - body[2] + q[BUMP];
  const length = Math.hypot(axle[0] - body[0], axle[1] - body[1], axle[2] - body[2]);
  let turned = from;
  for (let step = 0; step < STEPS; step += 1) {
    const bx = kx + arm * Math.cos(turned);
    const by = ky + arm * Math.sin(turned);
    const dx = gx + turn[0] * bx + turn[1] * by + turn[2] * kz;
    const dy = gy + turn[3] * bx + turn[4] * by + turn[5] * kz;
    const dz = gz + turn[6] * bx + turn[7] * by + turn[8] * kz;
    const size = Math.sqrt(dx * dx + dy * dy + dz * dz);
    const error = size - length;
    if (Math.abs(error) < MET) return turned;
    const tx = -arm * Math.sin(turned);
    const ty = arm * Math.cos(turned);
    const slope =
      (dx * (turn[0] * tx + turn[1] * ty) +
        dy * (turn[3] * tx + turn[4] * ty) +
        dz * (turn[6] * tx + turn[7] * ty)) /
      size;
    const change = error / slope;
    if (!(Math.abs(change) < 1)) return Number.NaN;
    turned -= change;
    if (Math.abs(change) < 1e-14) return turned;
  }
  return Number.NaN;
}

/** Heading of a wheel whose knuckle is turned so, seen from above [rad], to the left positive. */
export function headingOf({ conditions: { turn } }: Solver, turned: number): number {
  const cosine = Math.cos(turned);
  const sine = Math.sin(turned);
  return Math.atan2(turn[3] * cosine + turn[4] * sine, turn[0] * cosine + turn[1] * sine);
}
