import { z } from 'zod';
import { TRIMS } from '../rig/choices.ts';
import { named, quantity } from './leaf.ts';

/** What may be changed and where it must be good: `choices` of a rig file. Shown on no screen until it is typed. */

const effort = {
  price: z.number().min(0).nullish().meta({ description: 'In your own money; 0 if left out' }),
  hours: z.number().min(0).nullish().meta({ description: 'Of work; 0 if left out' }),
};

const length = (about: string) => quantity('length', about, { rare: true });
const one = (about: string) => length(about).unwrap().unwrap();

const parts = (of: string) =>
  named(z.strictObject(effort))
    .nullish()
    .meta({ description: `Names from ${of} that may go on` });

/** A list, or from … to in steps. */
const sizes = (about: string) =>
  z
    .strictObject({
      sizes: z.array(one(about)).min(1).nullish(),
      from: length(`${about}: the least of a range`),
      to: length(`${about}: the most of a range`),
      step: length(`${about}: from one to the next`),
      ...effort,
    })
    .nullish();

const trim = z
  .strictObject({
    shockSetting: z
      .array(z.string())
      .min(1)
      .nullish()
      .meta({ description: 'Settings of the shock to choose from' }),
    tyrePressure: z
      .array(quantity('pressure', 'Inflation to choose from', { rare: true }).unwrap().unwrap())
      .min(1)
      .nullish(),
    antiRollBar: z
      .array(z.enum(['on', 'off']))
      .min(1)
      .nullish()
      .meta({ description: 'Links of the anti-roll bar on, taken off, or the better of both' }),
  })
  .nullish();

const end = z
  .strictObject({
    stop: parts('parts.stops'),
    spring: parts('parts.springs'),
    stopSpacer: sizes('Solid piece behind the stop or under its pad'),
    seatAndStopDrop: sizes('Coil seat and stop lowered together, hole by hole'),
    springSpacer: sizes('Spacer on the same coil'),
    strapLength: sizes('Strap length'),
    notch: named(sizes('Material taken away at this contact').unwrap().unwrap()).nullish(),
    trail: trim,
    road: trim,
  })
  .nullish();

const speed = (about: string) => quantity('speed', about, { exact: true, rare: true });
const inTrim = z.enum(TRIMS).meta({ description: 'In which trim the course is driven' });

export const choicesSchema = z
  .strictObject({
    from: z
      .string()
      .nullish()
      .meta({ description: 'Setup that is changed; the rig as measured if left out' }),
    money: z.string().nullish().meta({ description: 'Name of your money, for example EUR' }),
    budget: z.number().min(0).nullish().meta({ description: 'Most that all changes together may cost' }),
    hours: z.number().min(0).nullish().meta({ description: 'Most hours of work' }),
    liftAtMost: quantity('length', 'Highest that either end may stand above the rig as measured', {
      sign: 'notNegative',
      exact: true,
      rare: true,
    }),
    keep: z
      .array(z.string())
      .nullish()
      .meta({ description: 'Changes that are not made: front.spring, front.notch.sump' }),
    front: end,
    rear: end,
    drive: z
      .array(
        z.strictObject({
          course: z.string().meta({ description: 'Name of a course' }),
          trim: inTrim,
          speed: speed('How fast, instead of the speed of the course'),
          perDay: quantity('length', 'Of such ground in a day, instead of that of the course', {
            exact: true,
            rare: true,
          }),
        }),
      )
      .min(1)
      .meta({ description: 'Courses that every candidate is driven over' }),
    fastest: z
      .strictObject({
        course: z.string().meta({ description: 'Course on which it is asked how fast the rig may go' }),
        trim: inTrim,
        from: speed('Slowest speed that is looked at'),
        to: speed('Fastest speed that is looked at'),
      })
      .nullish(),
  })
  .nullish();
