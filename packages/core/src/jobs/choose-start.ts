import { type MergeTrouble, mergeAnswers, type Study } from '../choose/merge.ts';
import { unpackAnswer } from '../choose/pack.ts';
import type { PartAnswer } from '../choose/parts.ts';
import type { ChooseAnswer } from './choose-answer.ts';
import { chosenSetup } from './choose-chosen.ts';
import { type ChooseRequest, type ChooseStudy, openStudy } from './choose-study.ts';
import { whysOf } from './choose-why.ts';
import type { Crew } from './crew.ts';
import type { Fold } from './fold.ts';
import { startWork, type Work, type WorkCounters, type WorkOptions, type WorkOutcome } from './run-work.ts';

export interface ChooseOptions extends WorkOptions {
  /** Scouts and parts that were done before: they are not done again. */
  readonly done?: readonly PartAnswer[];
  /** Told of each scout and part as it comes in, to be kept. */
  readonly onPart?: (answer: PartAnswer) => void;
  /** Only the parts p with p mod `of` = `shard`; all when left out. The scouts are everyone's. */
  readonly share?: { readonly shard: number; readonly of: number };
}

/** Scouts and parts of a study, as far as they were asked for. */
export type PartAnswers = readonly PartAnswer[];

/**
 * Judges the scouts of a study and then its parts, by a crew.
 * @invariant the same to the last bit for any crew, shares that are put together, and a study taken up again
 */
export function startChoose(
  request: ChooseRequest,
  crew: Crew,
  options: ChooseOptions = {},
): Work<PartAnswers> {
  let isCancelled = false;
  let now: Work<PartAnswers> | null = null;
  const run = async (): Promise<WorkOutcome<PartAnswers>> => {
    const opened = openStudy(request);
    if (!opened.ok) return { kind: 'refused', problems: opened.problems };
    const { layout } = opened.value;
    const scouts = layout.scouts.length;
    const { done = [], share, onProgress = () => {} } = options;
    const known = new Map(done.map((answer) => [answer.unit, answer]));
    const asked = Array.from({ length: layout.parts }, (_, part) => part).filter(
      (part) => share === undefined || part % share.of === share.shard,
    );
    const whole = scouts + asked.length * PART_COST;
    let counters = NO_WORK;
    const phase = async (
      scouted: readonly PartAnswer[] | null,
      units: readonly number[],
      { from, each }: { readonly from: number; readonly each: number },
    ): Promise<WorkOutcome<PartAnswers>> => {
      const first = scouted === null ? 0 : scouts;
      const numbers = units.filter((number) => !known.has(first + number));
      const before = from + (units.length - numbers.length) * each;
      if (isCancelled) return { kind: 'cancelled', share: before / whole };
      now = startWork(
        { kind: 'choose', request: { request, scouted, numbers } },
        () => foldOf(opened.value, options.onPart),
        crew,
        { onProgress: (part) => onProgress(Math.min(1, (before + part * numbers.length * each) / whole)) },
      );
      const outcome = await now.outcome;
      if (outcome.kind === 'cancelled')
        return { kind: 'cancelled', share: (before + outcome.share * numbers.length * each) / whole };
      if (outcome.kind !== 'done') return outcome;
      counters = added(counters, outcome.counters);
      for (const answer of outcome.answer) known.set(answer.unit, answer);
      const all = units.map((number) => known.get(first + number) as PartAnswer);
      return { kind: 'done', answer: all, counters };
    };
    const every = Array.from({ length: scouts }, (_, scout) => scout);
    const scouted = await phase(null, every, { from: 0, each: 1 });
    if (scouted.kind !== 'done') return scouted;
    const parts = await phase(scouted.answer, asked, { from: scouts, each: PART_COST });
    if (parts.kind !== 'done') return parts;
    return { ...parts, answer: [...scouted.answer, ...parts.answer] };
  };
  return {
    outcome: run(),
    cancel() {
      isCancelled = true;
      now?.cancel();
    },
  };
}

/** About how many scouts a part costs, for the progress. */
const PART_COST = 20;

const NO_WORK: WorkCounters = { units: 0, stretches: 0, mostWaiting: 0, workers: 0 };
const added = (a: WorkCounters, b: WorkCounters): WorkCounters => ({
  units: a.units + b.units,
  stretches: a.stretches + b.stretches,
  mostWaiting: Math.max(a.mostWaiting, b.mostWaiting),
  workers: a.workers + b.workers,
});

function foldOf({ problem }: ChooseStudy, onPart?: (answer: PartAnswer) => void): Fold<PartAnswers> {
  const answers: PartAnswer[] = [];
  return {
    take(rows, at) {
      const answer = unpackAnswer(problem, rows, at);
      answers.push(answer);
      onPart?.(answer);
    },
    finish: () => answers,
  };
}

/** Everything that a study found, in the words of its rig; or which units nobody did. */
export function chooseAnswer(study: ChooseStudy, answers: PartAnswers): ChooseAnswer | MergeTrouble {
  const merged = mergeAnswers(study.problem, study.layout, answers);
  return 'missing' in merged ? merged : answerOf(study, merged);
}

function answerOf(study: ChooseStudy, { why, tally, members, always }: Study): ChooseAnswer {
  const { request, choices, problem, layout, judge, doNothing, onlySettings, singles } = study;
  const front = new Set(members.map(({ index }) => index));
  const told = (index: number | null) => {
    const judged = always.find((one) => one.index === index);
    return judged ? chosenSetup(study, judged, front.has(judged.index)) : null;
  };
  const whys = whysOf(
    study,
    members,
    always.filter(({ index }) => index === doNothing || index === onlySettings),
  );
  return {
    rig: request.rig.name,
    from: choices.from,
    money: choices.money,
    trials: request.trials,
    seed: request.seed,
    wants: judge.wants,
    members: members.map((member, k) => ({
      ...chosenSetup(study, member, true),
      alike: member.alike,
      why: whys[k],
    })),
    doNothing: told(doNothing),
    onlySettings: told(onlySettings),
    singles: singles.flatMap((index) => told(index) ?? []),
    tally: {
      candidates: layout.count,
      seen: tally.seen,
      judged: tally.judged,
      discarded: problem.stages.map((stage, k) => ({ stage, candidates: tally.discarded[k] })),
      barred: tally.barred,
      barredBy: problem.constraints.map((constraint, k) => ({
        constraint,
        candidates: tally.barredBy[k],
        alone: tally.barredAloneBy[k],
      })),
    },
    why,
  };
}
