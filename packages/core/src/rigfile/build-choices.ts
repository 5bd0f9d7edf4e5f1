import { ENDS, type End } from '../finding/place.ts';
import {
  type Choices,
  type DrivenCourse,
  type Effort,
  type EndChoices,
  type PartOption,
  type SizeOptions,
  TRIMS,
  type Trim,
  type TrimOptions,
} from '../rig/choices.ts';
import type { CourseSpec } from '../rig/course-spec.ts';
import type { Reading } from '../rig/reading.ts';
import { AS_MEASURED } from '../rig/setup.ts';
import { TAPED } from './build-spring.ts';
import type { Gaps, ReadingSpec } from './gaps.ts';

/** Steps of a range beyond which somebody mistook a unit. */
const MOST_SIZES = 64;
const GAUGED = { dimension: 'pressure', tool: 'gauge-tolerance' } as const;

/** What may be changed, what it costs and where it is driven; null where the file says nothing. */
export function buildChoices(gaps: Gaps, courses: Readonly<Record<string, CourseSpec>>): Choices | null {
  if (gaps.at('choices') === undefined) return null;
  const [front, rear] = ENDS.map((end) => buildEnd(gaps, end)) as [EndChoices, EndChoices];
  return {
    from: gaps.text('choices.from') ?? AS_MEASURED,
    money: gaps.text('choices.money') ?? '',
    budget: numberAt(gaps, 'choices.budget'),
    hours: numberAt(gaps, 'choices.hours'),
    liftAtMost: gaps.value('choices.liftAtMost'),
    keep: texts(gaps, 'choices.keep'),
    ends: { front, rear },
    drive: rows(gaps, 'choices.drive').flatMap(drivenAt),
    fastest: fastestOf(),
  };

  function drivenAt(key: string): readonly DrivenCourse[] {
    const known = courseAt(key);
    if (known === null) return [];
    const speed = gaps.value(`${key}.speed`) ?? known.course.speed;
    if (speed === null) {
      // One that was refused has its problem already.
      const typed = [key, `courses.${known.course.id}`].some((at) => gaps.at(`${at}.speed`) !== undefined);
      if (!typed)
        gaps.problem('rig-key-missing', `${key}.speed`, '', '20 mph, here or as speed of the course');
      return [];
    }
    const perDay = gaps.value(`${key}.perDay`) ?? known.course.perDay;
    return [{ course: known.course.id, trim: known.trim, speed, perDay }];
  }

  function fastestOf(): Choices['fastest'] {
    const key = 'choices.fastest';
    if (gaps.at(key) === undefined) return null;
    const known = courseAt(key);
    const [from, to] = [gaps.value(`${key}.from`), gaps.value(`${key}.to`)];
    for (const name of ['from', 'to'])
      if (gaps.at(`${key}.${name}`) === undefined) gaps.missing(`${key}.${name}`, '5 mph, 8 km/h');
    if (known === null || from === null || to === null) return null;
    if (from >= to) {
      const accepted = `faster than ${gaps.text(`${key}.from`)}`;
      gaps.problem('quantity-out-of-range', `${key}.to`, gaps.text(`${key}.to`) ?? '', accepted);
    }
    return { course: known.course.id, trim: known.trim, from, to };
  }

  /** The course of an entry, driven along; null when it has its problem. */
  function courseAt(key: string): { readonly course: CourseSpec; readonly trim: Trim } | null {
    const name = gaps.text(`${key}.course`);
    const trim = TRIMS.find((one) => one === gaps.text(`${key}.trim`));
    if (name === undefined || trim === undefined) return null;
    const driven = Object.values(courses).filter(({ shape }) => shape.kind !== 'drop');
    const course = driven.find(({ id }) => id === name);
    if (course !== undefined) return { course, trim };
    const accepted = driven.map(({ id }) => id).join(', ') || 'a course of the file that is driven along';
    // A course that was refused has its problem already.
    if (gaps.at(`courses.${name}`) === undefined || Object.hasOwn(courses, name))
      gaps.problem('rig-unknown-name', `${key}.course`, name, accepted);
    return null;
  }
}

