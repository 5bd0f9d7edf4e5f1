import type { MaxwellBranch } from '../elements/maxwell.ts';
import type { FrictionBranch } from '../elements/stop-friction.ts';
import { type MonotoneCubic, monotoneCubic } from '../numerics/monotone-cubic.ts';
import { type PiecewiseLinear, piecewiseLinear } from '../numerics/piecewise-linear.ts';
import * as at from './layout.ts';
import type { RideModel } from './model.ts';

/** One axle made ready for the loop: numbers packed by `layout.ts`, tables built, ratios folded in. */
export interface PackedAxle {
  readonly numbers: Float64Array;
  readonly shock: PiecewiseLinear;
  readonly stop: MonotoneCubic;
  readonly friction: FrictionBranch | null;
  readonly maxwell: MaxwellBranch | null;
}

/**
 * The static loads are the model's own: each spring carries its share of the sprung weight less what the gas of the
 * shock carries, each tyre that share and half of the axle, so that all coordinates zero is rest on flat ground.
 */
export function packAxle(model: RideModel, end: 'front' | 'rear'): PackedAxle {
  const { mass, toFrontAxle: a, toRearAxle: b } = model.sprung;
  const axle = model.axles[end];
  const isFront = end === 'front';
  const load = (mass * model.gravity * (isFront ? b : a)) / (a + b) / 2;
  const { gas, ends } = axle.shock;
  const gasForce = axle.shock.ratio * (gas?.force ?? 0);
  const n = new Float64Array(at.AXLE_CONSTANTS);
  n[at.X] = isFront ? a : -b;
  n[at.BEHIND_FRONT] = isFront ? 0 : a + b;
  n[at.PER_MASS] = 1 / axle.mass;
  n[at.PER_INERTIA] = 1 / axle.rollInertia;
  n[at.HALF_TRACK] = axle.halfTrack;
  n[at.SPRING_STATION] = axle.spring.halfStation;
  n[at.SPRING_RATE] = axle.spring.rate * axle.spring.ratio ** 2;
  n[at.PRELOAD] = load - gasForce;
  n[at.SHOCK_STATION] = axle.shock.halfStation;
  n[at.SHOCK_RATIO] = axle.shock.ratio;
  n[at.STOP_STATION] = axle.stop.halfStation;
  n[at.STOP_RATIO] = axle.stop.ratio;
  n[at.STOP_GAP] = axle.stop.gap.left;
  n[at.STOP_GAP + 1] = axle.stop.gap.right;
  n[at.METAL_AT] = axle.metal.atCrush.left;
  n[at.METAL_AT + 1] = axle.metal.atCrush.right;
  n[at.STOP_RATE_FACTOR] = axle.stop.rateFactor;
  n[at.METAL_RATE] = axle.metal.rate;
  n[at.DROOP_AT] = axle.droopLimit.at;
  n[at.DROOP_RATE] = axle.droopLimit.rate;
  n[at.DROOP_RATE_FACTOR] = axle.droopLimit.rateFactor;
  n[at.TYRE_LOAD] = load + (axle.mass * model.gravity) / 2;
  n[at.TYRE_RATE] = axle.tyre.rate;
  n[at.TYRE_DAMPING] = axle.tyre.damping;
  n[at.GAS_FORCE] = gasForce;
  n[at.GAS_RATE] = axle.shock.ratio ** 2 * (gas?.rate ?? 0);
  n[at.ANTI_ROLL_RATE] = axle.antiRollRate ?? 0;
  n[at.OPEN_AT] = ends?.openAt ?? Infinity;
  n[at.CLOSED_AT] = ends?.closedAt ?? Infinity;
  n[at.SHOCK_END_RATE] = ends?.rate ?? 0;
  n[at.OIL_FACTOR] = axle.stop.oilFactor ?? 0;
  return {
    numbers: n,
    shock: piecewiseLinear(axle.shock.speed, axle.shock.force),
    stop: monotoneCubic(axle.stop.crush, axle.stop.force),
    friction: axle.stop.friction ?? null,
    maxwell: axle.stop.maxwell ?? null,
  };
}
