import type { End } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { type Column, columnOf } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import { STANDARD_GRAVITY } from '../stance/gravity.ts';
import type { Moves } from '../stance/moves.ts';
import { measuredSpringLoad } from '../stance/springs.ts';
import type { DroopLine } from './result.ts';

/** One candidate for the end of droop, sampled: axle travel down from ride height [m]. */
export interface SampledDroop {
  readonly id: DroopLine['id'];
  readonly travel: Column;
}

/**
 * What ends droop at one end. Lift takes from every limit that is fixed to the frame:
 *
 *     shock:  (open − length at ride) ÷ ratio − height
 *     strap:  (shock length with the strap fully stretched − length at ride) ÷ ratio − height
 *     hose:   droop at which its ends were taped + its slack − height
 *     shaft:  measured droop − height
 *     spring: what the coil is pressed in at ride ÷ ratio; it goes up and down with the rig
 *
 * @returns in no order; only what the readings give
 * @source rule T19 of SPEC.md
 */
export function droopOf(setup: Setup, end: End, moves: Moves, draws: Draws): readonly SampledDroop[] {
  const { base } = setup.ends[end];
  const { height } = moves;
  const length = draws.trials + 1;
  const lines: SampledDroop[] = [];
  const ratio = draws.of(base.shock.ratio);
  const ride = base.shock.rideLength && draws.of(base.shock.rideLength);
  const fromShockLength = (shockLength: Column): Column | null =>
    ride && columnOf(length, (i) => (shockLength[i] - ride[i]) / ratio[i] - height[i]);
  const add = (id: DroopLine['id'], travel: Column | null) => {
    if (travel) lines.push({ id, travel });
  };

  const open = base.shock.extendedLength && draws.of(base.shock.extendedLength);
  if (open) add('shock', fromShockLength(open));
  const stretched = shockAtStretchedStrap(setup, end, draws);
  if (stretched) add('strap', fromShockLength(stretched));
  add('spring', unseating(setup, end, moves, draws));
  add('hose', hoseTaut(setup, end, moves, draws));
  const shaft = base.shaft && draws.of(base.shaft.droop);
  if (shaft)
    add(
      'shaft',
      columnOf(length, (i) => shaft[i] - height[i]),
    );
  return lines;
}

/**
 * Eye-to-eye length of the shock when the strap of the setup is fully stretched [m]; null without a strap.
 *
 *     tight + (new length − old length + stretch·new length) ÷ ratio
 */
export function shockAtStretchedStrap(setup: Setup, end: End, draws: Draws): Column | null {
  const { base, patch } = setup.ends[end];
  if (!base.strap) return null;
  const before = draws.of(base.strap.length);
  const after = patch.strapLength ? draws.of(patch.strapLength) : before;
  const stretch = draws.of(base.strap.stretch);
  const tight = draws.of(base.strap.tightAtShock);
  const ratio = draws.of(base.strap.ratio);
  return columnOf(before.length, (i) => tight[i] + (after[i] - before[i] + stretch[i] * after[i]) / ratio[i]);
}

/** How much longer than at the tape the hose ends stand now; never less than nothing, as nobody taped that. */
export function hoseReach(setup: Setup, end: End, draws: Draws): Column | null {
  const { base, patch } = setup.ends[end];
  if (!base.strap || !patch.strapLength) return null;
  const before = draws.of(base.strap.length);
  const after = draws.of(patch.strapLength);
  const stretch = draws.of(base.strap.stretch);
  const perTravel = draws.of(base.strap.ratio);
  const shock = draws.of(base.shock.ratio);
  return columnOf(
    before.length,
    (i) => Math.max(0, (after[i] - before[i]) * (1 + stretch[i])) / (perTravel[i] * shock[i]),
  );
}

/** Slack of the hose at strap-stretched droop and full lock [m], in this setup; null when it was not taped. */
export function hoseSlack(setup: Setup, end: End, draws: Draws): Column | null {
  const { hose } = setup.ends[end].base;
  if (!hose) return null;
  const free = draws.of(hose.freeLength);
  const apart = draws.of(hose.distanceAtDroop);
  const reach = hoseReach(setup, end, draws);
  return columnOf(free.length, (i) => free[i] - apart[i] - (reach ? reach[i] : 0));
}

/** The hose was taped at the droop that the strap (or else the open shock) gave on the rig as measured. */
function hoseTaut(setup: Setup, end: End, moves: Moves, draws: Draws): Column | null {
  const { base } = setup.ends[end];
  const { rideLength, extendedLength, ratio } = base.shock;
  if (!base.hose || !rideLength) return null;
  const asMeasured: Setup = {
    ...setup,
    ends: { ...setup.ends, [end]: { ...setup.ends[end], patch: {} } },
  };
  const at = shockAtStretchedStrap(asMeasured, end, draws) ?? (extendedLength && draws.of(extendedLength));
  if (!at) return null;
  const free = draws.of(base.hose.freeLength);
  const apart = draws.of(base.hose.distanceAtDroop);
  const ride = draws.of(rideLength);
  const perTravel = draws.of(ratio);
  return columnOf(at.length, (i) => (at[i] - ride[i]) / perTravel[i] + free[i] - apart[i] - moves.height[i]);
}

/** The coil is loose once the axle has dropped by what the coil is pressed in. */
function unseating(setup: Setup, end: End, moves: Moves, draws: Draws): Column | null {
  const { base, patch, spring } = setup.ends[end];
  const ratio = draws.of(base.springRatio);
  const length = draws.trials + 1;
  const { coilLength } = moves;
  if (spring.freeLength && coilLength) {
    const free = draws.of(spring.freeLength);
    return columnOf(length, (i) => (free[i] - coilLength[i]) / ratio[i]);
  }
  const load = measuredSpringLoad(setup, end, draws);
  const added = patch.addedLoad && draws.of(patch.addedLoad);
  const rate = draws.of(spring.rate);
  return columnOf(length, (i) => {
    const extra = added ? (added[i] * STANDARD_GRAVITY) / (2 * ratio[i]) : 0;
    return (load[i] + extra) / (rate[i] * ratio[i]);
  });
}
