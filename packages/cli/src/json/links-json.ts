import {
  type AxleCurves,
  ENDS,
  type EndLinksAnswer,
  type Figure,
  type KnockOnLine,
  type LinksAnswer,
  linkLineMeaning,
  linkLineName,
  linksMissingText,
  type Rig,
  remedyText,
  STRUT_IDS,
  type StrutCurves,
  type UnitSystem,
} from '@lastinch/core';
import { assumptionsJson, figureJson, findingJson } from './figure-json.ts';
import { flexJson } from './flex-json.ts';

/** The answer of `links --json`: `lastinch/links/1`. SI; keys may be added, none changes its meaning. */
export function linksJson(rig: Rig, answer: LinksAnswer, system: UnitSystem) {
  const lineJson = (line: KnockOnLine) => ({
    id: line.id,
    line: line.of,
    place: line.place,
    part: line.part,
    name: linkLineName(line),
    meaning: linkLineMeaning(line.of),
    before: orNull(line.before),
    after: orNull(line.after),
    change: orNull(line.change),
    limit: orNull(line.limit),
    limitOf: line.limitOf,
    room: orNull(line.room),
    used: line.used,
    kept: line.kept,
    findings: line.findings,
    remedies: line.remedies.map((remedy) => ({ ...remedy, text: remedyText(remedy, { system }) })),
  });
  return {
    schema: 'lastinch/links/1',
    units: 'SI',
    rig: answer.rig,
    setup: answer.setup,
    against: answer.against,
    knockOn: answer.knockOn.map(lineJson),
    steady: answer.steady.map(lineJson),
    ends: endsJson(answer.ends),
    ...(answer.knockOn.length > 0 && { endsBefore: endsJson(answer.endsBefore) }),
    articulation: {
      after: flexJson(answer.articulation.after),
      ...(answer.articulation.before !== answer.articulation.after && {
        before: flexJson(answer.articulation.before),
      }),
    },
    pitch: answer.pitch,
    findings: answer.findings.map((finding) => findingJson(finding, system)),
    missing: answer.missing.map(({ end, what }) => ({ end, what, text: linksMissingText(what) })),
    roadSpeed: answer.roadSpeed,
    assumptions: assumptionsJson(rig),
    sampling: { trials: answer.trials, seed: answer.seed },
  };
}

const orNull = (figure: Figure | null) => figure && figureJson(figure);

const endsJson = (ends: LinksAnswer['ends']) =>
  Object.fromEntries(ENDS.map((end) => [end, ends[end] && endJson(ends[end])]));

/** One end as drawn. Curves: one row a bump, one entry a roll; null where the links do not go. */
function endJson({ geometry, range, curves, shaft, hoses, dragLink }: EndLinksAnswer) {
  return { geometry, range, curves: curvesJson(curves), shaft, hoses, dragLink };
}

function curvesJson(curves: AxleCurves) {
  const width = curves.rolls.length;
  const grid = (values: Float64Array) =>
    Array.from(curves.bumps, (_, i) => Array.from(values.subarray(i * width, (i + 1) * width), finite));
  const strutJson = (of: StrutCurves) =>
    Object.fromEntries(Object.entries(of).map(([name, values]) => [name, grid(values)]));
  const { bumps, rolls, reached, unreachable, struts, ...single } = curves;
  return {
    bumps: [...bumps],
    rolls: [...rolls],
    unreachable,
    ...Object.fromEntries(
      Object.entries(single).map(([name, values]) => [name, values === null ? null : grid(values)]),
    ),
    struts: Object.fromEntries(
      STRUT_IDS.flatMap((id) => {
        const strut = struts[id];
        return strut ? [[id, strutJson(strut)]] : [];
      }),
    ),
  };
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);
