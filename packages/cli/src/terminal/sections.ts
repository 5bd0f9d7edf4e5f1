import {
  type Assumption,
  type Finding,
  findingText,
  groupedAssumptions,
  PLACE_NAMES,
  remedyText,
  type Severity,
} from '@lastinch/core';
import { CAUTIONS } from './cautions.ts';
import { wrap } from './lines.ts';
import type { Paper } from './paper.ts';

/** One part of a page: a heading and what stands under it. Nothing when there is nothing to say. */
export const section = (heading: string, lines: readonly string[], paper: Paper): string[] =>
  lines.length === 0 ? [] : ['', ...wrap(heading, paper).map(paper.ink.heading), ...lines];

const TAGS: Readonly<Record<Severity, string>> = {
  over: 'OVER',
  unproven: 'OPEN',
  note: 'NOTE',
  fine: 'FINE',
};

/**
 * Each finding as its sentence, with what can be done about it. What is true of several places in the same words is
 * said once, with all of them at its head.
 */
export function findingLines(findings: readonly Finding[], paper: Paper): string[] {
  const { system, ink } = paper;
  const groups = new Map<string, { first: Finding; remedies: string[]; places: string[] }>();
  for (const finding of findings) {
    const remedies = finding.remedies.map((remedy) => remedyText(remedy, { system }));
    const said = findingText(finding, { system, place: false });
    const id = JSON.stringify([finding.severity, said, remedies]);
    const group = groups.get(id);
    if (group) group.places.push(PLACE_NAMES[finding.place]);
    else groups.set(id, { first: finding, remedies, places: [PLACE_NAMES[finding.place]] });
  }
  return [...groups.values()].flatMap(({ first, remedies, places }) => {
    const head = `${PLACE_NAMES[first.place]}:`;
    const text = findingText(first, { system }).replace(head, () => `${places.join(', ')}:`);
    const tag = TAGS[first.severity];
    const [line = '', ...rest] = wrap(text, paper, `  ${tag}  `);
    return [
      line.replace(tag, () => ink.severity(first.severity, tag)),
      ...rest,
      ...remedies.flatMap((remedy) => wrap(remedy, paper, '        → ')),
    ];
  });
}

/** How many names stand behind one assumption before the rest is only counted. `--json` has them all. */
const NAMES = 6;

/** What the program took instead of a reading, grouped by what was taken, and how to measure it. */
export function assumptionLines(assumptions: readonly Assumption[], paper: Paper): string[] {
  return groupedAssumptions(assumptions).flatMap(({ what, howToMeasure, names }) => {
    const shown = names.slice(0, NAMES).join(', ');
    const more = names.length > NAMES ? ` and ${names.length - NAMES} more` : '';
    return [
      ...wrap(what, paper, '  ~ '),
      ...wrap(`For: ${shown}${more}.`, paper, '      '),
      ...wrap(`To measure: ${howToMeasure}`, paper, '      '),
    ];
  });
}

export const cautionLines = (paper: Paper, cautions: readonly string[] = CAUTIONS): string[] =>
  cautions.flatMap((caution) => wrap(caution, paper, '  ! '));
