import type { AxleModel, RideModel } from './model.ts';

/** A fourth-order step stays stable up to 2.78 ÷ rate for decay and 2.83 ÷ rate for swing; a little less. */
const STABLE = 2;

/**
 * Longest step that lets a rig near rest come to rest [s]. Its motion there may be smaller than any error that counts, so
 * error control does not see an unstable step, and what stays is a hum of rounding. Each axle moves against a body held
 * still, in heave and in roll, by its springs, tyres and the steepest of its shocks around zero speed.
 * @source stability of the fourth-order step: Hairer and Wanner, Solving Ordinary Differential Equations II, IV.2 (from memory)
 */
export function longestStableStep({ axles }: RideModel): number {
  return STABLE / Math.max(fastestOf(axles.front), fastestOf(axles.rear));
}

/** Fastest rate of decay or swing of an axle [1/s]. */
function fastestOf({ mass, rollInertia, halfTrack, spring, shock, tyre }: AxleModel): number {
  const springRate = spring.rate * spring.ratio ** 2;
  const damping = dampingAtRest(shock) * shock.ratio ** 2;
  const heave = fastest((2 * (springRate + tyre.rate)) / mass, (2 * (damping + tyre.damping)) / mass);
  const roll = fastest(
    (2 * (springRate * spring.halfStation ** 2 + tyre.rate * halfTrack ** 2)) / rollInertia,
    (2 * (damping * shock.halfStation ** 2 + tyre.damping * halfTrack ** 2)) / rollInertia,
  );
  return Math.max(heave, roll);
}

/** Size of the larger root of λ² + damping·λ + rate = 0. */
function fastest(rate: number, damping: number): number {
  const over = (damping * damping) / 4 - rate;
  return over > 0 ? damping / 2 + Math.sqrt(over) : Math.sqrt(rate);
}

/** Steepest slope of the shock's table next to zero speed [N·s/m]. */
function dampingAtRest({ speed, force }: AxleModel['shock']): number {
  let steepest = 0;
  for (let k = 1; k < speed.length; k += 1) {
    if (speed[k - 1] > 0 || speed[k] < 0) continue;
    steepest = Math.max(steepest, (force[k] - force[k - 1]) / (speed[k] - speed[k - 1]));
  }
  return steepest;
}
