import { CORNERS, type Corner, type TravelResult } from '@lastinch/core';
import fc from 'fast-check';
import { type Invented, inventedTravel } from './travel.ts';

const inches = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.round(min * 16), max: Math.round(max * 16) }).map((sixteenths) => sixteenths / 16);

const name = fc.oneof(
  fc.constantFrom('axle housing to sump', 'coil solid', 'Panhard bar to sump', 'tyre on guard', 'x'),
  fc.string({ minLength: 1, maxLength: 40, unit: 'grapheme' }),
);

/** Any column that a rig could have, also ones that do not work: a gap used up, no droop known, no contact measured. */
const anyInvented: fc.Arbitrary<Invented> = fc
  .record({
    free: inches(-0.5, 9),
    crush: inches(0.0625, 5),
    flex: inches(0, 1),
    reserve: inches(0, 1),
    contacts: fc.array(
      fc.record({ name, kind: fc.constantFrom('body', 'coil', 'shock'), travel: inches(0.25, 14) }),
      { maxLength: 6 },
    ),
    droop: fc.array(
      fc.record({
        id: fc.constantFrom('shock', 'strap', 'spring', 'hose', 'shaft'),
        travel: inches(0.25, 12),
      }),
      { maxLength: 2 },
    ),
    tolerance: fc.option(inches(0, 0.75)),
  })
  .map((any) => ({
    ...any,
    contacts: any.contacts
      .map((contact, k) => ({ ...contact, id: `contact${k}` }))
      .sort((a, b) => a.travel - b.travel),
    droop: any.droop.sort((a, b) => a.travel - b.travel),
  }));

/** Any result, invented: for properties of pictures only. */
export const anyTravel: fc.Arbitrary<TravelResult> = fc
  .tuple(name, fc.tuple(anyInvented, anyInvented, anyInvented, anyInvented))
  .map(([setup, ends]) =>
    inventedTravel(
      setup,
      Object.fromEntries(CORNERS.map((corner, k) => [corner, ends[k]])) as Record<Corner, Invented>,
    ),
  );

export const SEED = 20240611;
