import { CORNERS, formatFigure, PLACE_NAMES, type TravelColumn, type TravelResult } from '@lastinch/core';
import { tableLines } from './lines.ts';
import type { Paper } from './paper.ts';

/** A share that is not quite none or all must not read as none or all. */
const percent = (share: number): string => {
  if (share > 0 && share < 0.005) return 'under 1 %';
  if (share < 1 && share > 0.995) return 'over 99 %';
  return `${Math.round(100 * share)} %`;
};

const rowsOf = (column: TravelColumn, paper: Paper) =>
  column.contacts.map((contact) => ({
    name: contact.name,
    cells: [
      formatFigure(contact.travel, paper),
      formatFigure(contact.spare, paper),
      percent(contact.firstShare),
    ],
  }));

/**
 * What is hit, in order of axle travel from ride height, with what is left there at full crush. Corners whose
 * tables read alike share one.
 */
export function contactTables(travel: TravelResult, paper: Paper): string[] {
  const groups: { corners: string[]; rows: ReturnType<typeof rowsOf> }[] = [];
  for (const corner of CORNERS) {
    const rows = rowsOf(travel.corners[corner], paper);
    const same = groups.find((group) => JSON.stringify(group.rows) === JSON.stringify(rows));
    if (same) same.corners.push(PLACE_NAMES[corner]);
    else groups.push({ corners: [PLACE_NAMES[corner]], rows });
  }
  return groups.flatMap(({ corners, rows }, index) => [
    ...(index > 0 ? [''] : []),
    `  ${corners.join(', ')}`,
    ...tableLines({ heads: ['hit after', 'spare', 'hit first'], rows }, paper),
  ]);
}
