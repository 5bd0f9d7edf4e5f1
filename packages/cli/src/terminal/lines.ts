import { cellWidth, printable, type TextTable, textTable, wrapCells } from '@lastinch/picture';
import type { Paper } from './paper.ts';

/**
 * A sentence broken at spaces into lines of the paper's width. `first` stands before the first line, blanks of the
 * same width before the others. Safe to print: a name in a file cannot steer the terminal.
 */
export function wrap(text: string, { width, unicode }: Paper, first = ''): string[] {
  const mark = unicode ? first : first.replace('→', '>');
  const hang = ' '.repeat(cellWidth(mark));
  return wrapCells(printable(text, unicode), Math.max(16, width - hang.length)).map(
    (line, index) => (index === 0 ? mark : hang) + line,
  );
}

/**
 * A table set in by two blanks: each column as wide as it must be, one line a row. Where that is too wide for the
 * paper, columns move below each other.
 */
export function tableLines(table: TextTable, { width, unicode }: Paper): string[] {
  const safe = (text: string): string => printable(text, unicode);
  const heads = table.heads.map(safe);
  const rows = table.rows.map(({ name, cells }) => ({ name: safe(name), cells: cells.map(safe) }));
  const lines = [['', ...heads], ...rows.map(({ name, cells }) => [name, ...cells])];
  const widths = lines[0]!.map((_, column) =>
    Math.max(...lines.map((line) => cellWidth(line[column] ?? ''))),
  );
  const fits = 2 + widths.reduce((sum, one) => sum + one + GAP, -GAP) <= width;
  const drawn = fits
    ? lines.map((line) => line.map((cell, column) => padded(cell, widths[column]!)).join(' '.repeat(GAP)))
    : textTable({ heads, rows }, width - 2, unicode);
  return drawn.map((line) => (line.trim() === '' ? '' : `  ${line.trimEnd()}`));
}

const GAP = 2;
const padded = (cell: string, width: number): string => cell + ' '.repeat(width - cellWidth(cell));
