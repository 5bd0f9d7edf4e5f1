import { z } from 'zod';
import type { Dimension } from '../finding/figure.ts';
import { quantity, type Sign } from './leaf.ts';

const exact = (dimension: Dimension, about: string, sign: Sign = 'positive') =>
  quantity(dimension, about, { sign, exact: true });

const rest = {
  speed: exact('speed', 'How fast its owner wants to drive it'),
  notes: z.string().nullish(),
};
const start = exact('length', 'Flat run before it; 5 m when left out', 'notNegative');

const wave = z.strictObject({
  n: exact('wavenumber', 'Cycles per length'),
  common: exact('length', 'Amplitude that both sides share', 'any'),
  commonPhase: exact('angle', 'Phase of the shared part; 0 when left out', 'any'),
  own: exact('length', 'Amplitude of each side by itself; 0 when left out', 'any'),
  leftPhase: exact('angle', 'Phase of the left side; 0 when left out', 'any'),
  rightPhase: exact('angle', 'Phase of the right side; 0 when left out', 'any'),
});

/** The ground: parameters are chosen, not measured, so none of them takes a tolerance. */
export const courseSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('flat'), length: exact('length', 'Length of the flat'), ...rest }),
  z.strictObject({
    kind: z.literal('whoops'),
    height: exact('length', 'Trough to crest'),
    spacing: exact('length', 'Crest to crest'),
    count: z.int().min(1).max(1000).meta({ description: 'How many crests' }),
    start,
    rightPhase: exact('angle', 'Lag of the right track; 0 when left out, 180 deg alternates', 'any'),
    ...rest,
  }),
  z.strictObject({
    kind: z.literal('ledge'),
    side: z.enum(['left', 'right', 'both']).nullish(),
    height: exact('length', 'Up positive, a step down negative', 'any'),
    length: exact('length', 'Distance over which it rises'),
    start,
    ...rest,
  }),
  z.strictObject({
    kind: z.literal('waves'),
    waves: z.array(wave).min(1).max(2000),
    fadeIn: exact('length', 'Distance over which the height fades in from flat'),
    length: exact('length', 'Length of the road'),
    ...rest,
  }),
  z.strictObject({ kind: z.literal('drop'), height: exact('length', 'Tyres above flat ground'), ...rest }),
]);
