import { cornerAt, type End } from '../finding/place.ts';
import type { Spring } from '../rig/parts.ts';
import type { Setup } from '../rig/setup.ts';
import { type Column, columnOf } from './columns.ts';
import type { Draws } from './draws.ts';
import { gasLoad } from './gas-load.ts';
import { STANDARD_GRAVITY } from './gravity.ts';
import type { Weights } from './weights.ts';

/**
 * Load on the springs of one end at ride height, sampled [N], along each coil:
 *
 *     left, right = ((W ± D·track ÷ spread) ÷ 2 − G) ÷ ratio
 *
 * W sprung weight of the end, D = left − right of it, G what the gas of a shock carries (zero where it was not measured).
 *
 * Moments about the rig's length axis at a solid axle: the tyres stand at the track, the springs closer in, so a
 * difference between the sides is larger at the springs than on the scales.
 *
 * @validity stops and bushings carry nothing at ride, seal friction of shocks neither
 * @source moment balance; virtual work for the ratio
 */
export function springLoads(setup: Setup, end: End, weights: Weights, draws: Draws) {
  const { base } = setup.ends[end];
  const left = weights.sprungCorner[cornerAt(end, 'left')];
  const right = weights.sprungCorner[cornerAt(end, 'right')];
  const track = draws.of(base.track);
  const spread = draws.of(base.springSpread);
  const ratio = draws.of(base.springRatio);
  const gas = gasLoad(base, draws);
  const load = (sign: 1 | -1) =>
    columnOf(left.length, (i) => {
      const weight = (left[i] + right[i]) * STANDARD_GRAVITY;
      const difference = (left[i] - right[i]) * STANDARD_GRAVITY;
      return ((weight + (sign * difference * track[i]) / spread[i]) / 2 - gas[i]) / ratio[i];
    });
  return { left: load(1), right: load(-1) };
}

/** Mean load on a spring of this end, as measured, without what the setup adds [N, along the coil]. */
export function measuredSpringLoad(setup: Setup, end: End, draws: Draws): Column {
  const { rig } = setup;
  const left = draws.of(rig.cornerMass[cornerAt(end, 'left')]);
  const right = draws.of(rig.cornerMass[cornerAt(end, 'right')]);
  const axle = draws.of(rig[end].unsprungMass);
  const ratio = draws.of(rig[end].springRatio);
  const gas = gasLoad(rig[end], draws);
  return columnOf(
    left.length,
    (i) => (((left[i] + right[i] - axle[i]) * STANDARD_GRAVITY) / 2 - gas[i]) / ratio[i],
  );
}

/** Free length − load ÷ rate [m]; null when the free length is not known. */
export function settledLength(spring: Spring, load: Column, draws: Draws): Column | null {
  if (!spring.freeLength) return null;
  const free = draws.of(spring.freeLength);
  const rate = draws.of(spring.rate);
  return columnOf(load.length, (i) => free[i] - load[i] / rate[i]);
}
