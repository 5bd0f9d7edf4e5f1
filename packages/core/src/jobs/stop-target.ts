import { powerCurve, type StopCurve } from './stop-drive.ts';
import type { StopNeed } from './stop-need.ts';

/**
 * The curve in the middle of those of one steepness that do, as a target for a stop that is made: force at the end of
 * the room is the geometric mean of the least and the most.
 *
 * @returns null where no curve of that steepness does
 * @validity crush counts from where the present stop touches: for a stop that touches there too
 */
export function curveInBand({ room, families }: StopNeed, power: number): StopCurve | null {
  const range = families.find((family) => family.power === power)?.range ?? null;
  return range === null ? null : powerCurve(room, power, Math.sqrt(range.least * range.most));
}
