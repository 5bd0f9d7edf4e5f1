import { cornerAt, ENDS, type End, SIDES } from '../finding/place.ts';
import { LINE_PRACTICE } from '../linkage/reach-findings.ts';
import type { Setup } from '../rig/setup.ts';
import { type Column, columnOf } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import { hoseSlack, shockAtStretchedStrap } from '../travel/droop.ts';
import { type SampledColumn, sampleColumn, sampleEnd } from '../travel/sampled-column.ts';
import type { LinkColumn } from './link-columns.ts';
import type { LinkRange } from './links-answer.ts';
import { LINE_RULES } from './links-limits.ts';

/** Droop that is looked at where neither strap nor shock was measured [m]: a hand's breadth. */
const ASSUMED_DROOP = 0.1;
/** An axle that stands on its stop still goes a little [m]. */
const LEAST = 0.001;

/** How far an axle is looked at, sampled, and the travel columns behind it. */
export interface SampledTravel {
  readonly corners: readonly [SampledColumn, SampledColumn];
  readonly height: Column;
  readonly bump: Column;
  readonly droop: Column;
  readonly droopEnds: LinkRange['droopEnds'];
  /** Rests on a length that nobody measured. */
  readonly unsure: boolean;
}

/**
 * How far the axle of an end goes: up until its stop is fully crushed, the further of both sides; down until its strap
 * is fully stretched, or else its shock open. A hose or shaft that ends droop sooner is what is looked for, no end.
 */
export function sampledTravel(setup: Setup, end: End, draws: Draws): SampledTravel {
  const shared = sampleEnd(setup, end, draws);
  const [left, right] = SIDES.map((side) => sampleColumn(setup, cornerAt(end, side), draws, shared)) as [
    SampledColumn,
    SampledColumn,
  ];
  const length = draws.trials + 1;
  const ends = (['strap', 'shock'] as const).find((id) => shared.droop.some((line) => line.id === id));
  const droop = shared.droop.find((line) => line.id === ends)?.travel;
  return {
    corners: [left, right],
    height: shared.moves.height,
    bump: columnOf(length, (i) =>
      Math.max(LEAST, left.freeBump[i] + left.crush[i], right.freeBump[i] + right.crush[i]),
    ),
    droop: columnOf(length, (i) => Math.max(LEAST, droop ? droop[i] : ASSUMED_DROOP)),
    droopEnds: ends ?? 'assumed',
    unsure: shared.needs.length > 0,
  };
}

/** Lines that travel and tape tell, with or without links. */
export function travelColumns(setup: Setup, draws: Draws): readonly LinkColumn[] {
  return ENDS.flatMap((end) => endColumns(setup, end, draws));
}

function endColumns(setup: Setup, end: End, draws: Draws): readonly LinkColumn[] {
  const { base, spring } = setup.ends[end];
  const travel = sampledTravel(setup, end, draws);
  const { corners, height, bump, droop, unsure } = travel;
  const [left, right] = corners;
  const lines: LinkColumn[] = [];
  const per = (formula: (i: number) => number) => columnOf(draws.trials + 1, formula);
  const nothing = per(() => 0);
  const add = (of: LinkColumn['of'], values: Column, limits: Column | null = null, scale = 1, part = '') =>
    lines.push({
      of,
      place: end,
      part,
      values,
      limits,
      scale,
      limitOf: limits && LINE_RULES[of].limitOf,
      unsure,
    });
  add('height', height);
  add(
    'free-bump',
    per((i) => Math.min(left.freeBump[i], right.freeBump[i])),
  );
  const spare = per((i) => Math.min(left.spare[i], right.spare[i]));
  add('travel-spare', spare, nothing, Math.max(LEAST, Math.min(left.hard[0], right.hard[0])));
  if (travel.droopEnds !== 'assumed') add('droop', droop);

  const { shock, shockReserve, shockDroopReserve, points } = base;
  const { rideLength, collapsedLength, extendedLength } = shock;
  const stroke = strokeOf(collapsedLength?.value, extendedLength?.value);
  if (rideLength && collapsedLength && !(points.linkage && points.mounts.shock)) {
    const [ride, ratio, closed] = [draws.of(rideLength), draws.of(shock.ratio), draws.of(collapsedLength)];
    const leftInBump = per((i) => ride[i] + (height[i] - bump[i]) * ratio[i] - closed[i]);
    add('shock-left-bump', leftInBump, draws.of(shockReserve), stroke);
  }
  const stretched = shockAtStretchedStrap(setup, end, draws);
  if (stretched && extendedLength) {
    const open = draws.of(extendedLength);
    const leftInDroop = per((i) => open[i] - stretched[i]);
    add('shock-left-droop', leftInDroop, draws.of(shockDroopReserve), stroke);
  }
  const coil = corners[0].moves.coilLength;
  if (coil && !(points.linkage && points.mounts.spring)) {
    const ratio = draws.of(base.springRatio);
    coilColumns(
      { bump: per((i) => coil[i] - bump[i] * ratio[i]), droop: per((i) => coil[i] + droop[i] * ratio[i]) },
      {
        solid: spring.solidLength && draws.of(spring.solidLength),
        free: spring.freeLength && draws.of(spring.freeLength),
      },
      draws.of(base.coilReserve),
      add,
    );
  }
  const slack = hoseSlack(setup, end, draws);
  if (slack) {
    // Beside what its points say: a tape at full droop knows nothing of links.
    const part = points.linkage && points.hose ? 'taped' : '';
    const { leastSlack } = LINE_PRACTICE;
    add(
      'hose-slack',
      slack,
      per(() => leastSlack),
      leastSlack,
      part,
    );
  }
  return lines;
}

type Add = (of: LinkColumn['of'], values: Column, limits?: Column | null, scale?: number) => void;

function coilColumns(
  coil: { readonly bump: Column; readonly droop: Column },
  own: { readonly solid: Column | null; readonly free: Column | null },
  reserve: Column,
  add: Add,
): void {
  const { solid, free } = own;
  const stroke = strokeOf(solid?.[0], free?.[0]);
  if (solid)
    add(
      'coil-left-bump',
      columnOf(solid.length, (i) => coil.bump[i] - solid[i]),
      reserve,
      stroke,
    );
  if (free) {
    const held = columnOf(free.length, (i) => free[i] - coil.droop[i]);
    add('coil-held-droop', held, new Float64Array(free.length), stroke);
  }
}

/** Room of a strut where all is well [m]: half of its stroke, or a hand's breadth while that is not known. */
export const strokeOf = (short: number | undefined, long: number | undefined): number =>
  short !== undefined && long !== undefined && long > short ? (long - short) / 2 : ASSUMED_DROOP;
