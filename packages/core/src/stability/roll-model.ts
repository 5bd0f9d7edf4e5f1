import { barRateOf } from '../elements/anti-roll-bar.ts';
import { USUAL_TOP_OUT_RATE } from '../elements/droop-limit.ts';
import { shockGasOf } from '../elements/shock-gas.ts';
import { CORNERS, type Corner, cornerAt, ENDS, type End, type Side } from '../finding/place.ts';
import { type MonotoneCubic, monotoneCubic } from '../numerics/monotone-cubic.ts';
import type { Reading } from '../rig/reading.ts';
import type { Setup } from '../rig/setup.ts';
import { centresOfGravity } from '../stance/centre-of-gravity.ts';
import { type Column, columnOf } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import { gasLoad } from '../stance/gas-load.ts';
import { STANDARD_GRAVITY } from '../stance/gravity.ts';
import type { Moves } from '../stance/moves.ts';
import { springLoads } from '../stance/springs.ts';
import { tyreRate } from '../stance/tyre-rate.ts';
import { type Weights, weightsOf } from '../stance/weights.ts';
import { droopOf } from '../travel/droop.ts';
import { type SampledColumn, sampleColumn } from '../travel/sampled-column.ts';
import type { RollCentres } from './roll-centre.ts';

type Sides = Readonly<Record<Side, number>>;

/** One axle and what hangs on it, as it acts in roll. SI; rates and loads are brought to the axle (ratio² and ratio). */
export interface RollEnd {
  readonly halfTrack: number;
  readonly axleMass: number;
  /** Of hub and axle above the ground. */
  readonly hubHeight: number;
  /** Where the links hold the body sideways, above the ground. */
  readonly rollCentre: number;
  /** Of one tyre. */
  readonly tyreRate: number;
  /** On each tyre on level ground [N]. */
  readonly tyreLoad: Sides;
  readonly spring: { readonly halfStation: number; readonly rate: number; readonly load: Sides };
  readonly gas: { readonly halfStation: number; readonly rate: number; readonly load: number };
  readonly stop: {
    readonly halfStation: number;
    readonly ratio: number;
    /** Axle travel at its station before it touches, and before metal does [m]. */
    readonly touches: Sides;
    readonly metalAt: Sides;
    readonly curve: MonotoneCubic;
    readonly metalRate: number;
  };
  /** Shock fully open or strap tight: axle travel down at the shock's station [m], Infinity when not known. */
  readonly droop: { readonly halfStation: number; readonly at: number; readonly rate: number };
  readonly barRate: number;
}

/** A rig in roll: a stiff body on two axles. */
export interface RollModel {
  readonly sprungMass: number;
  /** Of the sprung mass: left of the centre line, above the ground. */
  readonly sprungLeft: number;
  readonly sprungHeight: number;
  /** Share of the sprung mass on the rear axle. */
  readonly rearShare: number;
  readonly ends: Readonly<Record<End, RollEnd>>;
}

/** What a roll question of a setup rests on, sampled once. */
export interface SampledRoll {
  readonly weights: Weights;
  readonly moves: Readonly<Record<End, Moves>>;
  readonly corners: Readonly<Record<Corner, SampledColumn>>;
  /** How much lower the hubs stand than on the rig as measured, by tyre pressure and load [m]. */
  readonly tyreSink: Readonly<Record<End, Column>>;
  /** Of the whole rig: behind the front axle, left of the centre line, above the ground [m]. */
  readonly centre: { readonly behindFrontAxle: Column; readonly left: Column; readonly height: Column };
  readonly model: (trial: number) => RollModel;
}

/**
 * Samples the roll model of a setup: index 0 is the nominal rig.
 *
 * @param rollCentres – a reading for each end, above the ground as the setup stands
 * @validity a frame that does not twist; what the travel verdict says of stops, metal and droop holds here too; tyres give
 * straight down only
 */
export function sampleRoll(setup: Setup, rollCentres: RollCentres, draws: Draws): SampledRoll {
  const weights = weightsOf(setup, draws);
  const corners = Object.fromEntries(
    CORNERS.map((corner) => [corner, sampleColumn(setup, corner, draws)]),
  ) as Record<Corner, SampledColumn>;
  const moves = { front: corners.frontLeft.moves, rear: corners.rearLeft.moves };
  const tyreSink = {
    front: sinkOf(setup, 'front', weights, draws),
    rear: sinkOf(setup, 'rear', weights, draws),
  };
  const { whole, body } = centresOfGravity(setup, weights, moves, draws);
  const length = draws.trials + 1;
  const wheelbase = draws.of(setup.rig.wheelbase);
  const sunk = (place: Column) =>
    columnOf(length, (i) => {
      const rear = place[i] / wheelbase[i];
      return (1 - rear) * tyreSink.front[i] + rear * tyreSink.rear[i];
    });
  const lowered = ({ behindFrontAxle, left, height }: typeof whole) => {
    const sink = sunk(behindFrontAxle);
    return { behindFrontAxle, left, height: columnOf(length, (i) => height[i] - sink[i]) };
  };
  const centre = lowered(whole);
  const sprung = lowered(body);
  const ends = {
    front: rollEnds(setup, 'front', weights, corners, tyreSink.front, rollCentres.front, draws),
    rear: rollEnds(setup, 'rear', weights, corners, tyreSink.rear, rollCentres.rear, draws),
  };
  return {
    weights,
    moves,
    corners,
    tyreSink,
    centre,
    model: (i) => ({
      sprungMass: weights.sprung[i],
      sprungLeft: sprung.left[i],
      sprungHeight: sprung.height[i],
      rearShare: weights.sprungEnd.rear[i] / weights.sprung[i],
      ends: { front: ends.front(i), rear: ends.rear(i) },
    }),
  };
}

