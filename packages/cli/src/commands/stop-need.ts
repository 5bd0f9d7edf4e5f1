import { AS_MEASURED, type End } from '@lastinch/core';
import { type Demand, STOP_TRIALS, type StopNeed, stopNeed } from '@lastinch/core/stops';
import { absurdSpeed, type ExitCode, refuse, rigAsked } from '../asked.ts';
import { coursesAsked, driveOf, SPEED_MISSING } from '../courses-asked.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { progressLine } from '../hosts/progress.ts';
import { stopNeedJson } from '../json/stop-need-json.ts';
import { paperFor } from '../terminal/paper.ts';
import { stopNeedPage } from '../terminal/stop-need-page.ts';

export interface StopNeedOptions {
  readonly end: string;
  readonly course?: string;
  readonly speed?: string;
  readonly setup?: string;
  readonly units?: string;
  readonly json?: boolean;
}

const SEED = 1;

/** `lastinch stop need FILE`: the curve that an end needs, and what each stop of the rig does there. */
export async function stopNeeded(file: string, options: StopNeedOptions): Promise<ExitCode> {
  const end = endAsked(options.end);
  if (end === null)
    return refuse([
      { code: 'ask-option', where: { key: '--end' }, found: options.end, accepted: 'front, rear' },
    ]);
  const asked = await rigAsked(file, options, [options.setup]);
  if (!asked.ok) return refuse(asked.problems);
  const { rig, system } = asked.value;
  const courses = coursesAsked(rig, options.course, system);
  if (!courses.ok) return refuse(courses.problems);
  const demands: Demand[] = [];
  for (const each of courses.value) {
    const { course, speed } = driveOf(each, asked.value.speed);
    if (speed === null) return refuse([SPEED_MISSING]);
    demands.push({ name: course.id, course: course.shape, speed });
  }

  const progress = progressLine(process.stderr);
  const answer = stopNeed(
    { rig, setup: options.setup ?? AS_MEASURED, end, demands, trials: STOP_TRIALS, seed: SEED },
    (share) => progress.show('driving stops', share),
  );
  progress.clear();
  if (!answer.ok)
    return refuse(
      answer.problems.map((one) =>
        one.code === 'ask-speed-absurd' ? absurdSpeed('courses', one.found) : one,
      ),
    );
  if (options.json) writeJson(stopNeedJson(rig, answer.value, system));
  else writeLines(stopNeedPage(answer.value, paperFor(process.stdout, process.env, system)));
  return presentFails(answer.value) ? 1 : 0;
}

const endAsked = (text: string): End | null => (text === 'front' || text === 'rear' ? text : null);

/** Whether the stop that is on the end breaks a limit of the owner. */
const presentFails = ({ candidates }: StopNeed): boolean =>
  candidates.some((one) => 'verdict' in one && one.isInSetup && one.broken.length > 0);
