import {
  AS_MEASURED,
  bad,
  type End,
  good,
  type Problem,
  type Result,
  type Rig,
  type UnitSystem,
} from '@lastinch/core';
import type { Demand } from '@lastinch/core/stops';
import { absurdSpeed, rigAsked } from './asked.ts';
import { coursesAsked, driveOf, SPEED_MISSING } from './courses-asked.ts';

/** Options that tell one end of a rig and what it must meet. */
export interface BandOptions {
  readonly end?: string;
  readonly course?: string;
  readonly speed?: string;
  readonly setup?: string;
  readonly units?: string;
}

export interface BandOfRig {
  readonly rig: Rig;
  readonly system: UnitSystem;
  readonly setup: string;
  readonly end: End;
  readonly demands: readonly Demand[];
}

/** The rig, the end and the courses that a stop is asked for. */
export async function bandAsked(file: string, options: BandOptions): Promise<Result<BandOfRig>> {
  const { end } = options;
  if (end !== 'front' && end !== 'rear')
    return bad({ code: 'ask-option', where: { key: '--end' }, found: end ?? '', accepted: 'front, rear' });
  const asked = await rigAsked(file, options, [options.setup]);
  if (!asked.ok) return asked;
  const { rig, system } = asked.value;
  const courses = coursesAsked(rig, options.course, system);
  if (!courses.ok) return courses;
  const demands: Demand[] = [];
  for (const each of courses.value) {
    const { course, speed } = driveOf(each, asked.value.speed);
    if (speed === null) return bad(SPEED_MISSING);
    demands.push({ name: course.id, course: course.shape, speed });
  }
  return good({ rig, system, setup: options.setup ?? AS_MEASURED, end, demands });
}

/** A speed that no rig is driven at is one of a course: where it was typed there is no other way to it. */
export const bandProblems = (problems: readonly Problem[]): readonly Problem[] =>
  problems.map((one) => (one.code === 'ask-speed-absurd' ? absurdSpeed('courses', one.found) : one));
