import { linearValue, type PiecewiseLinear } from '../numerics/piecewise-linear.ts';

/**
 * Shock absorber as measured: force at some speeds, straight lines between, end slopes carried on.
 *
 * @param table – force [N] against shock speed [m/s], compression positive; passes through the third and first quadrants only
 * @param speed – closing speed of the shock [m/s]
 * @invariant dissipates where the table does: force·speed ≥ 0
 * @validity within the measured speeds; beyond them the line is a guess and a run says how fast the shock went.
 *   Gas force, friction, heat and cavitation are not in it.
 * @source common practice for dynamometer data, no source
 */
export function shockForce(table: PiecewiseLinear, speed: number): number {
  return linearValue(table, speed);
}
