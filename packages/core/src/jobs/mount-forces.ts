import { CORNERS, cornerAt, type End, type Side } from '../finding/place.ts';
import { cubicBySlopes, cubicValue } from '../numerics/monotone-cubic.ts';
import { linearValue, piecewiseLinear } from '../numerics/piecewise-linear.ts';
import type { ElementPath, RideModel } from '../ride/model.ts';
import type { RideHistory } from '../ride/result.ts';
import type { MountName } from '../rig/bracket.ts';

/** Force on each mount of a corner over time, pressing it positive [N]; `metal` is what passes beside the stop. */
export type MountForces = Readonly<Record<MountName | 'metal', Float64Array>>;

/**
 * What a ride's history says of the forces on the mounts of one corner. Stop and metal as the ride had them; coil and shock
 * by their own laws at the travel of the history, the shaft's speed from one sample to the next.
 *
 * @validity a history of 500 samples a second or more; the shock's own ends and the strap are not in it
 */
export function mountForces(model: RideModel, history: RideHistory, end: End, side: Side): MountForces {
  const { count, rate } = history;
  const axle = model.axles[end];
  const corner = CORNERS.indexOf(cornerAt(end, side));
  const sign = side === 'left' ? 1 : -1;
  const closing = (station: number) => {
    const x = end === 'front' ? model.sprung.toFrontAxle : -model.sprung.toRearAxle;
    const first = end === 'front' ? 3 : 5;
    return Float64Array.from({ length: count }, (_, k) => {
      const at = (i: number): number => history.coordinates[7 * k + i];
      const middle = at(first) - (at(0) - x * at(1));
      return middle + station * sign * (at(first + 1) - at(2));
    });
  };
  const { spring, shock, stop, metal } = axle;
  const coil = alongPath(closing(spring.halfStation), spring);
  const preload = springLoad(model, end) / spring.ratio;
  const shaft = alongPath(closing(shock.halfStation), shock);
  const table = piecewiseLinear(shock.speed, shock.force);
  const gas = shock.gas ?? { force: 0, rate: 0 };
  const beside = (k: number): number =>
    metal.rate * Math.max(0, history.crush[4 * k + corner] - metal.atCrush[side]) * stop.ratio;
  return {
    spring: coil.map((compression) => Math.max(0, preload + spring.rate * compression)),
    shock: shaft.map((compression, k) => {
      const [before, after] = [Math.max(0, k - 1), Math.min(count - 1, k + 1)];
      const speed = after > before ? ((shaft[after] - shaft[before]) / (after - before)) * rate : 0;
      return linearValue(table, speed) + gas.force + gas.rate * compression;
    }),
    stop: Float64Array.from({ length: count }, (_, k) =>
      Math.max(0, history.stopForce[4 * k + corner] - beside(k)),
    ),
    metal: Float64Array.from({ length: count }, (_, k) => beside(k)),
  };
}

/** What one spring carries at rest, in axle terms [N]: as the ride has it. */
function springLoad({ sprung, axles, gravity }: RideModel, end: End): number {
  const { mass, toFrontAxle: a, toRearAxle: b } = sprung;
  const load = (mass * gravity * (end === 'front' ? b : a)) / (a + b) / 2;
  const { ratio, gas } = axles[end].shock;
  return load - ratio * (gas?.force ?? 0);
}

/** Compression of an element from ride height at axle travels [m]. */
function alongPath(
  travel: Float64Array,
  { ratio, path }: { readonly ratio: number; readonly path?: ElementPath },
): Float64Array {
  if (path === undefined) return travel.map((each) => ratio * each);
  const cubic = cubicBySlopes(path.travel, path.compression, path.ratio);
  return travel.map((each) => cubicValue(cubic, each));
}
