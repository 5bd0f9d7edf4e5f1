import { barRateOf } from '../elements/anti-roll-bar.ts';
import { cornerAt, type End, type Side } from '../finding/place.ts';
import { linksOf } from '../linkage/from-setup.ts';
import type { AxleGeometry } from '../linkage/geometry.ts';
import { monotoneCubic } from '../numerics/monotone-cubic.ts';
import type { Setup } from '../rig/setup.ts';
import { columnOf } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import { STANDARD_GRAVITY } from '../stance/gravity.ts';
import { type Moves, movesOf } from '../stance/moves.ts';
import { weightsOf } from '../stance/weights.ts';
import { type AxleSprings, type AxleStand, heaveAt, momentAt, travelAt } from './axle-balance.ts';
import { droopOf } from './droop.ts';
import { flexLimits, type SampledLimit } from './flex-limits.ts';
import { freeBump } from './stop-gap.ts';
import { type Shortening, shorteningOf } from './strut-travel.ts';

/** Nothing rolls farther [rad]. */
const MOST = 0.6;
const STRIDE = 0.04;

/** What both ways of flexing an end have in common. */
export interface SharedEnd {
  readonly moves: Moves;
  readonly geometry: AxleGeometry | null;
  readonly shortening: Shortening | null;
}

export function sharedAt(setup: Setup, end: End, draws: Draws): SharedEnd {
  const moves = movesOf(setup, end, draws);
  const other = movesOf(setup, end === 'front' ? 'rear' : 'front', draws);
  const [lift, otherLift] = [moves.height[0], other.height[0]];
  const read = linksOf(setup, {
    lift: end === 'front' ? { front: lift, rear: otherLift } : { front: otherLift, rear: lift },
  });
  const geometry = read.ok ? (read.value.ends[end]?.geometry ?? null) : null;
  return { moves, geometry, shortening: geometry && shorteningOf(geometry) };
}

/** An axle rolled until contacts, not tyres, hold it: sampled. */
export interface RolledAxle {
  readonly end: End;
  readonly up: Side;
  readonly shared: SharedEnd;
  readonly limits: readonly SampledLimit[];
  readonly springs: readonly AxleSprings[];
  /** Roll at which a contact holds it, and which [rad]. */
  readonly held: Float64Array;
  readonly heldBy: Int32Array;
  /** Roll moment at which the low tyre has no load left [N·m]. */
  readonly liftingMoment: Float64Array;
  readonly lowTyre: Float64Array;
}

export function rollAxle(setup: Setup, end: End, up: Side, shared: SharedEnd, draws: Draws): RolledAxle {
  const { base } = setup.ends[end];
  const length = draws.trials + 1;
  const { moves } = shared;
  const limits = flexLimits(setup, end, up, moves, draws);
  const springs = springsOf(setup, end, up, moves, draws);
  const weights = weightsOf(setup, draws);
  const down: Side = up === 'left' ? 'right' : 'left';
  const low = weights.corner[cornerAt(end, down)];
  const track = draws.of(base.track);
  return {
    end,
    up,
    shared,
    limits,
    springs,
    ...hold(limits, { up, shared, springs }),
    liftingMoment: columnOf(length, (i) => low[i] * STANDARD_GRAVITY * track[i]),
    lowTyre: low,
  };
}

function springsOf(setup: Setup, end: End, up: Side, moves: Moves, draws: Draws): AxleSprings[] {
  const { base, spring, stop, antiRollBar } = setup.ends[end];
  const rate = draws.of(spring.rate);
  const ratio = draws.of(base.springRatio);
  const arm = draws.of(base.springSpread);
  const loose = droopOf(setup, end, moves, draws).find(({ id }) => id === 'spring')?.travel;
  const free = freeBump(setup, end, up, moves, draws);
  const stopRatio = draws.of(base.stopMount.ratio);
  const stopArm = draws.of(base.stopMount.spread);
  const stopCurve = monotoneCubic(stop.crush, stop.force);
  return Array.from({ length: draws.trials + 1 }, (_, i) => ({
    coilRate: rate[i] * ratio[i] * ratio[i],
    coilArm: arm[i] / 2,
    loose: Math.max(0, loose ? loose[i] : Number.POSITIVE_INFINITY),
    stopCurve,
    stopRatio: stopRatio[i],
    stopArm: stopArm[i] / 2,
    stopFree: free[i],
    bar: barRateOf(antiRollBar, (reading) => draws.of(reading)[i]),
  }));
}

