import type { CheckComparison, CheckResult, Rig } from '@lastinch/core';
import { columnsText } from '@lastinch/picture';
import { changeLines } from './change-lines.ts';
import { contactTables } from './contact-tables.ts';
import { wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { assumptionLines, cautionLines, findingLines, section } from './sections.ts';
import { stanceTable } from './stance-table.ts';

/**
 * The whole answer of `check` in lines for a terminal: the drawing first, then what it means, then what it rests on.
 * In the drawing, A is the setup that is held against and B the one that was asked for.
 */
export function checkPage(
  rig: Rig,
  result: CheckResult,
  comparison: CheckComparison | null,
  paper: Paper,
): string[] {
  const { ink } = paper;
  const against = comparison?.before ?? null;
  const title = `${result.rig}: ${result.setup}${against === null ? '' : ` (B), held against ${against.setup} (A)`}`;
  const drawing = columnsText(result.travel, {
    ...paper,
    ...(against === null ? {} : { against: against.travel }),
  });
  const both = against === null ? [result] : [result, against];
  const ofSetup = (heading: string, { setup }: CheckResult): string =>
    against === null ? heading : `${heading}: ${setup}`;
  return [
    ...wrap(title, paper).map(ink.heading),
    '',
    ...drawing.split('\n'),
    ...both.flatMap((one) => section(ofSetup('FINDINGS', one), findingLines(one.findings, paper), paper)),
    ...(comparison === null
      ? []
      : section('WHAT CHANGES, from A to B', changeLines(comparison, paper), paper)),
    ...both.flatMap((one) =>
      section(
        ofSetup('WHAT IS HIT, by axle travel from ride height', one),
        contactTables(one.travel, paper),
        paper,
      ),
    ),
    ...section(
      'STATICS',
      stanceTable(
        both.map((one) => one.stance),
        paper,
      ),
      paper,
    ),
    ...section('ASSUMED, because it was not measured', assumptionLines(rig.assumptions, paper), paper),
    ...section('CAUTIONS', cautionLines(paper), paper),
  ];
}
