import {
  AS_MEASURED,
  bad,
  type CourseSpec,
  courseText,
  formatValue,
  good,
  type Result,
  type RideAnswer,
  type Rig,
  rideRig,
  type UnitSystem,
  unitsOfRig,
} from '@lastinch/core';
import {
  absurdSpeed,
  type ExitCode,
  knownSetups,
  readRigFile,
  refuse,
  speedAsked,
  tyresAsked,
  unitsAsked,
  unknownName,
} from '../asked.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { progressLine } from '../hosts/progress.ts';
import { rideJson, ridesJson } from '../json/ride-json.ts';
import { exitFor } from '../json/severity.ts';
import { paperFor } from '../terminal/paper.ts';
import { type Ridden, ridesPage } from '../terminal/ride-page.ts';
import { sweep } from './sweep.ts';

export interface RideOptions {
  readonly course?: string;
  readonly speed?: string;
  readonly setup?: string;
  readonly against?: string;
  readonly sweep?: string;
  readonly step?: string;
  readonly tyres?: string;
  readonly units?: string;
  readonly json?: boolean;
}

/** Runs over the measurement tolerances that make the intervals: the half-width itself is then good to about 15 %. */
const TRIALS = 24;
const SEED = 1;

/** For a rig that is let go: it goes down, not along [m/s]. */
const ANY_SPEED = 1;

/** `lastinch ride FILE`: one setup over one course or several, held against another setup if asked. */
export async function ride(file: string, options: RideOptions): Promise<ExitCode> {
  const units = unitsAsked(options.units);
  if (!units.ok) return refuse(units.problems);
  const asked = speedAsked(options.speed);
  if (!asked.ok) return refuse(asked.problems);
  const read = await readRigFile(file);
  if (!read.ok) return refuse(read.problems);
  const rig = read.value;
  const known = knownSetups(rig, [options.setup, options.against]);
  if (!known.ok) return refuse(known.problems);
  const system = units.value ?? unitsOfRig(rig);
  const courses = coursesAsked(rig, options.course, system);
  if (!courses.ok) return refuse(courses.problems);
  const tyres = tyresAsked(options.tyres);
  if (!tyres.ok) return refuse(tyres.problems);
  if (options.sweep !== undefined) {
    const [course, another] = courses.value;
    if (course === undefined || another !== undefined)
      return refuse([
        {
          code: 'ask-option',
          where: { key: '--course' },
          found: options.course ?? '',
          accepted: 'one course together with --sweep',
        },
      ]);
    return sweep(rig, course, { ...options, sweep: options.sweep, tyres: tyres.value }, system);
  }
  if (options.step !== undefined)
    return refuse([
      {
        code: 'ask-option',
        where: { key: '--step' },
        found: options.step,
        accepted: 'a step together with --sweep',
      },
    ]);
  const drives = courses.value.map((course) => driveOf(course, asked.value));
  if (drives.some(({ speed }) => speed === null))
    return refuse([
      {
        code: 'quantity-empty',
        where: { key: '--speed' },
        found: '',
        accepted: '30 mph or 45 km/h, here or as speed of the course in the file',
      },
    ]);

  const setups = [options.setup ?? AS_MEASURED, ...(options.against === undefined ? [] : [options.against])];
  const rides: Ridden[] = [];
  const progress = progressLine(process.stderr);
  for (const [k, { course, driven, speed }] of drives.entries()) {
    const answers: RideAnswer[] = [];
    for (const [index, setup] of setups.entries()) {
      const answer = rideRig(
        {
          rig,
          setup,
          course: course.shape,
          courseName: course.id,
          speed: speed ?? ANY_SPEED,
          historyRate: 0,
          trials: TRIALS,
          seed: SEED,
          tyres: tyres.value,
          distancePerDay: course.perDay,
        },
        (share) => {
          const done = k + (index + share) / setups.length;
          progress.show(`riding ${course.id}`, done / drives.length);
        },
      );
      if (!answer.ok) {
        progress.clear();
        return refuse(
          answer.problems.map((problem) =>
            problem.code === 'ask-speed-absurd'
              ? absurdSpeed(
                  `courses.${course.id}.speed`,
                  formatValue(speed ?? ANY_SPEED, 'speed', { system }),
                )
              : problem,
          ),
        );
      }
      answers.push(answer.value);
    }
    const [answer, against = null] = answers;
    if (answer === undefined) throw new Error('no setup was ridden');
    rides.push({ answer, against, driven, ground: courseText(course.shape, { system }) });
  }
  progress.clear();

  const [only, more] = rides;
  if (only === undefined) throw new Error('no course was ridden');
  if (options.json)
    writeJson(
      more === undefined ? rideJson(rig, only.answer, only.against, system) : ridesJson(rig, rides, system),
    );
  else writeLines(ridesPage(rides, paperFor(process.stdout, process.env, system)));
  return exitFor(rides.flatMap(({ answer }) => answer.findings));
}

/** A rig that is let go knows no speed. */
function driveOf(
  course: CourseSpec,
  asked: number | null,
): { readonly course: CourseSpec; readonly driven: boolean; readonly speed: number | null } {
  const driven = course.shape.kind !== 'drop';
  return { course, driven, speed: driven ? (asked ?? course.speed) : ANY_SPEED };
}

/** The courses of a list of names with commas; without any, the only course that there is. */
function coursesAsked(
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
