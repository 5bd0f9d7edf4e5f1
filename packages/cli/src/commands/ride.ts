import {
  AS_MEASURED,
  bad,
  type CourseSpec,
  courseText,
  good,
  type Result,
  type RideAnswer,
  type Rig,
  rideRig,
  type UnitSystem,
  unitsOfRig,
} from '@lastinch/core';
import {
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
import { rideJson } from '../json/ride-json.ts';
import { exitFor } from '../json/severity.ts';
import { paperFor } from '../terminal/paper.ts';
import { ridePage } from '../terminal/ride-page.ts';
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

/** `lastinch ride FILE`: one setup over a course, held against another one if asked. */
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
  const course = courseAsked(rig, options.course, system);
  if (!course.ok) return refuse(course.problems);
  const tyres = tyresAsked(options.tyres);
  if (!tyres.ok) return refuse(tyres.problems);
  if (options.sweep !== undefined)
    return sweep(rig, course.value, { ...options, sweep: options.sweep, tyres: tyres.value }, system);
  if (options.step !== undefined)
    return refuse([
      {
        code: 'ask-option',
        where: { key: '--step' },
        found: options.step,
        accepted: 'a step together with --sweep',
      },
    ]);
  const driven = course.value.shape.kind !== 'drop';
  const speed = driven ? (asked.value ?? course.value.speed) : ANY_SPEED;
  if (speed === null)
    return refuse([
      {
        code: 'quantity-empty',
        where: { key: '--speed' },
        found: '',
        accepted: '30 mph or 45 km/h, here or as speed of the course in the file',
      },
    ]);

  const setups = [options.setup ?? AS_MEASURED, ...(options.against === undefined ? [] : [options.against])];
  const answers: RideAnswer[] = [];
  const progress = progressLine(process.stderr);
  for (const [index, setup] of setups.entries()) {
    const answer = rideRig(
      {
        rig,
        setup,
        course: course.value.shape,
        courseName: course.value.id,
        speed,
        historyRate: 0,
        trials: TRIALS,
        seed: SEED,
        tyres: tyres.value,
      },
      (share) => progress.show(`riding ${course.value.id}`, (index + share) / setups.length),
    );
    if (!answer.ok) {
      progress.clear();
      return refuse(answer.problems);
    }
    answers.push(answer.value);
  }
  progress.clear();

  const [answer, against = null] = answers;
  if (answer === undefined) throw new Error('no setup was ridden');
  if (options.json) writeJson(rideJson(rig, answer, against, system));
  else {
    const ground = courseText(course.value.shape, { system });
    const paper = paperFor(process.stdout, process.env, system);
    writeLines(ridePage(answer, against, { driven, ground }, paper));
  }
  return exitFor(answer.findings);
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
