import { layOutStudy, type StudyLayout } from '../choose/parts.ts';
import { type SearchProblem, USUAL_LIMITS } from '../choose/problem.ts';
import { indexOf } from '../choose/space.ts';
import { bad, good, type Problem, type Result } from '../finding/problem.ts';
import type { Choices } from '../rig/choices.ts';
import type { Rig } from '../rig/rig.ts';
import { resolvePatch } from '../rig/setup-resolve.ts';
import { travelNeeds } from '../travel/travel.ts';
import { ChoiceJudge } from './choose-judge.ts';
import { objectivesOf } from './choose-objectives.ts';
import { AS_IT_IS, setupPatchOf } from './choose-patch.ts';
import { constraintsOf, stagesOf } from './choose-stages.ts';
import { BEST_SET, type ChoiceTable, choiceTable } from './choose-table.ts';
import { speedProblem } from './driving.ts';

/** The best few setups of a rig, out of what its `choices` list. */
export interface ChooseRequest {
  readonly rig: Rig;
  /** Rigs over the measurement tolerances in which every candidate is driven beside the nominal one. */
  readonly trials: number;
  readonly seed: number;
}

export const USUAL_CHOOSE_TRIALS = 16;
const FEWEST_TRIALS = 4;
const CHOICES_NEEDED =
  'choices of the rig file, for example choices: { front: { stop: { soft: { price: 90 } } }, drive: [{ course: whoops, trim: trail }] }';
const MOST_TRIALS = 512;

/** A study laid out: the same wherever it is opened. */
export interface ChooseStudy {
  readonly request: ChooseRequest;
  readonly choices: Choices;
  readonly table: ChoiceTable;
  readonly problem: SearchProblem;
  readonly layout: StudyLayout;
  readonly judge: ChoiceJudge;
  /** By number: nothing is done; nothing but the settings, null where there is none to choose. */
  readonly doNothing: number;
  readonly onlySettings: number | null;
  /** Each hard change alone, with the best settings. */
  readonly singles: readonly number[];
}

/**
 * Lays out a study.
 * @failure `choose-nothing` without choices; `ask-speed-absurd`; `ask-option`; `rig-needs-reading` for a length without
 * which a part that may go on cannot be placed
 */
export function openStudy(request: ChooseRequest): Result<ChooseStudy> {
  const { rig, trials, seed } = request;
  const { choices } = rig;
  if (choices === null)
    return bad({ code: 'choose-nothing', where: { key: 'choices' }, found: '', accepted: CHOICES_NEEDED });
  const table = choiceTable(choices);
  if (table.space.axes.length === 0)
    return bad({
      code: 'choose-nothing',
      where: { key: 'choices' },
      found: 'no change at either end',
      accepted: CHOICES_NEEDED,
    });
  const problems = problemsOf(rig, choices, table, trials);
  if (problems.length > 0) return bad(...problems);
  const { space } = table;
  const doNothing = indexOf(space, space.home);
  const onlySettings = table.hasSettings ? indexOf(space, space.home.with(0, BEST_SET)) : null;
  // Every single step is in the race, with the best settings: what it buys alone is told, and it beats many that do more.
  const best = table.hasSettings ? space.home.with(0, BEST_SET) : space.home;
  const first = table.hasSettings ? 1 : 0;
  const singles = table.hard.flatMap(({ options }, axis) =>
    options.slice(1).map((_, k) => indexOf(space, best.with(first + axis, k + 1))),
  );
  const judge = new ChoiceJudge({ rig, choices, table, trials, seed });
  const problem: SearchProblem = {
    space,
    objectives: objectivesOf(judge.wants),
    stages: stagesOf(choices, trials),
    constraints: constraintsOf(choices, table),
    trials,
    always: [...new Set([doNothing, ...(onlySettings === null ? [] : [onlySettings]), ...singles])],
    seed,
    limits: USUAL_LIMITS,
  };
  const layout = layOutStudy(problem);
  return good({ request, choices, table, problem, layout, judge, doNothing, onlySettings, singles });
}

function problemsOf(rig: Rig, choices: Choices, table: ChoiceTable, trials: number): readonly Problem[] {
  const problems: Problem[] = [];
  if (!(Number.isInteger(trials) && trials >= FEWEST_TRIALS && trials <= MOST_TRIALS))
    problems.push({
      code: 'ask-option',
      where: { key: 'samples' },
      found: String(trials),
      accepted: `a whole number from ${FEWEST_TRIALS} to ${MOST_TRIALS}`,
    });
  for (const { speed } of choices.drive) problems.push(...speedProblem(speed));
  if (choices.fastest)
    problems.push(...speedProblem(choices.fastest.from), ...speedProblem(choices.fastest.to));
  const tried = [
    [],
    ...table.hard.flatMap((axis) =>
      axis.options.flatMap((option) => (option === null ? [] : [[{ axis, option }]])),
    ),
  ];
  for (const changes of tried) {
    const setup = resolvePatch(rig, setupPatchOf(rig, changes, AS_IT_IS, { id: 'candidate', notes: '' }));
    problems.push(...(setup.ok ? travelNeeds(setup.value) : setup.problems));
  }
  return [...new Map(problems.map((one) => [`${one.code} ${one.where.key} ${one.found}`, one])).values()];
}
