import {
  type AssumptionRule,
  ENDS,
  type KnockOnLine,
  type LinksAnswer,
  linkLineName,
  linksMissingText,
  needle,
  PLACE_NAMES,
  type Rig,
  remedyText,
  type Severity,
} from '@lastinch/core';
import { curveLines } from './curve-lines.ts';
import { flexLines } from './flex-lines.ts';
import { changeTable, stateTable } from './knock-on-table.ts';
import { wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { assumptionLines, cautionLines, findingLines, section } from './sections.ts';

/** The whole answer of `links` in lines for a terminal: verdict, knock-on list, findings, curves, what is missing, cautions. */
export function linksPage(rig: Rig, answer: LinksAnswer, paper: Paper): string[] {
  const { setup, against, knockOn, steady, findings } = answer;
  const beside = against !== null && against !== setup;
  const title = `${answer.rig}: links and what moves with them, ${setup}${beside ? `, held against ${against}` : ''}`;
  const broken = steady.filter(({ kept }) => kept !== null && kept !== 'fine');
  return [
    ...wrap(title, paper).map(paper.ink.heading),
    ...verdictLines(answer, paper),
    ...(beside && knockOn.length > 0
      ? [
          ...section('KNOCK-ON LIST, nearest to its limit first', changeTable(knockOn, paper), paper),
          ...section('STAYS AS IT WAS, and its limit is not kept', stateTable(broken, paper), paper),
        ]
      : section('AS IT STANDS, nearest to its limit first', stateTable(steady, paper), paper)),
    ...section(
      'WHAT TO DO BESIDE THE FINDINGS',
      remedyLines(knockOn.length > 0 ? [...knockOn, ...broken] : steady, answer, paper),
      paper,
    ),
    ...section('FINDINGS', findingLines(findings, paper), paper),
    ...section('FLEX: one wheel up, the other down', flexLines(answer, paper), paper),
    ...ENDS.flatMap((end) => {
      const drawn = answer.ends[end];
      const head = `${PLACE_NAMES[end].toUpperCase()} AXLE OVER ITS TRAVEL, both wheels alike, readings as they are`;
      return drawn === null ? [] : section(head, curveLines(drawn, end, paper), paper);
    }),
    ...section('NOT MEASURED, so left out', missingLines(answer, paper), paper),
    ...section(
      'ASSUMED, because it was not measured',
      assumptionLines(
        rig.assumptions.filter(({ rule }) => !ELSEWHERE.has(rule)),
        paper,
      ),
      paper,
    ),
    ...section('CAUTIONS', [...linkCautions(paper), ...cautionLines(paper)], paper),
  ];
}

/** Assumptions that bear on a ride and on nothing here; `check` tells them all. */
const ELSEWHERE: ReadonlySet<AssumptionRule> = new Set<AssumptionRule>([
  'metal-rate',
  'seat-limit',
  'stop-rate-factor',
  'stop-curve-power',
  'no-rate-factor',
  'shock-damping-ratio',
  'shock-hand-push',
  'tyre-damping',
  'axle-roll-inertia',
  'body-inertia',
]);

/** What to know before anything else. */
function verdictLines(answer: LinksAnswer, paper: Paper): string[] {
  const { knockOn, steady, against, setup, findings, roadSpeed } = answer;
  const beside = against !== null && against !== setup;
  const count = (wanted: Severity): number => findings.filter(({ severity }) => severity === wanted).length;
  const counted = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;
  const [over, open] = [count('over'), count('unproven')];
  const said: string[] = [];
  if (over > 0) {
    const more = open > 0 ? `, ${open} more ${open === 1 ? 'is' : 'are'} open` : '';
    said.push(
      `${beside ? 'Do not build it like this: ' : ''}${counted(over, 'finding is', 'findings are')} over a limit${more}.`,
    );
  } else if (open > 0)
    said.push(`No limit is broken for certain; ${counted(open, 'finding is', 'findings are')} open.`);
  else said.push('No limit is broken.');
  if (beside)
    said.push(
      knockOn.length === 0
        ? `Nothing changes against ${against}.`
        : `${counted(knockOn.length, 'line changes', 'lines change')}, ${steady.length} stay.`,
    );
  const [first] = [...knockOn, ...steady]
    .filter(({ used, kept }) => used !== null && kept !== 'fine')
    .sort((a, b) => (b.used ?? 0) - (a.used ?? 0));
  if (first) said.push(`Furthest beyond its limit: ${linkLineName(first)}.`);
  const from = { asked: 'as asked', course: 'the fastest of your courses', usual: 'usual, nobody said' };
  said.push(`Shafts are judged at ${needle(roadSpeed.speed, paper.system)} (${from[roadSpeed.from]}).`);
  return wrap(
    said.join(' ').replace(/^./, (letter) => letter.toUpperCase()),
    paper,
    '  ',
  );
}

/** What helps a line, where no finding says it. */
function remedyLines(lines: readonly KnockOnLine[], { findings }: LinksAnswer, paper: Paper): string[] {
  const told = new Set(findings.flatMap(({ remedies }) => remedies.map(({ code }) => code)));
  return lines.flatMap((line) => {
    const own = line.remedies.filter(({ code }) => !told.has(code));
    if (own.length === 0) return [];
    return [
      ...wrap(`${linkLineName(line)}:`, paper, '  '),
      ...own.flatMap((remedy) => wrap(remedyText(remedy, paper), paper, '    → ')),
    ];
  });
}

const missingLines = ({ missing }: LinksAnswer, paper: Paper): string[] => [
  ...missing.flatMap(({ end, what }) =>
    wrap(`${PLACE_NAMES[end]} ${linksMissingText(what)}.`, paper, '  ~ '),
  ),
  ...(missing.length > 0
    ? wrap('How to measure them with tape and level: docs/guide/measuring-links.md.', paper, '      ')
    : []),
];

const CAUTIONS = [
  'Brake hoses and lines: length, routing, retention and a pressure test are for a person qualified under your local rules, before the rig is driven. This program never signs them off.',
  'Steering and links: have joints, welds and mounts inspected. Turn lock to lock at full bump, full droop and full flex, springs out, before anything is driven.',
  'How far a rig may be raised, and what has to be certified after, is set by the law where you drive; nothing here says that it is allowed.',
];
const linkCautions = (paper: Paper): string[] => CAUTIONS.flatMap((caution) => wrap(caution, paper, '  ! '));
