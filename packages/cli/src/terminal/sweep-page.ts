import {
  criterionName,
  firstBreakText,
  needle,
  pathsText,
  roughSpeed,
  type SweepAnswer,
  seatText,
  tyreFootText,
} from '@lastinch/core';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { cautionLines, findingLines, section } from './sections.ts';
import { stripLines } from './sweep-strips.ts';

/** The whole answer of `ride --sweep` in lines for a terminal. @param ground – the course in words */
export function sweepPage(answer: SweepAnswer, ground: string, paper: Paper): string[] {
  const { speeds, setups } = answer;
  const [slowest, fastest] = [speeds[0] ?? 0, speeds[speeds.length - 1] ?? 0];
  const names = setups.map(({ setup }) => setup).join(', held against ');
  const title = `${answer.rig}: how fast may ${names} go over ${answer.course}, ${needle(slowest, paper.system)} to ${needle(fastest, paper.system)}`;
  return [
    ...wrap(title, paper).map(paper.ink.heading),
    ...wrap(`${answer.course}: ${ground}.`, paper, '  '),
    ...section('FIRST BROKEN AT', firstBreaks(answer, fastest, paper), paper),
    ...section('AT EACH SPEED', stripLines(answer, paper), paper),
    ...setups.flatMap(({ setup, findings }) =>
      section(setups.length > 1 ? `FINDINGS: ${setup}` : 'FINDINGS', findingLines(findings, paper), paper),
    ),
    ...section('HOW FAR TO TRUST THIS', trustLines(answer, paper), paper),
    ...section('CAUTIONS', cautionLines(paper), paper),
  ];
}

/** Two rows a criterion: the speed, and below it what is known of it; one column a setup. */
function firstBreaks({ setups }: SweepAnswer, fastest: number, paper: Paper): string[] {
  const criteria = setups[0]?.criteria ?? [];
  const rows = criteria.flatMap(({ id, limit }, k) => {
    const said = setups.map(({ criteria: of }) => {
      const one = of[k];
      return one === undefined ? null : firstBreakText(one.first, { system: paper.system, fastest });
    });
    const name = capital(criterionName(id));
    const speeds = { name, cells: said.map((text) => text?.speed ?? '') };
    return limit === null
      ? [speeds]
      : [speeds, { name: '  within readings', cells: said.map((text) => text?.within ?? '') }];
  });
  return tableLines({ heads: setups.map(({ setup }) => setup), rows }, paper);
}

function trustLines(answer: SweepAnswer, paper: Paper): string[] {
  const { step, refined, trials, coverage, setups } = answer;
  const lines = [
    `Driven every ${roughSpeed(step, paper.system)}; a stretch of speeds narrower than that can be missed. Where something changes is known to ${roughSpeed(refined, paper.system)}.`,
    trials === 0
      ? 'No trials over the tolerances of the readings: the ranges are unknown.'
      : `Within readings: ${trials} rigs drawn from the tolerances of the readings were driven at all speeds; the range covers ${Math.round(100 * coverage)} in 100 of such rigs on average.`,
    ...setups.map(({ setup, tyres }) => `${setup}: ${tyreFootText(tyres, paper)}.`),
    ...setups.map(({ setup, paths }) => `${setup}: ${pathsText(paths)}.`),
    seatText(answer.seat),
    ...comparisons(setups),
  ];
  return lines.flatMap((line) => wrap(line, paper, '  '));
}

/** In how many of the same trial rigs one setup goes faster than the other. */
function comparisons(setups: SweepAnswer['setups']): string[] {
  const [asked, other] = setups;
  if (asked === undefined || other === undefined) return [];
  const said = asked.criteria.flatMap(({ id, against }) =>
    against === null || against.faster + against.slower === 0
      ? []
      : [
          `${criterionName(id)} ${Math.round(100 * against.faster)} faster, ${Math.round(100 * against.slower)} slower`,
        ],
  );
  return said.length === 0
    ? []
    : [`Of 100 rigs, the same in both setups, ${asked.setup} breaks later or sooner: ${said.join('; ')}.`];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
