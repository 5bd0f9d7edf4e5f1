import { BUMP, ROLL, WIND, X, Y, YAW } from './layout.ts';
import type { Solver } from './solve.ts';

/** A motion of the axle at one instant: speed of its centre, then turning speed, in the body's frame. */
export const SPEED = 0;
export const SPIN = 3;
export const MOTION = 6;

/**
 * The motion at the pose where the solver stands when one coordinate that is asked for changes by one.
 *
 *     spin = yaw′·ẑ + roll′·(cos yaw, sin yaw, 0) + wind′·(hub line)
 *
 * @param by – slopes of the coordinates by that coordinate (`byBump` or `byRoll`)
 */
export function motionInto(
  { q, conditions: { turn } }: Solver,
  by: Float64Array,
  motion: Float64Array,
): void {
  motion[SPEED] = by[X];
  motion[SPEED + 1] = by[Y];
  motion[SPEED + 2] = by[BUMP];
  motion[SPIN] = by[ROLL] * Math.cos(q[YAW]) + by[WIND] * turn[1];
  motion[SPIN + 1] = by[ROLL] * Math.sin(q[YAW]) + by[WIND] * turn[4];
  motion[SPIN + 2] = by[YAW] + by[WIND] * turn[7];
}

/** How fast a point at (px, py, pz) from the axle's centre goes along the direction (dx, dy, dz). */
export function speedAlong(
  motion: Float64Array,
  px: number,
  py: number,
  pz: number,
  dx: number,
  dy: number,
  dz: number,
): number {
  return (
    dx * (motion[0] + motion[4] * pz - motion[5] * py) +
    dy * (motion[1] + motion[5] * px - motion[3] * pz) +
    dz * (motion[2] + motion[3] * py - motion[4] * px)
  );
}
