import {
  bad,
  type CourseSpec,
  courseText,
  good,
  type Problem,
  type Result,
  type Rig,
  type UnitSystem,
} from '@lastinch/core';
import { unknownName } from './asked.ts';

/** For a rig that is let go: it goes down, not along [m/s]. */
export const ANY_SPEED = 1;

/** A course that nobody gave a speed for. */
export const SPEED_MISSING: Problem = {
  code: 'quantity-empty',
  where: { key: '--speed' },
  found: '',
  accepted: '30 mph or 45 km/h, here or as speed of the course in the file',
};

/** A rig that is let go knows no speed. */
export function driveOf(
  course: CourseSpec,
  asked: number | null,
): { readonly course: CourseSpec; readonly driven: boolean; readonly speed: number | null } {
  const driven = course.shape.kind !== 'drop';
  return { course, driven, speed: driven ? (asked ?? course.speed) : ANY_SPEED };
}

/** The courses of a list of names with commas; without any, the only course that there is. */
export function coursesAsked(
  rig: Rig,
  names: string | undefined,
  system: UnitSystem,
): Result<readonly CourseSpec[]> {
  // A name that holds a comma itself is one course.
  const split = names === undefined || Object.hasOwn(rig.courses, names) ? [names] : names.split(',');
  const asked = split.map((name) => courseAsked(rig, name?.trim(), system));
  const problems = asked.flatMap((each) => (each.ok ? [] : each.problems));
  if (problems.length > 0) return bad(...problems);
  return good([...new Set(asked.flatMap((each) => (each.ok ? [each.value] : [])))]);
}

/** The course of that name; without one, the only course that there is. */
function courseAsked(rig: Rig, name: string | undefined, system: UnitSystem): Result<CourseSpec> {
  const known = Object.values(rig.courses);
  if (name === undefined) {
    const [only] = known;
    if (only !== undefined && known.length === 1) return good(only);
    return bad({
      code: 'quantity-empty',
      where: { key: '--course' },
      found: '',
      accepted:
        known.map(({ id, shape }) => `${id} (${courseText(shape, { system })})`).join('; ') ||
        'none, the file has none yet',
    });
  }
  const course = Object.hasOwn(rig.courses, name) ? rig.courses[name] : undefined;
  return course === undefined
    ? bad(unknownName('ask-unknown-course', name, Object.keys(rig.courses)))
    : good(course);
}
