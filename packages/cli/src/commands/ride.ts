import { AS_MEASURED, courseText, formatValue, type RideAnswer, rideRig } from '@lastinch/core';
import { absurdSpeed, type ExitCode, refuse, rigAsked, tyresAsked } from '../asked.ts';
import { ANY_SPEED, coursesAsked, driveOf, SPEED_MISSING } from '../courses-asked.ts';
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

/** `lastinch ride FILE`: one setup over one course or several, held against another setup if asked. */
export async function ride(file: string, options: RideOptions): Promise<ExitCode> {
  const asked = await rigAsked(file, options, [options.setup, options.against]);
  if (!asked.ok) return refuse(asked.problems);
  const { rig, system } = asked.value;
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
  const drives = courses.value.map((course) => driveOf(course, asked.value.speed));
  if (drives.some(({ speed }) => speed === null)) return refuse([SPEED_MISSING]);

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