function rollEnds(
  setup: Setup,
  end: End,
  weights: Weights,
  corners: Readonly<Record<Corner, SampledColumn>>,
  sink: Column,
  rollCentre: Reading,
  draws: Draws,
): (trial: number) => RollEnd {
  const { base, spring, stop, antiRollBar } = setup.ends[end];
  const loads = springLoads(setup, end, weights, draws);
  const gas = gasLoad(base, draws);
  const rate = tyreRate(setup.ends[end], draws);
  const { moves } = corners[cornerAt(end, 'left')];
  const droop = droopOf(setup, end, moves, draws).filter(({ id }) => id === 'shock' || id === 'strap');
  const curve = monotoneCubic(stop.crush, stop.force);
  return (i) => {
    const at = draws.trial(i);
    const sides = (of: (side: Side) => number): Sides => ({ left: of('left'), right: of('right') });
    const ratio = at(base.springRatio);
    const shockRatio = at(base.shock.ratio);
    const shockStation = at(base.shock.spread) / 2;
    return {
      halfTrack: at(base.track) / 2,
      axleMass: at(base.unsprungMass),
      hubHeight: at(base.tyre.radius) - sink[i],
      rollCentre: at(rollCentre),
      tyreRate: rate[i],
      tyreLoad: sides((side) => weights.corner[cornerAt(end, side)][i] * STANDARD_GRAVITY),
      spring: {
        halfStation: at(base.springSpread) / 2,
        rate: at(spring.rate) * ratio ** 2,
        load: sides((side) => loads[side][i] * ratio),
      },
      gas: {
        halfStation: shockStation,
        rate: (shockGasOf(base.shock, at)?.rate ?? 0) * shockRatio ** 2,
        load: gas[i],
      },
      stop: {
        halfStation: at(base.stopMount.spread) / 2,
        ratio: at(base.stopMount.ratio),
        touches: sides((side) => corners[cornerAt(end, side)].freeBump[i]),
        metalAt: sides((side) => corners[cornerAt(end, side)].hard[i]),
        curve,
        metalRate: at(base.metalRate),
      },
      droop: {
        halfStation: shockStation,
        at: Math.min(...droop.map(({ travel }) => travel[i])),
        rate: USUAL_TOP_OUT_RATE,
      },
      barRate: barRateOf(antiRollBar, at),
    };
  };
}

/** Load ÷ rate in this setup less the same on the rig as measured. */
function sinkOf(setup: Setup, end: End, weights: Weights, draws: Draws): Column {
  const { base } = setup.ends[end];
  const now = tyreRate(setup.ends[end], draws);
  const before = draws.of(base.tyre.rate);
  const [left, right] = [cornerAt(end, 'left'), cornerAt(end, 'right')];
  const [leftBefore, rightBefore] = [
    draws.of(setup.rig.cornerMass[left]),
    draws.of(setup.rig.cornerMass[right]),
  ];
  return columnOf(now.length, (i) => {
    const load = (weights.corner[left][i] + weights.corner[right][i]) / 2;
    const loadBefore = (leftBefore[i] + rightBefore[i]) / 2;
    return STANDARD_GRAVITY * (load / now[i] - loadBefore / before[i]);
  });
}

/** The same rig seen in a mirror: left for right. */
export function mirrored(model: RollModel): RollModel {
  const swap = ({ left, right }: Sides): Sides => ({ left: right, right: left });
  const ends = Object.fromEntries(
    ENDS.map((end) => {
      const of = model.ends[end];
      const stop = { ...of.stop, touches: swap(of.stop.touches), metalAt: swap(of.stop.metalAt) };
      const spring = { ...of.spring, load: swap(of.spring.load) };
      return [end, { ...of, tyreLoad: swap(of.tyreLoad), spring, stop }];
    }),
  ) as Record<End, RollEnd>;
  return { ...model, sprungLeft: -model.sprungLeft, ends };
}
