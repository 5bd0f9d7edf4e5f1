import type { Comparison, Difference } from '../choose/compare.ts';
import type { Judged } from '../choose/objectives.ts';
import { decidingInputs } from '../choose/rank.ts';
import { type MemberReasons, type Reason, reasonsOf } from '../choose/reasons.ts';
import { readingsOf } from '../rig/readings.ts';
import type { MemberWhy, WhyComparison, WhyDifference, WhyReason } from './choose-answer.ts';
import type { Want } from './choose-objectives.ts';
import { AS_IT_IS } from './choose-patch.ts';
import type { ChooseStudy } from './choose-study.ts';

/** Why each member stands, in terms of what is wanted. */
export function whysOf(
  study: ChooseStudy,
  members: readonly Judged[],
  others: readonly Judged[],
): MemberWhy[] {
  const { judge, problem } = study;
  const readings = readingsOf(judge.setupOf([], AS_IT_IS));
  return reasonsOf(members, others, problem.objectives).map((reasons) => {
    const { rank, limited, against, neighbours } = reasons;
    const comparison = (one: Comparison) => comparisonIn(judge.wants, one);
    return {
      reasons: reasons.reasons.map((reason) => reasonIn(judge.wants, reason)),
      limited: limited && { want: judge.wants[limited.objective], behind: limited.behind, lag: limited.lag },
      against: against.map(comparison),
      neighbours: neighbours.map(comparison),
      held: rank.held,
      trials: rank.trials,
      deciding: decidingOf(study, rank.margins, readings),
    };
  });
}

function decidingOf(
  { judge }: ChooseStudy,
  margins: MemberReasons['rank']['margins'],
  readings: ReturnType<typeof readingsOf>,
): MemberWhy['deciding'] {
  // An exact one has nothing to decide with, and would only make chance likelier.
  const unsure = readings.filter(({ plus, minus }) => plus > 0 || minus > 0);
  return decidingInputs(margins, unsure.length, (input) => judge.draws.scores(unsure[input])).map(
    ({ input, share }) => ({ key: unsure[input].key, share }),
  );
}

function reasonIn(wants: readonly Want[], reason: Reason): WhyReason {
  switch (reason.code) {
    case 'best':
      return { code: 'best', want: wants[reason.objective], next: reason.next };
    case 'best-within':
      return { code: 'best-within', want: wants[reason.objective], within: wants[reason.within] };
    case 'kept-by':
      return { code: 'kept-by', want: wants[reason.objective], rival: reason.rival, by: reason.by };
    default:
      return reason;
  }
}

const comparisonIn = (
  wants: readonly Want[],
  { better, worse, trials, with: other }: Comparison,
): WhyComparison => ({
  with: other,
  better: better.map((one) => differenceIn(wants, one, one.better, one.worse)),
  worse: worse.map((one) => differenceIn(wants, one, one.worse, one.better)),
  trials,
});

const differenceIn = (
  wants: readonly Want[],
  { objective, by }: Difference,
  so: number,
  notSo: number,
): WhyDifference => ({ want: wants[objective], by: Math.abs(by), so, notSo });
