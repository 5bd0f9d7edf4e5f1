import type { Figure, TravelColumn, TravelResult, UnitSystem } from '@lastinch/core';
import { CORNERS, formatFigure } from '@lastinch/core';
import { printable } from './cells.ts';
import { CORNER_NAMES, DROOP_NAMES, VERDICT_NAMES } from './names.ts';
import type { TextTable } from './text-table.ts';

interface Row {
  readonly name: string;
  readonly text: (column: TravelColumn, figure: (figure: Figure) => string) => string;
}

const ROWS: readonly Row[] = [
  { name: 'verdict', text: (column) => VERDICT_NAMES[column.verdict] },
  { name: 'spare', text: (column, figure) => figure(column.spare) },
  { name: 'clearance', text: (column, figure) => figure(column.clearance) },
  { name: 'hard travel', text: (column, figure) => figure(column.hardTravel) },
  { name: 'first contact', text: (column) => column.contacts[0]?.name ?? 'none measured' },
  { name: 'flex', text: (column, figure) => figure(column.flex) },
  { name: 'reserve', text: (column, figure) => figure(column.reserve) },
  { name: 'stop crush', text: (column, figure) => figure(column.crush) },
  { name: 'free bump', text: (column, figure) => figure(column.freeBump) },
  {
    name: 'droop',
    text: (column, figure) =>
      column.droop[0] === undefined ? 'not measured' : figure(column.droop[0].travel),
  },
  { name: 'ends droop', text: ({ droop }) => (droop[0] === undefined ? '' : DROOP_NAMES[droop[0].id]) },
];

/** All figures of the columns; with two results each row stands twice, marked A and B. */
export const columnTable = (
  results: readonly TravelResult[],
  system: UnitSystem,
  unicode: boolean,
): TextTable => ({
  heads: CORNERS.map((corner) => CORNER_NAMES[corner]),
  rows: ROWS.flatMap((row) =>
    results.map((result, k) => ({
      name: results.length === 1 ? row.name : k === 0 ? `${row.name.padEnd(13)} A` : `${' '.repeat(13)} B`,
      cells: CORNERS.map((corner) =>
        printable(
          row.text(result.corners[corner], (figure) => formatFigure(figure, { system })),
          unicode,
        ),
      ),
    })),
  ),
});
