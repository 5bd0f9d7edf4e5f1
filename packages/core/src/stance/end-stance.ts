import type { End } from '../finding/place.ts';
import type { ShockSetting } from '../rig/parts.ts';
import type { Setup } from '../rig/setup.ts';
import { type Column, columnOf, figureOf } from './columns.ts';
import type { Draws } from './draws.ts';
import { dampingRatio, undampedModes } from './modes.ts';
import type { EndStance } from './result.ts';
import { settledLength, springLoads } from './springs.ts';
import { tyreRate } from './tyre-rate.ts';
import type { Weights } from './weights.ts';

/** Springs and modes of one end, all with tolerance. */
export function endStance(setup: Setup, end: End, weights: Weights, draws: Draws): EndStance {
  const { base, spring } = setup.ends[end];
  const length = draws.trials + 1;
  const loads = springLoads(setup, end, weights, draws);
  const rate = draws.of(spring.rate);
  const ratio = draws.of(base.springRatio);
  const mean = columnOf(length, (i) => (loads.left[i] + loads.right[i]) / 2);
  const settled = settledLength(spring, mean, draws);
  const { ride, hop } = modeColumns(setup, end, weights, draws);
  const { compression, rebound } = dampingColumns(setup, end, weights, draws);
  return {
    springLoad: { left: figureOf('force', loads.left), right: figureOf('force', loads.right) },
    settledDeflection: figureOf(
      'length',
      columnOf(length, (i) => mean[i] / rate[i]),
    ),
    settledLength: settled && figureOf('length', settled),
    rateAtAxle: figureOf(
      'rate',
      columnOf(length, (i) => rate[i] * ratio[i] * ratio[i]),
    ),
    rideFrequency: figureOf('frequency', ride),
    hopFrequency: figureOf('frequency', hop),
    dampingRatio: { compression: figureOf('ratio', compression), rebound: figureOf('ratio', rebound) },
  };
}

/** Rate of both springs of an end at the axle, sampled [N/m]. */
function bothSprings(setup: Setup, end: End, draws: Draws): Column {
  const { base, spring } = setup.ends[end];
  const rate = draws.of(spring.rate);
  const ratio = draws.of(base.springRatio);
  return columnOf(rate.length, (i) => 2 * rate[i] * ratio[i] * ratio[i]);
}

/** Ride and hop frequency of one end, sampled [Hz]. */
export function modeColumns(setup: Setup, end: End, weights: Weights, draws: Draws) {
  const sprung = weights.sprungEnd[end];
  const unsprung = draws.of(setup.ends[end].base.unsprungMass);
  const tyre = tyreRate(setup.ends[end], draws);
  const springRate = bothSprings(setup, end, draws);
  const ride = new Float64Array(sprung.length);
  const hop = new Float64Array(sprung.length);
  for (let i = 0; i < sprung.length; i += 1) {
    const modes = undampedModes({
      sprungMass: sprung[i],
      unsprungMass: unsprung[i],
      springRate: springRate[i],
      tyreRate: 2 * tyre[i],
    });
    ride[i] = modes.ride / (2 * Math.PI);
    hop[i] = modes.hop / (2 * Math.PI);
  }
  return { ride, hop };
}

/** Damping ratio of one end each way, sampled. */
export function dampingColumns(setup: Setup, end: End, weights: Weights, draws: Draws) {
  const { base, shockSetting } = setup.ends[end];
  const sprung = weights.sprungEnd[end];
  const shockRatio = draws.of(base.shock.ratio);
  const springRate = bothSprings(setup, end, draws);
  const slopes = slopesAtRest(shockSetting);
  const damping = (slope: number) =>
    columnOf(sprung.length, (i) =>
      dampingRatio(sprung[i], springRate[i], 2 * slope * shockRatio[i] * shockRatio[i]),
    );
  return { compression: damping(slopes.compression), rebound: damping(slopes.rebound) };
}

/**
 * Slope of a shock table on both sides of rest [N·s/m]: from rest to the first measured speed, each way.
 *
 * @validity a table says nothing below its first speed; friction there makes real shocks steeper
 */
export function slopesAtRest({ speed, force }: ShockSetting): { compression: number; rebound: number } {
  const up = speed.findIndex((v) => v > 0);
  const down = speed.findLastIndex((v) => v < 0);
  const zero = speed.indexOf(0);
  // Without a point at rest the curve goes through zero force there.
  const atRest = zero >= 0 ? force[zero] : 0;
  return {
    compression: up >= 0 ? (force[up] - atRest) / speed[up] : 0,
    rebound: down >= 0 ? (force[down] - atRest) / speed[down] : 0,
  };
}
