import { type End, gapsAt, type Setup, SIDES, type SideGaps } from '@lastinch/core';

/** How far the sliders go past the last thing that happens [m]. */
const BEYOND = 0.02;
const LEAST = 0.05;

/** Bump and droop to which an axle can be moved in any of the setups: a little past metal, and past the first limit. */
export function reachOf(
  setups: readonly Setup[],
  end: End,
): { readonly bump: number; readonly droop: number } {
  const sides = setups.flatMap((setup) => {
    const gaps = gapsAt(setup, end, { heave: 0, roll: 0 });
    return SIDES.map((side) => gaps[side]);
  });
  const bump = sides.map((side) => least(side.contacts.map(({ left }) => left)));
  const droop = sides.map((side) => least(side.droop.map(({ left }) => left)));
  const upTo = (limits: readonly number[], usual: number): number =>
    wholeMillimetres(
      Math.max(LEAST, ...limits.map((limit) => (Number.isFinite(limit) ? limit : usual))) + BEYOND,
    );
  return { bump: upTo(bump, 0.1), droop: upTo(droop, 0.1) };
}

const wholeMillimetres = (length: number): number => Math.ceil(1000 * length) / 1000;
const least = (values: readonly number[]): number => Math.min(Number.POSITIVE_INFINITY, ...values);

const DROOP_WORD = {
  shock: 'shock open',
  strap: 'strap tight',
  spring: 'spring loose',
  hose: 'hose taut',
  shaft: 'shaft out',
};

/** Beside a stop in the drawing, which shows by itself whether this is free or crushed. */
export const stopLabel = (side: SideGaps, length: (metres: number) => string): string =>
  length(side.stopCrush > 0 ? side.stopCrush : side.stopGap);

/** What the stop does: free, or crushed. */
const stopInWords = (side: SideGaps, length: (metres: number) => string): string =>
  side.stopCrush > 0
    ? `crushed ${length(side.stopCrush)}${side.stopUsedUp ? ', used up' : ''}`
    : `${length(side.stopGap)} free`;

/** What is left at one side. */
export interface SideWords {
  readonly stop: string;
  readonly contact: string;
  readonly droop: string;
}

export function sideInWords(side: SideGaps, length: (metres: number) => string): SideWords {
  const next = [...side.contacts].sort((a, b) => a.left - b.left)[0];
  const contact =
    next === undefined
      ? 'none measured'
      : next.left < 0
        ? `${next.name}: HIT`
        : `${next.name}: ${length(next.left)}`;
  const limit = [...side.droop].sort((a, b) => a.left - b.left)[0];
  const droop =
    limit === undefined
      ? 'none known'
      : limit.left < 0
        ? `${DROOP_WORD[limit.id]}: PAST IT`
        : `${DROOP_WORD[limit.id]}: ${length(limit.left)}`;
  return { stop: stopInWords(side, length), contact, droop };
}
