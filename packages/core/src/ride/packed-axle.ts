import type { Side } from '../finding/place.ts';
import { cubicBySlopes, cubicValue, type MonotoneCubic, monotoneCubic } from '../numerics/monotone-cubic.ts';
import { type PiecewiseLinear, piecewiseLinear } from '../numerics/piecewise-linear.ts';
import * as at from './layout.ts';
import type { i32, Memory } from './memory.ts';
import type { AxleModel, ElementPath, RideModel } from './model.ts';

/** Tables of an axle, made ready. */
export interface AxleTables {
  readonly shock: PiecewiseLinear;
  readonly stop: MonotoneCubic;
  /** Of spring, shock and stop, over their ratio at ride height; null where that holds over all travel. */
  readonly paths: readonly (MonotoneCubic | null)[];
}

export function axleTables({ axles }: RideModel, end: 'front' | 'rear'): AxleTables {
  const { spring, shock, stop } = axles[end];
  return {
    shock: piecewiseLinear(shock.speed, shock.force),
    stop: monotoneCubic(stop.crush, stop.force),
    paths: [spring, shock, stop].map(({ path, ratio }) => (path ? overRatio(path, ratio) : null)),
  };
}

/**
 * Writes the constants of an axle at `c`, ratios folded in; places of its tables are written by whoever places them.
 *
 * The static loads are the model's own: each spring carries its share of the sprung weight less what the gas of the
 * shock carries, each tyre that share and half of the axle, so that all coordinates zero is rest on flat ground.
 */
export function writeAxle(m: Memory, c: i32, model: RideModel, end: 'front' | 'rear'): void {
  const { mass, toFrontAxle: a, toRearAxle: b } = model.sprung;
  const axle = model.axles[end];
  const isFront = end === 'front';
  const load = (mass * model.gravity * (isFront ? b : a)) / (a + b) / 2;
  const { gas, ends } = axle.shock;
  const { friction, maxwell } = axle.stop;
  const gasForce = axle.shock.ratio * (gas?.force ?? 0);
  m[c + at.X] = isFront ? a : -b;
  m[c + at.BEHIND_FRONT] = isFront ? 0 : a + b;
  m[c + at.PER_MASS] = 1 / axle.mass;
  m[c + at.PER_INERTIA] = 1 / axle.rollInertia;
  m[c + at.HALF_TRACK] = axle.halfTrack;
  m[c + at.SPRING_STATION] = axle.spring.halfStation;
  m[c + at.SPRING_RATE] = axle.spring.rate * axle.spring.ratio ** 2;
  m[c + at.PRELOAD] = load - gasForce;
  m[c + at.SHOCK_STATION] = axle.shock.halfStation;
  m[c + at.SHOCK_RATIO] = axle.shock.ratio;
  m[c + at.STOP_STATION] = axle.stop.halfStation;
  m[c + at.STOP_RATIO] = axle.stop.ratio;
  m[c + at.STOP_GAP] = axle.stop.gap.left;
  m[c + at.STOP_GAP + 1] = axle.stop.gap.right;
  m[c + at.METAL_AT] = axle.metal.atCrush.left;
  m[c + at.METAL_AT + 1] = axle.metal.atCrush.right;
  m[c + at.STOP_RATE_FACTOR] = axle.stop.rateFactor;
  m[c + at.METAL_RATE] = axle.metal.rate;
  m[c + at.DROOP_AT] = axle.droopLimit.at;
  m[c + at.DROOP_RATE] = axle.droopLimit.rate;
  m[c + at.DROOP_RATE_FACTOR] = axle.droopLimit.rateFactor;
  m[c + at.TYRE_LOAD] = load + (axle.mass * model.gravity) / 2;
  m[c + at.TYRE_RATE] = axle.tyre.rate;
  m[c + at.TYRE_DAMPING] = axle.tyre.damping;
  m[c + at.GAS_FORCE] = gasForce;
  m[c + at.GAS_RATE] = axle.shock.ratio ** 2 * (gas?.rate ?? 0);
  m[c + at.ANTI_ROLL_RATE] = axle.antiRollRate ?? 0;
  m[c + at.OPEN_AT] = ends?.openAt ?? Infinity;
  m[c + at.CLOSED_AT] = ends?.closedAt ?? Infinity;
  m[c + at.SHOCK_END_RATE] = ends?.rate ?? 0;
  m[c + at.OIL_FACTOR] = axle.stop.oilFactor ?? 0;
  m[c + at.FRICTION_LIMIT] = friction?.limit ?? 0;
  m[c + at.FRICTION_TRAVEL] = friction?.halfTravel ?? 1;
  m[c + at.MAXWELL_RATE] = maxwell?.rate ?? 0;
  m[c + at.MAXWELL_DAMPING] = maxwell?.damping ?? 1;
  m[c + at.HAS_PATHS] = axle.spring.path || axle.shock.path || axle.stop.path ? 1 : 0;
  m[c + at.METAL_TRAVEL] = travelToMetal(axle, 'left');
  m[c + at.METAL_TRAVEL + 1] = travelToMetal(axle, 'right');
}

/** A path over the ratio at ride height: axle travel in, axle travel of an element with that ratio out. */
function overRatio({ travel, compression, ratio }: ElementPath, atRide: number): MonotoneCubic {
  return cubicBySlopes(
    travel,
    compression.map((closed) => closed / atRide),
    ratio.map((slope) => slope / atRide),
  );
}

/** Axle travel at which the metal of a side is met [m]. */
function travelToMetal({ stop, metal }: AxleModel, side: Side): number {
  const along = (stop.gap[side] + metal.atCrush[side]) / stop.ratio;
  if (!stop.path || along === Infinity) return along;
  // The path rises, so its inverse lies between the ends; beyond them it goes straight on.
  const path = overRatio(stop.path, stop.ratio);
  let low = Math.min(path.x[0], 2 * along, -1);
  let high = Math.max(path.x[path.x.length - 1], 2 * along, 1);
  for (let k = 0; k < 60; k += 1) {
    const middle = (low + high) / 2;
    if (cubicValue(path, middle) < along) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
