import {
  type Figure,
  formatFigure,
  formatValue,
  type KnockOnLine,
  linkLineName,
  type Severity,
} from '@lastinch/core';
import { cellWidth, printable, type TextTable } from '@lastinch/picture';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';

const TAGS: Readonly<Record<Severity, string>> = { over: 'OVER', unproven: 'OPEN', note: '', fine: '' };

/** Two setups: before, after and what it is held against; without a limit, by how much it changes. */
export function changeTable(lines: readonly KnockOnLine[], paper: Paper): string[] {
  const limited = lines.filter(({ limit }) => limit !== null);
  const free = lines.filter(({ limit }) => limit === null);
  const rows = limited.map((line) => ({
    name: linkLineName(line),
    cells: [said(line, line.before, paper), said(line, line.after, paper), limitOf(line, paper), tagOf(line)],
  }));
  const freeRows = free.map((line) => ({
    name: linkLineName(line),
    cells: [said(line, line.before, paper), said(line, line.after, paper), changeOf(line, paper)],
  }));
  return [
    ...(rows.length > 0 ? fitted({ heads: ['before', 'after', 'limit', ''], rows }, paper) : []),
    ...legend(limited, paper),
    ...(rows.length > 0 && freeRows.length > 0 ? [''] : []),
    ...(freeRows.length > 0 ? fitted({ heads: ['before', 'after', 'change'], rows: freeRows }, paper) : []),
  ];
}

/** One setup: what it is, and what it is held against. */
export function stateTable(lines: readonly KnockOnLine[], paper: Paper): string[] {
  if (lines.length === 0) return [];
  const rows = lines.map((line) => ({
    name: linkLineName(line),
    cells: [said(line, line.after, paper), limitOf(line, paper), tagOf(line)],
  }));
  return [...fitted({ heads: ['', 'limit', ''], rows }, paper), ...legend(lines, paper)];
}

/** Shares of one are read in percent. */
const unitOf = ({ of }: KnockOnLine): string | undefined =>
  of === 'anti' || of === 'roll-steer' ? '%' : undefined;

function said(line: KnockOnLine, figure: Figure | null, { system }: Paper): string {
  const unit = unitOf(line);
  return figure === null
    ? 'not known'
    : formatFigure(figure, { system, ...(unit !== undefined && { unit }) });
}

const changeOf = (line: KnockOnLine, paper: Paper): string =>
  line.change === null ? '' : `${line.change.value > 0 ? '+' : ''}${said(line, line.change, paper)}`;

const tagOf = ({ kept }: KnockOnLine): string => (kept === null ? '' : TAGS[kept]);

const DEGREE = Math.PI / 180;

/** Rules of thumb carry a star. */
function limitOf({ limit, limitOf: of }: KnockOnLine, { system }: Paper): string {
  if (limit === null) return '';
  const { value, dimension } = limit;
  // Nobody sets an angle or a speed to more than a tenth.
  const rounded = dimension === 'angle' ? (Math.round((10 * value) / DEGREE) / 10) * DEGREE : value;
  const text = formatValue(Number(rounded.toPrecision(10)), dimension, { system });
  return of === 'practice' ? `${text}*` : text;
}

const legend = (lines: readonly KnockOnLine[], paper: Paper): string[] =>
  lines.some(({ limitOf: of }) => of === 'practice')
    ? wrap('* common practice, no source: beyond it a line is OPEN, never OVER.', paper, '  ')
    : [];

/** A table where it fits; else each name on a line of its own with its cells below, so that no name is cut. */
function fitted(table: TextTable, paper: Paper): string[] {
  const safe = (text: string): number => cellWidth(printable(text, paper.unicode));
  const columns = table.heads.map((head, k) =>
    Math.max(safe(head), ...table.rows.map(({ cells }) => safe(cells[k] ?? ''))),
  );
  const names = Math.max(...table.rows.map(({ name }) => safe(name)));
  if (2 + names + columns.reduce((sum, column) => sum + column + 2, 0) <= paper.width)
    return tableLines(table, paper);
  return table.rows.flatMap(({ name, cells }) => [
    ...wrap(name, paper, '  '),
    ...wrap(
      cells
        .map((cell, k) => (cell === '' ? '' : `${table.heads[k] ?? ''} ${cell}`.trim()))
        .filter((cell) => cell !== '')
        .join('; '),
      paper,
      '    ',
    ),
  ]);
}
