import type {
  ContactKind,
  ContactLine,
  Corner,
  DroopLine,
  Figure,
  TravelColumn,
  TravelResult,
  Verdict,
} from '@lastinch/core';
import { CORNERS } from '@lastinch/core';

/**
 * Invented travel results: only for looking at pictures, never an expected value of physics.
 */
const INCH = 0.0254;
const inches = (value: number, tolerance: number | null): Figure => ({
  dimension: 'length',
  value: value * INCH,
  tolerance: tolerance === null ? null : tolerance * INCH,
});

interface InventedContact {
  readonly id: string;
  readonly name: string;
  readonly kind: ContactKind;
  readonly travel: number;
}

export interface Invented {
  readonly free: number;
  readonly crush: number;
  readonly flex: number;
  readonly reserve: number;
  readonly contacts: readonly InventedContact[];
  readonly droop: readonly { readonly id: DroopLine['id']; readonly travel: number }[];
  readonly tolerance: number | null;
}

/** Keeps the one identity that the picture relies on: hard travel = free bump + crush + clearance. All in inches. */
export const inventedColumn = (corner: Corner, it: Invented): TravelColumn => {
  const t = it.tolerance;
  const wide = (factor: number): number | null => (t === null ? null : t * factor);
  const contacts: ContactLine[] = it.contacts.map((contact, k) => {
    const allowance = contact.kind === 'body' ? it.flex + it.reserve : 0.25;
    return {
      id: contact.id,
      name: contact.name,
      kind: contact.kind,
      travel: inches(contact.travel, t),
      allowance: inches(allowance, wide(0.5)),
      spare: inches(contact.travel - it.free - it.crush - allowance, wide(1.8)),
      firstShare: k === 0 ? 0.9 : 0.1 / Math.max(1, it.contacts.length - 1),
    };
  });
  const hard = it.contacts[0]?.travel ?? it.free + it.crush + 1;
  const spare = Math.min(hard - it.free - it.crush, ...contacts.map((contact) => contact.spare.value / INCH));
  const u = t === null ? 0 : t * 1.8;
  const verdict: Verdict = spare >= u ? 'pass' : spare <= -u ? 'fail' : 'not-proven';
  return {
    corner,
    hardTravel: inches(hard, t),
    freeBump: inches(it.free, t),
    crush: inches(it.crush, wide(0.6)),
    flex: inches(it.flex, wide(0.6)),
    reserve: inches(it.reserve, 0),
    clearance: inches(hard - it.free - it.crush, wide(1.6)),
    spare: inches(spare, wide(1.8)),
    contacts,
    droop: it.droop.map(({ id, travel }) => ({ id, travel: inches(travel, wide(1.4)) })),
    verdict,
    probability: { metal: verdict === 'pass' ? 0.01 : 0.4, spareBelowZero: verdict === 'pass' ? 0.01 : 0.5 },
    blame: [],
    lift: inches(0, 0),
  };
};

export const inventedTravel = (setup: string, corners: Readonly<Record<Corner, Invented>>): TravelResult => ({
  setup,
  corners: Object.fromEntries(
    CORNERS.map((corner) => [corner, inventedColumn(corner, corners[corner])]),
  ) as Record<Corner, TravelColumn>,
  findings: [],
  trials: 0,
  seed: 1,
});

const front: Invented = {
  free: 2.25,
  crush: 1.5,
  flex: 0.25,
  reserve: 0.25,
  contacts: [
    { id: 'sump', name: 'axle housing to sump', kind: 'body', travel: 4.125 },
    { id: 'bar', name: 'Panhard bar to sump', kind: 'body', travel: 4.5 },
    { id: 'coil', name: 'coil solid', kind: 'coil', travel: 5.25 },
    { id: 'shock', name: 'shock bottomed', kind: 'shock', travel: 6.5 },
  ],
  droop: [
    { id: 'strap', travel: 3.75 },
    { id: 'shock', travel: 4.5 },
  ],
  tolerance: 0.125,
};
const rear: Invented = {
  free: 2.5,
  crush: 1.5,
  flex: 0.1875,
  reserve: 0.25,
  contacts: [
    { id: 'coil', name: 'coil solid', kind: 'coil', travel: 5 },
    { id: 'frame', name: 'axle tube to frame', kind: 'body', travel: 5.5 },
  ],
  droop: [{ id: 'shock', travel: 4.25 }],
  tolerance: 0.125,
};

/** A rig whose new stop does not fit at the front and is fine at the rear. */
export const failing: TravelResult = inventedTravel('long stop as mounted', {
  frontLeft: front,
  frontRight: { ...front, free: 2.5, crush: 1.6875 },
  rearLeft: rear,
  rearRight: { ...rear, tolerance: null },
});

/** The same rig with seat and stop lowered. */
export const working: TravelResult = inventedTravel('seat and stop down 1 in', {
  frontLeft: lowered(front, 1),
  frontRight: lowered({ ...front, free: 2.5, crush: 1.6875 }, 1),
  rearLeft: rear,
  rearRight: rear,
});

function lowered(end: Invented, by: number): Invented {
  return {
    ...end,
    contacts: end.contacts.map((contact) => ({
      ...contact,
      travel: contact.travel + (contact.kind === 'coil' ? 0 : by),
    })),
  };
}
