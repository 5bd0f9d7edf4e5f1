import {
  type CriterionSweep,
  criterionName,
  type Rig,
  type SetupSweep,
  type SweepAnswer,
  type UnitSystem,
} from '@lastinch/core';
import { assumptionsJson, findingJson, finite } from './figure-json.ts';

/**
 * The answer of `ride --sweep --json`: `lastinch/sweep/1`. Plain SI numbers; null where nothing is known, and as the
 * upper end of a range that has none because some trials never break.
 */
export function sweepJson(rig: Rig, answer: SweepAnswer, system: UnitSystem) {
  const [asked, against] = answer.setups;
  if (asked === undefined) throw new Error('no setup was swept');
  return {
    schema: 'lastinch/sweep/1',
    units: 'SI',
    rig: answer.rig,
    course: answer.course,
    wantedSpeed: answer.wantedSpeed,
    distancePerDay: answer.distancePerDay,
    seat: answer.seat,
    speeds: answer.speeds,
    step: answer.step,
    refined: answer.refined,
    sampling: { trials: answer.trials, seed: answer.seed, coverage: answer.coverage },
    ...setupJson(asked, system),
    assumptions: assumptionsJson(rig),
    ...(against === undefined ? {} : { against: setupJson(against, system) }),
  };
}

const setupJson = ({ setup, tyres, criteria, findings }: SetupSweep, system: UnitSystem) => ({
  setup,
  tyres,
  criteria: criteria.map(criterionJson),
  findings: findings.map((finding) => findingJson(finding, system)),
});

const criterionJson = (one: CriterionSweep) => ({
  id: one.id,
  name: criterionName(one.id),
  keeps: one.keeps,
  limit: one.limit?.value ?? null,
  first: {
    kind: one.first.kind,
    speed: one.first.speed,
    low: finite(one.first.trials?.low),
    high: finite(one.first.trials?.high),
    neverShare: one.first.neverShare,
    place: one.first.place,
  },
  bands: one.bands,
  states: one.states,
  values: one.values.map(finite),
  low: one.spread.map((ends) => finite(ends?.low)),
  high: one.spread.map((ends) => finite(ends?.high)),
  brokenShare: one.brokenShare,
  comparison: one.against,
});
