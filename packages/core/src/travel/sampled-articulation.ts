import { CORNERS, type Corner, cornerAt, endOf, type Side, sideOf } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { type Column, columnOf } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import { STANDARD_GRAVITY } from '../stance/gravity.ts';

import { type AxleStand, heaveAt, momentAt, travelAt } from './axle-balance.ts';
import { type ClearAtFlex, clearAtFlex } from './flex-clear.ts';
import { rampOf, type SampledRamp } from './ramp.ts';
import { type RolledAxle, rollAxle, rollUnder, sharedAt } from './rolled-axle.ts';

/** One axle flexed to its end, nominal readings first, then one entry a trial. */
export interface SampledFlex {
  readonly axle: RolledAxle;
  readonly roll: Column;
  readonly bump: Column;
  readonly droop: Column;
  readonly lowTyreLoad: Column;
  /** Where the axle stands at the nominal readings. */
  readonly stand: AxleStand;
  /** What must not end the flex: how far each is from it where stop, strap or tyres would. */
  readonly clear: readonly ClearAtFlex[];
  /** False where a length was never measured, or a trial finds no end: nobody knows how sure it is. */
  readonly known: boolean;
  /** False where nothing known ends it at the nominal readings: its figures mean nothing. */
  readonly ends: boolean;
}

export interface SampledArticulation {
  readonly flex: Readonly<Record<Corner, SampledFlex>>;
  readonly ramps: Readonly<Record<'frontLeft' | 'frontRight', SampledRamp>>;
}

/** Every axle rolled to either side, and both ramps, over all trials. */
export function sampleArticulation(setup: Setup, draws: Draws): SampledArticulation {
  const shared = { front: sharedAt(setup, 'front', draws), rear: sharedAt(setup, 'rear', draws) };
  const rolled = {} as Record<Corner, RolledAxle>;
  const flex = {} as Record<Corner, SampledFlex>;
  for (const corner of CORNERS) {
    rolled[corner] = rollAxle(setup, endOf(corner), sideOf(corner), shared[endOf(corner)], draws);
    flex[corner] = sampleFlex(setup, rolled[corner], draws);
  }
  const ramp = (side: Side): SampledRamp => {
    const other: Side = side === 'left' ? 'right' : 'left';
    return rampOf(setup, side, rolled[cornerAt('front', side)], rolled[cornerAt('rear', other)], draws);
  };
  return { flex, ramps: { frontLeft: ramp('left'), frontRight: ramp('right') } };
}

function sampleFlex(setup: Setup, axle: RolledAxle, draws: Draws): SampledFlex {
  const { end, springs, liftingMoment, lowTyre, shared } = axle;
  const length = draws.trials + 1;
  const roll = columnOf(length, (i) => rollUnder(axle, i, liftingMoment[i]));
  const stands = Array.from(
    { length },
    (_, i): AxleStand => ({ heave: heaveAt(springs[i], roll[i]), roll: roll[i] }),
  );
  const arm = draws.of(setup.ends[end].base.track);
  return {
    axle,
    roll,
    bump: columnOf(length, (i) => travelAt(arm[i] / 2, 1, stands[i])),
    droop: columnOf(length, (i) => -travelAt(arm[i] / 2, -1, stands[i])),
    lowTyreLoad: columnOf(length, (i) =>
      Math.max(0, lowTyre[i] * STANDARD_GRAVITY - momentAt(springs[i], stands[i]) / arm[i]),
    ),
    stand: stands[0],
    clear: clearAtFlex(axle),
    known: shared.moves.needs.length === 0 && roll.every((at, i) => at < axle.held[i] || axle.heldBy[i] >= 0),
    ends: roll[0] < axle.held[0] || axle.heldBy[0] >= 0,
  };
}
