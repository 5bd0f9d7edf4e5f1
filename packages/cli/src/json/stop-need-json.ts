import { problemText, type Rig, type UnitSystem } from '@lastinch/core';
import {
  candidateText,
  curesText,
  DAMPING_GAIN,
  lifeText,
  MOST_ROOM,
  type StopCandidate,
  type StopNeed,
  type UnknownCandidate,
} from '@lastinch/core/stops';
import { assumptionsJson, figureJson } from './figure-json.ts';

/** The answer of `stop need --json`: `lastinch/stop-need/1`. SI numbers; the words of the page beside them. */
export function stopNeedJson(rig: Rig, need: StopNeed, system: UnitSystem) {
  const { body, bracket, keep } = need.limits;
  return {
    schema: 'lastinch/stop-need/1',
    units: 'SI',
    rig: need.rig,
    setup: need.setup,
    end: need.end,
    demands: need.demands,
    room: need.room,
    limits: { body: body.value, bracket: bracket?.value ?? null, keep: keep.value },
    band: need.crush.map((crush, i) => ({ crush, least: need.least[i], most: need.most[i] })),
    families: need.families,
    cures: need.cures && {
      ...need.cures,
      text: curesText(need.cures, need.demands, { system, most: { room: MOST_ROOM, damping: DAMPING_GAIN } }),
    },
    candidates: need.candidates.map((one) => candidateJson(one, need, system)),
    life: need.life.map((one) => ({ ...one, text: lifeText(one, system) })),
    assumptions: assumptionsJson(rig),
  };
}

function candidateJson(one: StopCandidate | UnknownCandidate, { limits }: StopNeed, system: UnitSystem) {
  const text = candidateText(one, { limits, system });
  if ('problems' in one)
    return { id: one.id, verdict: 'unknown', problems: one.problems.map(problemText), text };
  const { spare, body, force, crush, ...rest } = one;
  return {
    ...rest,
    spare: figureJson(spare),
    body: figureJson(body),
    force: figureJson(force),
    crush: figureJson(crush),
    text,
  };
}
