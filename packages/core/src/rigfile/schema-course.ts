import { z } from 'zod';
import type { Dimension } from '../finding/figure.ts';
import { ROAD_CLASSES } from '../rig/road-class.ts';
import { besideFile, quantity, type Sign } from './leaf.ts';

const exact = (dimension: Dimension, about: string, sign: Sign = 'positive') =>
  quantity(dimension, about, { sign, exact: true });

const rest = {
  speed: exact('speed', 'How fast its owner wants to drive it'),
  perDay: exact('length', 'How far such ground is driven in a day'),
  notes: z.string().nullish(),
};
const start = exact('length', 'Flat run before it; 5 m when left out', 'notNegative');
const side = z.enum(['left', 'right', 'both']).meta({ description: 'Under which tyres; both when left out' });
const rightPhase = exact('angle', 'Lag of the right track; 0 when left out, 180 deg alternates', 'any');
const rightLag = exact(
  'length',
  'How much later the right track meets it, when it is crossed at an angle; 0 when left out',
  'any',
);
const count = z.int().min(1).max(1000).meta({ description: 'How many crests' });
const seed = z
  .int()
  .min(0)
  .max(2_147_483_647)
  .meta({ description: 'Another seed gives other ground of the same kind; 1 when left out' });
const mirrored = z.boolean().meta({ description: 'Left and right exchanged; false when left out' });
/** Never nothing: the ground must begin level under the rig. */
const fade = (usual: string) =>
  exact('length', `Distance over which it rises from flat; ${usual} when left out`);

const wave = z.strictObject({
  n: exact('wavenumber', 'Cycles per length'),
  common: exact('length', 'Amplitude that both sides share', 'any'),
  commonPhase: exact('angle', 'Phase of the shared part; 0 when left out', 'any'),
  own: exact('length', 'Amplitude of each side by itself; 0 when left out', 'any'),
  leftPhase: exact('angle', 'Phase of the left side; 0 when left out', 'any'),
  rightPhase: exact('angle', 'Phase of the right side; 0 when left out', 'any'),
});

const cell = exact('length', 'Length', 'any').unwrap().unwrap();

/** The ground: parameters are chosen, not measured, so none of them takes a tolerance. */
export const courseSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('flat'), length: exact('length', 'Length of the flat'), ...rest }),
  z.strictObject({
    kind: z.literal('whoops'),
    height: exact('length', 'Trough to crest'),
    spacing: exact('length', 'Crest to crest'),
    count,
    start,
    rightPhase,
    ...rest,
  }),
  z.strictObject({
    kind: z.literal('irregular-whoops'),
    height: exact('length', 'Trough to crest, in the middle of its band'),
    spacing: exact('length', 'Crest to crest, in the middle of its band'),
    heightScatter: exact('ratio', 'Heights lie within ± this share; 0 when left out', 'notNegative'),
    spacingScatter: exact('ratio', 'Spacings lie within ± this share; 0 when left out', 'notNegative'),
    count,
    start,
    rightPhase,
    seed: seed.nullish(),
    ...rest,
  }),
  z.strictObject({
    kind: z.literal('ledge'),
    side: side.nullish(),
    height: exact('length', 'Up positive, a step down negative', 'any'),
    length: exact('length', 'Distance over which it rises'),
    start,
    ...rest,
  }),
  z.strictObject({
    kind: z.literal('ditch'),
    side: side.nullish(),
    depth: exact('length', 'Lip to bottom'),
    length: exact('length', 'Lip to lip'),
    bottom: exact('length', 'Level part of the bottom; 0 when left out', 'notNegative'),
    start,
    rightLag,
    ...rest,
  }),
  z.strictObject({
    kind: z.literal('half-round'),
    side: side.nullish(),
    height: exact('length', 'Above the ground'),
    length: exact('length', 'Along the ground; twice the height when left out, half a log'),
    wheelRadius: exact('length', 'Of the wheel that rolls over it; that of the front tyres when left out'),
    start,
    rightLag,
    ...rest,
  }),
  z.strictObject({
    kind: z.literal('rocks'),
    height: exact('length', 'Height of the largest rock'),
    rockLength: exact('length', 'Length of the longest rock, along the track'),
    spacing: exact('length', 'From rock to rock on the same track, on average'),
    length: exact('length', 'Length of the field'),
    start,
    seed: seed.nullish(),
    mirrored: mirrored.nullish(),
    ...rest,
  }),
  z.strictObject({
    kind: z.literal('washboard'),
    height: exact('length', 'Trough to crest'),
    spacing: exact('length', 'Crest to crest'),
    length: exact('length', 'Length of it, rounded to whole waves'),
    fadeIn: exact('length', 'Distance over which it grows and goes; two waves when left out', 'notNegative'),
    start,
    rightPhase,
    ...rest,
  }),
  z.strictObject({
    kind: z.literal('waves'),
    waves: z.array(wave).min(1).max(2000),
    fadeIn: exact('length', 'Distance over which the height fades in from flat'),
    length: exact('length', 'Length of the road'),
    ...rest,
  }),
  z.strictObject({
    kind: z.literal('road-class'),
    class: z
      .enum(Object.keys(ROAD_CLASSES) as [keyof typeof ROAD_CLASSES])
      .meta({ description: 'Class of ISO 8608, A smooth to H very rough; or give the roughness' })
      .nullish(),
    roughness: exact('roughness', 'Spectral density of the height at 0.1 cycles/m, Gd(n0) of ISO 8608'),
    length: exact('length', 'Length of the road'),
    fadeIn: fade('20 m'),
    trackWidth: exact(
      'length',
      'From the left track to the right one; that of the rig when left out',
      'notNegative',
    ),
    seed: seed.nullish(),
    mirrored: mirrored.nullish(),
    ...rest,
  }),
  z.strictObject({
    kind: z.literal('ramp-landing'),
    height: exact('length', 'Of the lip of the ramp'),
    length: exact('length', 'From the foot of the ramp to its highest point'),
    lip: exact('length', 'Length over which its edges are rounded; 1 ft when left out'),
    deck: exact('length', 'From the lip to the top of the landing'),
    landingHeight: exact(
      'length',
      'Of the top of the landing; 0 when left out: none, down to the level',
      'notNegative',
    ),
    landingLength: exact('length', 'From the top of the landing to its foot'),
    start,
    ...rest,
  }),
  z.strictObject({
    kind: z.literal('crest'),
    height: exact('length', 'From the level to the top'),
    grade: exact('ratio', 'Slope of the flanks, rise ÷ run'),
    top: exact('length', 'Length over which the top is rounded'),
    foot: exact('length', 'Length over which either foot is rounded; that of the top when left out'),
    start,
    ...rest,
  }),
  z.strictObject({
    kind: z.literal('profile'),
    points: z
      .union([
        z.array(z.tuple([cell, cell, cell])).meta({
          description: 'Measured ground: [distance, height left, height right] rows, distance rising',
        }),
        besideFile,
      ])
      .nullish(),
    fadeIn: fade('10 m'),
    mirrored: mirrored.nullish(),
    ...rest,
  }),
  z.strictObject({ kind: z.literal('drop'), height: exact('length', 'Tyres above flat ground'), ...rest }),
]);

/** Every kind of course, in the order of the schema. */
export const COURSE_KINDS: readonly string[] = courseSchema.options.map((option) => option.shape.kind.value);
