import { AS_MEASURED, parseQuantity } from '@lastinch/core';
import { BRACKET_TRIALS, checkBrackets } from '@lastinch/core/bracket';
import type { Demand } from '@lastinch/core/stops';
import { absurdSpeed, type ExitCode, refuse, rigAsked } from '../asked.ts';
import { coursesAsked, driveOf, SPEED_MISSING } from '../courses-asked.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { progressLine } from '../hosts/progress.ts';
import { bracketJson } from '../json/bracket-json.ts';
import { exitFor } from '../json/severity.ts';
import { bracketPage } from '../terminal/bracket-page.ts';
import { paperFor } from '../terminal/paper.ts';

export interface BracketOptions {
  readonly course?: string;
  readonly speed?: string;
  readonly setup?: string;
  readonly force?: string;
  readonly units?: string;
  readonly json?: boolean;
}

const SEED = 1;

/** `lastinch bracket FILE`: whether what carries stops, springs and shocks holds. */
export async function bracket(file: string, options: BracketOptions): Promise<ExitCode> {
  const asked = await rigAsked(file, options, [options.setup]);
  if (!asked.ok) return refuse(asked.problems);
  const { rig, system } = asked.value;
  const force =
    options.force === undefined ? null : parseQuantity(options.force, 'force', { key: '--force' });
  if (force !== null && !force.ok) return refuse(force.problems);
  if (force !== null && force.value.value <= 0)
    return refuse([
      {
        code: 'ask-option',
        where: { key: '--force' },
        found: options.force ?? '',
        accepted: 'more than zero',
      },
    ]);
  const demands: Demand[] = [];
  if (force === null) {
    const courses = coursesAsked(rig, options.course, system);
    if (!courses.ok) return refuse(courses.problems);
    for (const each of courses.value) {
      const { course, speed } = driveOf(each, asked.value.speed);
      if (speed === null) return refuse([SPEED_MISSING]);
      demands.push({ name: course.id, course: course.shape, speed });
    }
  }
  const progress = progressLine(process.stderr);
  const answer = checkBrackets(
    {
      rig,
      setup: options.setup ?? AS_MEASURED,
      demands,
      trials: BRACKET_TRIALS,
      seed: SEED,
      force: force === null ? null : force.value.value,
    },
    (share) => progress.show('loading brackets', share),
  );
  progress.clear();
  if (!answer.ok)
    return refuse(
      answer.problems.map((one) =>
        one.code === 'ask-speed-absurd' ? absurdSpeed('courses', one.found) : one,
      ),
    );
  if (options.json) writeJson(bracketJson(rig, answer.value, system));
  else writeLines(bracketPage(answer.value, paperFor(process.stdout, process.env, system)));
  return exitFor(answer.value.findings);
}
