import {
  AS_MEASURED,
  type CourseSpec,
  courseText,
  type Problem,
  parseQuantity,
  parseSpeedRange,
  type Rig,
  type SweepRequest,
  startSweep,
  TRIALS_FOR_COVERAGE,
  type TyreFeel,
  type UnitSystem,
  usualStep,
} from '@lastinch/core';
import { type ExitCode, refuse } from '../asked.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { progressLine } from '../hosts/progress.ts';
import { crewHere } from '../hosts/worker-threads.ts';
import { exitFor } from '../json/severity.ts';
import { sweepJson } from '../json/sweep-json.ts';
import { paperFor } from '../terminal/paper.ts';
import { sweepPage } from '../terminal/sweep-page.ts';

export interface SweepOptions {
  readonly sweep: string;
  readonly step?: string;
  readonly speed?: string;
  readonly setup?: string;
  readonly against?: string;
  readonly tyres: TyreFeel;
  readonly json?: boolean;
}

const SEED = 1;

/** `lastinch ride FILE --sweep A..B`: the speed at which each criterion is first broken. */
export async function sweep(
  rig: Rig,
  course: CourseSpec,
  options: SweepOptions,
  system: UnitSystem,
): Promise<ExitCode> {
  const range = parseSpeedRange(options.sweep, { key: '--sweep' });
  const step = options.step === undefined ? null : parseQuantity(options.step, 'speed', { key: '--step' });
  const both: Problem[] =
    options.speed === undefined
      ? []
      : [
          {
            code: 'ask-option',
            where: { key: '--speed' },
            found: options.speed,
            accepted: 'either --speed or --sweep',
          },
        ];
  if (!range.ok || (step !== null && !step.ok) || both.length > 0)
    return refuse([
      ...(range.ok ? [] : range.problems),
      ...(step === null || step.ok ? [] : step.problems),
      ...both,
    ]);
  const { from, to } = range.value;
  const request: SweepRequest = {
    rig,
    setups: [options.setup ?? AS_MEASURED, ...(options.against === undefined ? [] : [options.against])],
    course: course.shape,
    courseName: course.id,
    wantedSpeed: course.speed,
    distancePerDay: course.perDay,
    from,
    to,
    step: step === null ? usualStep(from, to) : step.value.value,
    trials: TRIALS_FOR_COVERAGE,
    seed: SEED,
    tyres: options.tyres,
  };

  const crew = crewHere();
  const progress = progressLine(process.stderr);
  const outcome = await startSweep(request, crew, {
    onProgress: (share) => progress.show(`sweeping ${course.id}`, share),
  }).outcome;
  progress.clear();
  crew.close();
  if (outcome.kind === 'refused') return refuse(outcome.problems.map((problem) => asTyped(problem, options)));
  if (outcome.kind !== 'done')
    throw new Error(
      `the sweep was ${outcome.kind}${outcome.kind === 'broken' ? `: ${outcome.message}` : ''}`,
    );

  const { answer } = outcome;
  if (options.json) writeJson(sweepJson(rig, answer, system));
  else {
    const ground = courseText(course.shape, { system });
    writeLines(sweepPage(answer, ground, paperFor(process.stdout, process.env, system)));
  }
  return exitFor(answer.setups[0]?.findings ?? []);
}

/** What is wrong with the range, in the words in which it was asked. */
function asTyped(problem: Problem, options: SweepOptions): Problem {
  if (problem.code === 'ask-sweep-range')
    return { ...problem, where: { key: '--sweep' }, found: options.sweep.trim() };
  if (problem.code === 'ask-sweep-step' && options.step !== undefined)
    return { ...problem, where: { key: '--step' }, found: options.step.trim() };
  return problem;
}