function buildEnd(gaps: Gaps, end: End): EndChoices {
  const key = `choices.${end}`;
  const size = (name: string) => sizesAt(gaps, `${key}.${name}`);
  const [trail, road] = TRIMS.map((trim) => trimAt(gaps, `${key}.${trim}`)) as [TrimOptions, TrimOptions];
  return {
    stop: partsAt(gaps, `${key}.stop`),
    spring: partsAt(gaps, `${key}.spring`),
    stopSpacer: size('stopSpacer'),
    seatAndStopDrop: size('seatAndStopDrop'),
    springSpacer: size('springSpacer'),
    strapLength: size('strapLength'),
    notch: Object.fromEntries(
      gaps.names(`${key}.notch`).flatMap((contact): [string, SizeOptions][] => {
        const sizes = size(`notch.${contact}`);
        return sizes === null ? [] : [[contact, sizes]];
      }),
    ),
    trims: { trail, road },
  };
}

const partsAt = (gaps: Gaps, key: string): readonly PartOption[] =>
  gaps.names(key).map((id) => ({ id, ...effortAt(gaps, `${key}.${id}`) }));

const effortAt = (gaps: Gaps, key: string): Effort => ({
  price: numberAt(gaps, `${key}.price`) ?? 0,
  hours: numberAt(gaps, `${key}.hours`) ?? 0,
});

const trimAt = (gaps: Gaps, key: string): TrimOptions => ({
  shockSetting: texts(gaps, `${key}.shockSetting`),
  tyrePressure: readingsAt(gaps, `${key}.tyrePressure`, GAUGED),
  antiRollBar: texts(gaps, `${key}.antiRollBar`).filter((one) => one === 'on' || one === 'off'),
});

/** A list or a range; null where there is none, or it has its problem. */
function sizesAt(gaps: Gaps, key: string): SizeOptions | null {
  if (gaps.at(key) === undefined) return null;
  const listed = readingsAt(gaps, `${key}.sizes`, TAPED);
  const isRange = ['from', 'to', 'step'].some((name) => gaps.at(`${key}.${name}`) !== undefined);
  if (gaps.at(`${key}.sizes`) !== undefined && isRange) {
    gaps.problem('rig-inconsistent', key, 'sizes beside from, to, step', 'either of both');
    return null;
  }
  const sizes = isRange ? rangeAt(gaps, key) : listed;
  if (!isRange && gaps.at(`${key}.sizes`) === undefined)
    gaps.missing(`${key}.sizes`, 'sizes: [1/2 in, 1 in], or from, to and step');
  return sizes.length === 0 ? null : { sizes, ...effortAt(gaps, key) };
}

function rangeAt(gaps: Gaps, key: string): readonly Reading[] {
  for (const name of ['from', 'to', 'step'])
    if (gaps.at(`${key}.${name}`) === undefined) gaps.missing(`${key}.${name}`, '1/4 in, 6 mm');
  const least = gaps.typedReading(`${key}.from`, TAPED);
  const [most, step] = ['to', 'step'].map((name) =>
    gaps.typedReading(`${key}.${name}`, { ...TAPED, tool: 'choice' }),
  );
  if (!least || !most || !step) return [];
  const steps = Math.floor((most.value - least.value) / step.value + 1e-6);
  if (steps < 1 || steps >= MOST_SIZES) {
    const accepted = `more than ${least.text}, in at most ${MOST_SIZES} steps of ${step.text}`;
    gaps.problem('quantity-out-of-range', `${key}.to`, most.text, accepted);
    return [];
  }
  return Array.from({ length: steps + 1 }, (_, k) => ({
    ...least,
    key,
    value: least.value + k * step.value,
    text: '',
  }));
}

/** All under the key of their list: the same hand cuts them. */
const readingsAt = (gaps: Gaps, key: string, spec: ReadingSpec): readonly Reading[] =>
  rows(gaps, key).flatMap((place) => {
    const reading = gaps.typedReading(place, spec);
    return reading === null ? [] : [{ ...reading, key }];
  });

/** Keys of the entries of a list. */
function rows(gaps: Gaps, key: string): readonly string[] {
  const found = gaps.at(key);
  return Array.isArray(found) ? found.map((_, index) => `${key}.${index}`) : [];
}

const texts = (gaps: Gaps, key: string): readonly string[] =>
  rows(gaps, key).flatMap((place) => gaps.text(place) ?? []);

function numberAt(gaps: Gaps, key: string): number | null {
  const found = gaps.at(key);
  return typeof found === 'number' ? found : null;
}
