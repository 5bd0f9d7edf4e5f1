import { z } from 'zod';
import { besideFile, named, quantity, sided, table } from './leaf.ts';
import { bracketParts } from './schema-bracket.ts';
import { choicesSchema } from './schema-choices.ts';
import { courseSchema } from './schema-course.ts';
import { hoseParts, linkParts, linkPatches, shaftParts } from './schema-links.ts';

/**
 * The shape of a rig file, schema 1. Quantities are text here and stay text: this schema has no transforms, so that
 * it can be published as JSON Schema (2020-12). What a quantity means is worked out in `typed.ts`, what is missing
 * is filled in `build.ts`. Paths of this schema are the keys of the readings.
 */

const notes = z.string().nullish().meta({ description: 'Anything worth remembering' });

const curve = z
  .union([
    table('length', 'force', 'Press test: [crush, force] rows from [0 in, 0 lb], both rising'),
    besideFile,
  ])
  .nullish();

const stopPart = {
  freeLength: quantity('length', 'Free length of the stop, off the rig'),
  usableCrush: quantity(
    'length',
    'How far it may be crushed before it is too stiff or damaged; not its length',
    { needed: true },
  ),
  curve,
  forceAtFullCrush: quantity('force', 'Force at the usable crush, when there is no press test'),
  material: z
    .enum(['rubber', 'polyurethane', 'foam'])
    .nullish()
    .meta({ description: 'Shapes the estimate when there is no press test' }),
  rateFactor: quantity('stiffnessOverSpeed', 'Force gain per closing speed', { sign: 'notNegative' }),
  hysteresis: quantity('ratio', 'Share of the work of a slow press that does not come back'),
  dynamicFactor: quantity(
    'ratio',
    'Work of a press at 1 m/s ÷ work of a slow one, instead of the rate factor',
  ),
  vent: z
    .strictObject({
      cavity: quantity('length', 'Diameter of the air space, across the stop', { needed: true }),
      hole: quantity('length', 'Diameter of the vent hole', { needed: true }),
      count: z.int().min(1).max(100).nullish().meta({ description: 'How many such holes; 1 if left out' }),
      discharge: quantity('ratio', 'Contraction of the jet: 0.62 sharp edge to 1 well rounded'),
    })
    .nullish(),
  gas: z
    .strictObject({
      rodDiameter: quantity('length', 'Rod that enters the gas', { needed: true }),
      pressure: quantity('pressure', 'Charge with the rod out, by gauge', { needed: true }),
      column: quantity('length', 'Gas volume ÷ rod area with the rod out: more than the usable crush'),
      index: quantity('ratio', 'Polytropic index: 1 slow to 1.4 fast'),
      oil: z
        .strictObject({
          force: quantity('force', 'Force of the oil alone at one closing speed'),
          speed: quantity('speed', 'That closing speed'),
        })
        .nullish(),
    })
    .nullish(),
};

const springPart = {
  rate: quantity('rate', 'Spring rate at working deflection', { needed: true }),
  freeLength: quantity('length', 'Coil length off the rig'),
  solidLength: quantity('length', 'Coil length with all coils touching'),
};

const setting = z.union([
  table('speed', 'force', 'Shaft speed and force, compression positive, rebound negative'),
  besideFile,
  z.strictObject({
    dampingRatio: z.strictObject({
      compression: quantity('ratio', 'Share of critical damping near zero speed, in bump'),
      rebound: quantity('ratio', 'The same in rebound'),
    }),
  }),
  z.strictObject({
    handPush: z.strictObject({
      speed: quantity('speed', 'Shaft speed while pushing and pulling'),
      push: quantity('force', 'Force on the scale while pushing in, gas and seals included'),
      pull: quantity('force', 'Force on the scale while pulling out'),
    }),
  }),
]);

const tapeOf = (about: string) => quantity('length', about);
const neededTape = (about: string) => quantity('length', about, { needed: true });
const spread = (of: string) => tapeOf(`From left to right ${of}, at the axle`);
const ratio = (of: string) =>
  quantity('ratio', `Travel of the ${of} ÷ axle travel, both wheels moving alike`);
const kept = (about: string) => quantity('length', about, { sign: 'notNegative' });

