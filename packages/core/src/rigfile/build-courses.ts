import type { Dimension } from '../finding/figure.ts';
import type { Side } from '../finding/place.ts';
import { acceptedUnits } from '../quantity/unit-name.ts';
import type { CourseShape, CourseSpec, Wave } from '../rig/course-spec.ts';
import type { Gaps } from './gaps.ts';

/** Flat run before whoops or a ledge when the file says nothing [m]. */
const USUAL_START = 5;

/** The courses of a file. */
export function buildCourses(gaps: Gaps): Readonly<Record<string, CourseSpec>> {
  const courses = gaps.names('courses').flatMap((id): [string, CourseSpec][] => {
    const key = `courses.${id}`;
    const shape = buildShape(gaps, key);
    const spec = { id, speed: gaps.value(`${key}.speed`), notes: gaps.text(`${key}.notes`) ?? '' };
    return shape ? [[id, { ...spec, shape }]] : [];
  });
  return Object.fromEntries(courses);
}

function buildShape(gaps: Gaps, key: string): CourseShape | null {
  const need = (name: string, dimension: Dimension): number => {
    const path = `${key}.${name}`;
    if (gaps.at(path) === undefined) gaps.missing(path, acceptedUnits(dimension));
    return gaps.value(path) ?? 0;
  };
  const start = gaps.value(`${key}.start`) ?? USUAL_START;
  switch (gaps.text(`${key}.kind`)) {
    case 'flat':
      return { kind: 'flat', length: need('length', 'length') };
    case 'whoops':
      return {
        kind: 'whoops',
        height: need('height', 'length'),
        spacing: need('spacing', 'length'),
        count: Number(gaps.text(`${key}.count`) ?? 0),
        start,
        rightPhase: gaps.value(`${key}.rightPhase`) ?? 0,
      };
    case 'ledge':
      return {
        kind: 'ledge',
        side: (gaps.text(`${key}.side`) ?? 'both') as Side | 'both',
        height: need('height', 'length'),
        length: need('length', 'length'),
        start,
      };
    case 'waves':
      return {
        kind: 'waves',
        waves: buildWaves(gaps, `${key}.waves`, need),
        fadeIn: need('fadeIn', 'length'),
        length: need('length', 'length'),
      };
    case 'drop':
      return { kind: 'drop', height: need('height', 'length') };
    default:
      return null;
  }
}

function buildWaves(
  gaps: Gaps,
  key: string,
  need: (name: string, dimension: Dimension) => number,
): readonly Wave[] {
  const waves = gaps.at(key);
  const count = Array.isArray(waves) ? waves.length : 0;
  return Array.from({ length: count }, (_, index): Wave => {
    const at = (name: string) => gaps.value(`${key}.${index}.${name}`) ?? 0;
    return {
      n: need(`waves.${index}.n`, 'wavenumber'),
      common: need(`waves.${index}.common`, 'length'),
      commonPhase: at('commonPhase'),
      own: at('own'),
      leftPhase: at('leftPhase'),
      rightPhase: at('rightPhase'),
    };
  });
}