type Standing = Pick<RolledAxle, 'up' | 'shared' | 'springs'>;

/**
 * Rolls an axle in each trial until the first of these limits holds it.
 *
 * @param known – the same axle held by more limits: where one of these was its first, it still is
 */
export function hold(
  limits: readonly SampledLimit[],
  axle: Standing,
  known: RolledAxle | null = null,
): Pick<RolledAxle, 'held' | 'heldBy'> {
  const held = new Float64Array(axle.springs.length);
  const heldBy = new Int32Array(axle.springs.length);
  for (const [i, springs] of axle.springs.entries()) {
    const before = known?.limits[known.heldBy[i]];
    if (known && before && limits.includes(before)) {
      held[i] = known.held[i];
      heldBy[i] = limits.indexOf(before);
      continue;
    }
    const { roll, by } = firstRoll((at) =>
      worstOf(limits, i, { heave: heaveAt(springs, at), roll: at }, axle),
    );
    held[i] = roll;
    heldBy[i] = by;
  }
  return { held, heldBy };
}

/** How far past a limit an axle stands, as axle travel where it lies [m]; negative before it. */
export function pastLimit(
  { side, way, travel, arm, strut }: SampledLimit,
  i: number,
  stand: AxleStand,
  { up, shared: { shortening } }: Pick<RolledAxle, 'up' | 'shared'>,
): number {
  const roll = up === 'left' ? stand.roll : -stand.roll;
  const shorter = strut && shortening ? shortening(strut.part, side, { heave: stand.heave, roll }) : null;
  const used = shorter === null || strut === null ? travelAt(arm[i], way, stand) : shorter / strut.ratio[i];
  return way * used - travel[i];
}

/** How far past its limit the worst one is [m], and which it is. */
function worstOf(
  limits: readonly SampledLimit[],
  i: number,
  stand: AxleStand,
  axle: Standing,
): { past: number; by: number } {
  let past = Number.NEGATIVE_INFINITY;
  let by = -1;
  for (const [k, limit] of limits.entries()) {
    const beyond = pastLimit(limit, i, stand, axle);
    if (beyond > past) [past, by] = [beyond, k];
  }
  return { past, by };
}

/** Least roll at which anything is reached. */
function firstRoll(worst: (roll: number) => { past: number; by: number }): { roll: number; by: number } {
  let low = 0;
  let reached = worst(0);
  if (reached.past >= 0) return { roll: 0, by: reached.by };
  let high = 0;
  while (high < MOST && reached.past < 0) {
    low = high;
    high = Math.min(MOST, high + STRIDE);
    reached = worst(high);
  }
  if (reached.past < 0) return { roll: MOST, by: -1 };
  for (let step = 0; step < 24; step += 1) {
    const middle = (low + high) / 2;
    const there = worst(middle);
    if (there.past < 0) low = middle;
    else [high, reached] = [middle, there];
  }
  return { roll: high, by: reached.by };
}

/** Roll at which the axle takes a moment, at most that at which contacts hold it [rad]. */
export function rollUnder({ springs, held }: RolledAxle, i: number, moment: number): number {
  const at = (roll: number) => momentAt(springs[i], { heave: heaveAt(springs[i], roll), roll });
  if (at(held[i]) <= moment) return held[i];
  let [low, high] = [0, held[i]];
  for (let step = 0; step < 24; step += 1) {
    const middle = (low + high) / 2;
    if (at(middle) < moment) low = middle;
    else high = middle;
  }
  return high;
}