const end = z
  .strictObject({
    axle: z
      .strictObject({
        kind: z
          .enum(['solid', 'independent'])
          .nullish()
          .meta({ description: 'A beam from wheel to wheel, or each wheel by itself' }),
        track: neededTape('Tyre centre to tyre centre'),
        unsprungMass: quantity('mass', 'Whole axle with wheels, half of links and shocks'),
        rollInertia: quantity('inertia', 'Roll inertia of the axle about its centre'),
        ratio: quantity('ratio', 'Turns of the shaft ÷ turns of the wheel'),
      })
      .nullish(),
    contacts: named(
      z.strictObject({
        name: z.string().nullish(),
        gap: sided('length', 'Gap at ride height, along the motion of the point that touches', {
          sign: 'notNegative',
          needed: true,
        }),
        ratio: ratio('point that touches'),
        spread: tapeOf('From left to right, where it touches; left out, as far apart as the stops'),
      }),
    ).nullish(),
    flex: kept('What frame, brackets and bushes give on the worst hit'),
    spring: z
      .strictObject({
        ...springPart,
        rideLength: tapeOf('Coil length at ride height'),
        ratio: ratio('spring'),
        spread: spread('spring'),
        reserve: kept('To be left before the coils touch'),
      })
      .nullish(),
    shock: z
      .strictObject({
        rideLength: tapeOf('Eye to eye at ride height'),
        collapsedLength: tapeOf('Eye to eye fully closed'),
        extendedLength: tapeOf('Eye to eye fully open'),
        ratio: ratio('shock'),
        spread: spread('shock mount'),
        reserve: kept('To be left before the shock bottoms'),
        droopReserve: kept('To be left before the shock tops out, strap stretched'),
        gasPressure: quantity('pressure', 'Charge with the shaft out, by gauge'),
        rodDiameter: quantity('length', 'Shaft that enters the gas'),
        gasRise: quantity('ratio', 'Pressure gained over the whole stroke ÷ charge'),
        friction: quantity('force', 'Friction of seals and guides that the settings do not hold', {
          sign: 'notNegative',
        }),
        topOutRate: quantity('rate', 'Stiffness on its own top, fully open'),
        setting: z.string().nullish().meta({ description: 'Which of the settings is on the rig now' }),
        settings: named(setting).nullish(),
      })
      .nullish(),
    stop: z
      .strictObject({
        gap: sided('length', 'Tip to strike pad at ride height', { sign: 'any', needed: true }),
        ...stopPart,
        ratio: ratio('stop'),
        spread: spread('stop'),
      })
      .nullish(),
    antiRollBar: z
      .strictObject({
        rate: quantity('rollRate', 'Roll moment ÷ tilt between axle and body'),
        linkRate: quantity('rate', 'Force at one link ÷ its travel, the other link held'),
        linkSpread: spread('link'),
        linkRatio: ratio('link'),
      })
      .nullish(),
    metalRate: quantity('rate', 'Stiffness of metal on metal behind the stop'),
    strap: z
      .strictObject({
        length: neededTape('Free length of the strap'),
        stretch: quantity('ratio', 'Stretch at full load ÷ free length', { sign: 'notNegative' }),
        tightAtShock: neededTape('Eye to eye length of the shock when the strap comes tight'),
        ratio: quantity('ratio', 'Strap travel ÷ shock travel'),
        rate: quantity('rate', 'Pull ÷ stretch'),
      })
      .nullish(),
    hose: z
      .strictObject({
        freeLength: neededTape('Free length of the brake hose between its fixed ends'),
        distanceAtDroop: tapeOf('Between those ends at strap-stretched droop and full lock'),
        ...hoseParts,
      })
      .nullish(),
    shaft: z
      .strictObject({
        droop: tapeOf('Droop travel before the driveshaft runs out of plunge or angle'),
        ...shaftParts,
      })
      .nullish(),
    ...linkParts,
    bracket: bracketParts,
    tyre: z
      .strictObject({
        rate: quantity('rate', 'Vertical rate at the pressure in use'),
        damping: quantity('damping', 'Vertical damping', { sign: 'notNegative' }),
        pressure: quantity('pressure', 'Inflation'),
        radius: tapeOf('Hub to ground, loaded'),
        size: z
          .string()
          .nullish()
          .meta({ description: 'As on its side', examples: ['315/70R17', '35x12.50R17'] }),
        press: z
          .union([
            table('length', 'force', 'Press test: [deflection, load] rows from [0 in, 0 lb], both rising'),
            besideFile,
          ])
          .nullish(),
      })
      .nullish(),
    witness: z
      .strictObject({
        passes: z.array(kept('Axle travel of one pass').unwrap().unwrap()).nullish(),
        clay: kept('Thinnest clay at the limiting contact'),
      })
      .nullish(),
  })
  .nullish();

const moved = (about: string) => quantity('length', about, { sign: 'notNegative' });

