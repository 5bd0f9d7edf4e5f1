import { z } from 'zod';
import { BRACKET_KINDS } from '../rig/bracket.ts';
import { BOLT_GRADES, THREAD_NAMES } from '../rig/thread.ts';
import { quantity } from './leaf.ts';

const tape = (about: string, needed = false) => quantity('length', about, { needed });

const thread = z.enum(THREAD_NAMES).nullish().meta({ description: 'Thread' });
const grade = z.enum(BOLT_GRADES).nullish().meta({ description: 'Class on its head; 8.8 if left out' });
const count = (about: string, most: number) =>
  z.int().min(1).max(most).nullish().meta({ description: about });

const bracket = z
  .strictObject({
    kind: z.enum(BRACKET_KINDS).nullish().meta({
      description:
        'tower: stands out of the rail and is bent; tube: pressed along itself; plate: held at its edges; bolt-on: a tower that bolts hold',
    }),
    standoff: tape('Load line to the rail; of a tube its length along the load'),
    offset: quantity('length', 'Load beside the middle of the bracket, fore and aft', {
      sign: 'notNegative',
    }),
    section: z
      .strictObject({
        width: tape('Outside, across the plane of the load'),
        depth: tape('Outside, in the plane of the load'),
        diameter: tape('Outside of a round tube, instead of width and depth'),
        wall: tape('Wall of the tube; left out: solid'),
      })
      .nullish(),
    gusset: z
      .strictObject({
        thickness: tape('Thickness of one gusset', true),
        count: count('How many side by side; 2 if left out', 4),
        reach: tape('From the rail along the bracket', true),
        height: tape('How far it stands out of the bracket at the rail', true),
      })
      .nullish(),
    plate: z
      .strictObject({
        width: tape('Between the edges that hold it'),
        length: tape('Between the other edges that hold it'),
        diameter: tape('Of a round one, instead of width and length'),
        thickness: tape('Thickness of the plate', true),
        pad: tape('Diameter of what stands on it', true),
      })
      .nullish(),
    weld: z.strictObject({ leg: tape('Leg of the fillet, all around at the rail', true) }).nullish(),
    bolts: z
      .strictObject({
        thread,
        grade,
        count: count('How many bolts', 24),
        spread: tape('Between their rows, in the plane of the load', true),
        wall: tape('Wall of the frame that they go through', true),
        edge: tape('Centre of a hole to the edge of that wall', true),
      })
      .nullish(),
    stud: z.strictObject({ thread, grade, engaged: tape('Full threads in the captive nut', true) }).nullish(),
    yield: quantity('pressure', 'Yield strength of the steel, from its paper'),
    ultimate: quantity('pressure', 'Breaking strength of the steel, from its paper'),
  })
  .nullish();

/** What stands below `bracket` of an end: what carries each mount on the frame. */
export const bracketParts = z.strictObject({ stop: bracket, spring: bracket, shock: bracket }).nullish();
