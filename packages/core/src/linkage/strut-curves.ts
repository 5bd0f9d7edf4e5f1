import type { StrutCurves } from './curves-result.ts';
import { type AxleGeometry, STRUT_IDS, type StrutId } from './geometry.ts';
import { BUMP, X, Y } from './layout.ts';
import { speedAlong } from './motion.ts';
import type { Solver } from './solve.ts';

/** A strut that is being followed: its points from the axle's centre, and the curves that are filled. */
export interface FollowedStrut {
  readonly id: StrutId;
  readonly isStop: boolean;
  /** Joint on the axle, from its centre; then the axle's centre at ride height, from the joint on the body. */
  readonly points: Float64Array;
  readonly curves: { readonly [K in keyof StrutCurves]: Float64Array };
}

/** The struts of a geometry with room for so many poses. */
export function followedStruts({ struts, centre }: AxleGeometry, poses: number): readonly FollowedStrut[] {
  return STRUT_IDS.flatMap((id) => {
    const strut = struts[id];
    if (strut === undefined) return [];
    const points = new Float64Array(6);
    for (let k = 0; k < 3; k += 1) {
      points[k] = strut.axle[k] - centre[k];
      points[3 + k] = centre[k] - strut.body[k];
    }
    const curve = () => new Float64Array(poses).fill(Number.NaN);
    const curves = {
      length: curve(),
      byBump: curve(),
      byRoll: curve(),
      lean: curve(),
      ahead: curve(),
      left: curve(),
    };
    return [{ id, isStop: id.startsWith('stop'), points, curves }];
  });
}

/**
 * Length of a strut and how it closes, at the pose where the solver stands.
 *
 *     compression′ = −d/|d|·(speed + spin × p),   d from the body's point to the axle's
 *
 * A stop is pressed along the body's vertical, wherever its tip lands on the pad.
 */
export function measureStrut(
  { q, conditions: { turn } }: Solver,
  { points, isStop, curves }: FollowedStrut,
  heave: Float64Array,
  roll: Float64Array,
  at: number,
): void {
  const px = turn[0] * points[0] + turn[1] * points[1] + turn[2] * points[2];
  const py = turn[3] * points[0] + turn[4] * points[1] + turn[5] * points[2];
  const pz = turn[6] * points[0] + turn[7] * points[1] + turn[8] * points[2];
  const dx = points[3] + q[X] + px;
  const dy = points[4] + q[Y] + py;
  const dz = points[5] + q[BUMP] + pz;
  const size = Math.sqrt(dx * dx + dy * dy + dz * dz);
  // Whether the axle's point lies below the body's, at ride height.
  const up = points[2] + points[5] <= 0 ? 1 : -1;
  curves.ahead[at] = dx;
  curves.left[at] = dy;
  curves.lean[at] = Math.atan2(Math.sqrt(dx * dx + dy * dy), Math.abs(dz));
  if (isStop) {
    curves.length[at] = -up * dz;
    curves.byBump[at] = speedAlong(heave, px, py, pz, 0, 0, up);
    curves.byRoll[at] = speedAlong(roll, px, py, pz, 0, 0, up);
  } else {
    curves.length[at] = size;
    curves.byBump[at] = -speedAlong(heave, px, py, pz, dx / size, dy / size, dz / size);
    curves.byRoll[at] = -speedAlong(roll, px, py, pz, dx / size, dy / size, dz / size);
  }
}