const endPatch = z
  .strictObject({
    stop: z.string().nullish().meta({ description: 'Other stop from parts.stops' }),
    stopGap: quantity('length', 'Stop gap that will be set', { sign: 'any' }),
    stopSpacer: moved('Solid piece behind the stop or under its pad'),
    seatAndStopDrop: moved('Coil seat and stop lowered together on the frame'),
    springSpacer: moved('Spacer on the same coil'),
    spring: z.string().nullish().meta({ description: 'Other spring from parts.springs' }),
    notch: named(moved('Material taken away at this contact').unwrap().unwrap()).nullish(),
    shockSetting: z.string().nullish().meta({ description: 'Other setting of the same shock' }),
    antiRollBar: z
      .enum(['on', 'off'])
      .nullish()
      .meta({ description: 'Links of the anti-roll bar on, or taken off' }),
    tyrePressure: quantity('pressure', 'Other inflation'),
    addedLoad: quantity('mass', 'Mass added on this end above the springs', { sign: 'any' }),
    strapLength: quantity('length', 'Other strap length'),
    ...linkPatches,
  })
  .nullish();

export const rigFileSchema = z.strictObject({
  schema: z.literal(1).meta({ description: 'Version of this format' }),
  rig: z.strictObject({ name: z.string().nullish(), notes }).nullish(),
  measured: z
    .strictObject({
      wheelbase: neededTape('Front axle to rear axle'),
      weights: z
        .strictObject({
          frontLeft: quantity('mass', 'Scale reading under this tyre, driver and fuel aboard', {
            needed: true,
          }),
          frontRight: quantity('mass', 'Scale reading under this tyre, driver and fuel aboard', {
            needed: true,
          }),
          rearLeft: quantity('mass', 'Scale reading under this tyre, driver and fuel aboard', {
            needed: true,
          }),
          rearRight: quantity('mass', 'Scale reading under this tyre, driver and fuel aboard', {
            needed: true,
          }),
        })
        .nullish(),
      cgHeight: tapeOf('Centre of gravity of the whole rig above the ground'),
      cgLift: z
        .strictObject({
          raised: z.enum(['front', 'rear']).nullish().meta({ description: 'The axle that was raised' }),
          by: neededTape('How much higher its hubs stood than on level ground'),
          left: quantity('mass', 'Scale under the left tyre of the other axle, this one raised', {
            needed: true,
          }),
          right: quantity('mass', 'Scale under the right tyre of the other axle, this one raised', {
            needed: true,
          }),
          tyreRadius: tapeOf('Hub to ground of the axle on the scales, the other raised'),
          suspension: z.enum(['locked', 'free']).nullish().meta({
            description: 'Whether the shocks were replaced by bars; locked is what the standard asks for',
          }),
        })
        .nullish(),
      rollInertia: quantity('inertia', 'Sprung mass about its own fore-and-aft axis'),
      pitchInertia: quantity('inertia', 'Sprung mass about its own cross axis'),
    })
    .nullish(),
  front: end,
  rear: end,
  driver: z
    .strictObject({
      mass: quantity('mass', 'Driver in clothes and helmet, on a bathroom scale'),
      onSeat: quantity('ratio', 'Share of it that rests on the seat, feet on the floor'),
      seat: z
        .strictObject({
          behindFrontAxle: tapeOf('From the front axle back to the hips'),
          left: quantity('length', 'From the middle of the rig to the hips, right negative', { sign: 'any' }),
          sag: tapeOf('How far the seat squashes when the driver sits down'),
          rate: quantity('rate', 'Vertical rate of the seat under the driver, instead of the sag'),
          frequency: quantity('frequency', 'How fast the driver bobs on the seat, instead of the sag'),
          dampingRatio: quantity('ratio', 'Share of critical damping of driver and seat'),
        })
        .nullish(),
    })
    .nullish(),
  parts: z
    .strictObject({
      stops: named(z.strictObject({ notes, ...stopPart })).nullish(),
      springs: named(z.strictObject({ notes, ...springPart })).nullish(),
    })
    .nullish(),
  setups: named(z.strictObject({ notes, front: endPatch, rear: endPatch })).nullish(),
  courses: named(courseSchema).nullish(),
  choices: choicesSchema,
  limits: z
    .strictObject({
      reserve: kept('Clearance that must be left on the worst hit'),
      bodyAcceleration: quantity('acceleration', 'Peak body acceleration above rest that is accepted'),
      bracketForce: quantity(
        'force',
        'Peak force of stop and metal on one corner of the frame that is accepted',
      ),
      bracketFactor: quantity('ratio', 'Factor of safety against yield that is wanted of brackets'),
      absorbedPower: quantity('power', 'Power that a seated body may take up from vertical motion'),
      seatShock: quantity('acceleration', 'Peak acceleration of the seat above rest, after a 30 Hz low-pass'),
      seatDose: quantity('vibrationDose', 'Vibration dose of the seat in a day that is accepted'),
      tyreContact: quantity('ratio', 'Least share of the time that each tyre must carry'),
    })
    .nullish(),
});
