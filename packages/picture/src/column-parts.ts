import type { ContactLine, Figure, TravelColumn } from '@lastinch/core';
import { DROOP_NAMES } from './names.ts';

/** One stretch of a travel column, with its ends as axle travel from ride height, bump positive [m]. */
export interface ColumnPart {
  readonly id: 'droop' | 'free' | 'crush' | 'clearance' | 'reserve' | 'flex';
  readonly name: string;
  readonly from: number;
  readonly to: number;
  /** The length as a figure: what its label says. */
  readonly figure: Figure;
}

/** Where one part ends and the next begins, and how well that is known. */
export interface Boundary {
  readonly id: 'metal' | 'fullCrush' | 'stopTouch' | 'ride' | 'droopLimit';
  readonly name: string;
  /** Axle travel from ride height [m], droop negative. */
  readonly at: number;
  /** 95 % half-width [m]; null when unknown; 0 for ride height, from which everything is measured. */
  readonly tolerance: number | null;
}

/** A travel column made ready to be drawn, by whoever draws it. */
export interface ColumnShape {
  /** From the bottom up. Parts without length are left out. */
  readonly parts: readonly ColumnPart[];
  /** From the bottom up. */
  readonly boundaries: readonly Boundary[];
  /** Where the crushed stop reaches into what must stay free, or past the metal; null when it does not. */
  readonly overlap: { readonly from: number; readonly to: number } | null;
  /** The first hard contact; null when the list is empty. */
  readonly first: ContactLine | null;
  /** The contact that leaves the least to spare, when it is not the first one. */
  readonly tightest: ContactLine | null;
  /** Further contacts, ascending. */
  readonly later: readonly ContactLine[];
}

/**
 * Cuts a travel column into the parts that are drawn.
 *
 * `hardTravel = freeBump + crush + clearance` and, where the crushed stop stays clear of it,
 * `clearance = clearance part + reserve + flex`: what must stay free hangs down from the metal and the rest of the
 * clearance is to spare. A coil or a shock that touches first keeps its own allowance instead of flex and reserve.
 *
 * @invariant without an overlap the parts above ride height join end to end and add up to `hardTravel`.
 * @source docs/theory: the travel identity `spare = U − (g + c) − f − r`; tolerance of full crush as the root of
 *   the sum of squares of free bump and crush, JCGM 100:2008 equation (10), inputs taken as independent.
 */
export const columnShape = (column: TravelColumn): ColumnShape => {
  const metal = column.hardTravel.value;
  const touch = column.freeBump.value;
  const full = touch + column.crush.value;
  const first = column.contacts[0] ?? null;
  const allowances = allowancesOf(column, first);

  const parts: ColumnPart[] = [];
  const add = (part: ColumnPart): void => {
    if (part.to > part.from) parts.push(part);
  };
  const limit = column.droop[0];
  if (limit !== undefined) {
    const name = `droop to ${limit.id}`;
    add({ id: 'droop', name, from: -limit.travel.value, to: 0, figure: limit.travel });
  }
  add({ id: 'free', name: 'free bump', from: 0, to: touch, figure: column.freeBump });
  add({ id: 'crush', name: 'stop crush', from: touch, to: full, figure: column.crush });
  let top = metal;
  const hanging: ColumnPart[] = [];
  for (const { id, name, figure } of allowances) {
    if (figure.value <= 0) continue;
    hanging.unshift({ id, name, from: top - figure.value, to: top, figure });
    top -= figure.value;
  }
  // `top` is reused, not computed again, so that the parts join exactly.
  add({ id: 'clearance', name: 'to spare', from: full, to: top, figure: first?.spare ?? column.spare });
  parts.push(...hanging);

  return {
    parts,
    boundaries: boundariesOf(column, full),
    overlap: full > top ? { from: Math.max(top, touch), to: full } : null,
    first,
    tightest: tightestOf(column.contacts),
    later: column.contacts.slice(1),
  };
};

/** What must stay free below the first contact, from the top down. */
const allowancesOf = (
  column: TravelColumn,
  first: ContactLine | null,
): readonly { readonly id: 'flex' | 'reserve'; readonly name: string; readonly figure: Figure }[] => {
  if (first !== null && first.kind !== 'body') {
    return [{ id: 'reserve', name: `${first.kind} reserve`, figure: first.allowance }];
  }
  return [
    { id: 'flex', name: 'flex', figure: column.flex },
    { id: 'reserve', name: 'reserve', figure: column.reserve },
  ];
};

const boundariesOf = (column: TravelColumn, full: number): readonly Boundary[] => {
  const limit = column.droop[0];
  const boundaries: Boundary[] = [];
  if (limit !== undefined) {
    boundaries.push({
      id: 'droopLimit',
      name: DROOP_NAMES[limit.id],
      at: -limit.travel.value,
      tolerance: limit.travel.tolerance,
    });
  }
  boundaries.push(
    { id: 'ride', name: 'ride height', at: 0, tolerance: 0 },
    {
      id: 'stopTouch',
      name: 'stop touch',
      at: column.freeBump.value,
      tolerance: column.freeBump.tolerance,
    },
    {
      id: 'fullCrush',
      name: 'full crush',
      at: full,
      tolerance: together(column.freeBump.tolerance, column.crush.tolerance),
    },
    {
      id: 'metal',
      name: column.contacts[0]?.name ?? 'metal',
      at: column.hardTravel.value,
      tolerance: column.hardTravel.tolerance,
    },
  );
  return boundaries;
};

const together = (a: number | null, b: number | null): number | null =>
  a === null || b === null ? null : Math.hypot(a, b);

const tightestOf = (contacts: readonly ContactLine[]): ContactLine | null => {
  let tightest = contacts[0];
  for (const contact of contacts) {
    if (tightest === undefined || contact.spare.value < tightest.spare.value) tightest = contact;
  }
  return tightest === undefined || tightest === contacts[0] ? null : tightest;
};

/** How far the drawn columns reach from ride height, so that all share one scale [m]. */
export const reachOf = (shapes: readonly ColumnShape[]): { readonly up: number; readonly down: number } => {
  let up = 0;
  let down = 0;
  for (const shape of shapes) {
    for (const { at, tolerance } of shape.boundaries) {
      up = Math.max(up, at + (tolerance ?? 0));
      down = Math.max(down, -at + (tolerance ?? 0));
    }
    for (const part of shape.parts) {
      up = Math.max(up, part.to);
      down = Math.max(down, -part.from);
    }
    for (const contact of nearContacts(shape)) up = Math.max(up, contact.travel.value);
  }
  return { up, down };
};

/** How many later contacts are drawn, and how far above the first: further ones would only shrink the picture. */
const NEAR = { count: 3, share: 0.3 } as const;

/** Later contacts that are near enough to the first to be drawn to scale. */
export const nearContacts = (shape: ColumnShape): readonly ContactLine[] => {
  const metal = shape.boundaries.find((boundary) => boundary.id === 'metal')?.at ?? 0;
  return shape.later
    .filter((contact) => contact.travel.value <= metal * (1 + NEAR.share))
    .slice(0, NEAR.count);
};
