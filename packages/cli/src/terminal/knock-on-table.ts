import {
  type Dimension,
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

const DEGREE = Math.PI / 180;
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
    ...(freeRows.length > 0
      ? fitted({ heads: ['before', 'after', 'change'], rows: freeRows }, paper, [
          unitOnce(freeRows),
          unitOnce(freeRows, 'also of the change'),
        ])
      : []),
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
  of === 'anti' || of === 'roll-steer' || of === 'load-transfer-share' ? '%' : undefined;

function said(line: KnockOnLine, figure: Figure | null, { system }: Paper): string {
  const unit = unitOf(line);
  return figure === null
    ? 'not known'
    : formatFigure(readable(figure, system), { system, ...(unit !== undefined && { unit }) });
}

const changeOf = (line: KnockOnLine, paper: Paper): string =>
  line.change === null ? '' : `${line.change.value > 0 ? '+' : ''}${said(line, line.change, paper)}`;

/** No half-width is shown finer than a rule, a level or two tapes have marks: 1/64 in or 0.1 mm, 0.1°, 0.001. */
function readable(figure: Figure, system: Paper['system']): Figure {
  const { dimension, tolerance } = figure;
  if (tolerance === null || tolerance === 0) return figure;
  const marks: Partial<Record<Dimension, number>> = {
    length: system === 'shop' ? 0.0254 / 64 : 1e-4,
    angle: DEGREE / 10,
    ratio: 1e-3,
  };
  return { ...figure, tolerance: Math.max(tolerance, marks[dimension] ?? 0) };
}

const tagOf = ({ kept }: KnockOnLine): string => (kept === null ? '' : TAGS[kept]);

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

type Rows = TextTable['rows'];
const UNIT = / [^\d\s±]\S*(?= ±|$)/;

/** The same rows with the unit of the first cell left to the second, where both have it. */
const unitOnce = (rows: Rows, change?: 'also of the change'): Rows =>
  rows.map(({ name, cells: [before = '', after = '', moved = '', ...rest] }) => {
    const [one] = UNIT.exec(before) ?? [''];
    const same = one !== '' && one === UNIT.exec(after)?.[0];
    const bare = (cell: string): string => (same ? cell.replace(one, '') : cell);
    return { name, cells: [bare(before), after, change ? bare(moved) : moved, ...rest] };
  });

/** A table where it fits, with shorter rows if there are some; else each name on a line of its own with its cells below, so that no name is cut. */
function fitted(table: TextTable, paper: Paper, shorter: readonly Rows[] = []): string[] {
  for (const rows of [table.rows, ...shorter])
    if (widthOf({ ...table, rows }, paper) <= paper.width) return tableLines({ ...table, rows }, paper);
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

/** Cells that a table takes as `tableLines` sets it. */
function widthOf({ heads, rows }: TextTable, { unicode }: Paper): number {
  const cells = (text: string): number => cellWidth(printable(text, unicode));
  const columns = heads.map((head, k) =>
    Math.max(cells(head), ...rows.map((row) => cells(row.cells[k] ?? ''))),
  );
  const names = Math.max(...rows.map(({ name }) => cells(name)));
  return 2 + names + columns.reduce((sum, column) => sum + column + 2, 0);
}
