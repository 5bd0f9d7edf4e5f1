import { ROLL, WIND, YAW } from './layout.ts';

/**
 * Rotation of the axle into the body's frame, Rz(yaw)·Rx(roll)·Ry(wind).
 *
 * @param q – coordinates, see `layout.ts`
 * @param turn – 3×3 row-major, written
 */
export function turnInto(q: Float64Array, turn: Float64Array): void {
  const cy = Math.cos(q[YAW]);
  const sy = Math.sin(q[YAW]);
  const cr = Math.cos(q[ROLL]);
  const sr = Math.sin(q[ROLL]);
  const cw = Math.cos(q[WIND]);
  const sw = Math.sin(q[WIND]);
  turn[0] = cy * cw - sy * sr * sw;
  turn[1] = -sy * cr;
  turn[2] = cy * sw + sy * sr * cw;
  turn[3] = sy * cw + cy * sr * sw;
  turn[4] = cy * cr;
  turn[5] = sy * sw - cy * sr * cw;
  turn[6] = -cr * sw;
  turn[7] = sr;
  turn[8] = cr * cw;
}
