import { cellWidth, padCells, wrapCells } from './cells.ts';

/** A table of texts: one head over each column, one name before each row. */
export interface TextTable {
  readonly heads: readonly string[];
  readonly rows: readonly { readonly name: string; readonly cells: readonly string[] }[];
}

const GAP = 2;

/**
 * A table in plain characters that fits into a width. Columns go side by side as far as they fit unbroken and the
 * rest below, in equal groups; in a single column too wide for the width, cells are broken into lines.
 */
export const textTable = (table: TextTable, width: number, unicode: boolean): readonly string[] => {
  const names = Math.max(...table.rows.map((row) => cellWidth(row.name)));
  const widest = Math.max(
    ...table.heads.map(cellWidth),
    ...table.rows.flatMap((row) => row.cells.map((cell) => Math.max(...unbroken(cell)))),
  );
  const nameWidth = Math.min(names, Math.floor(width * 0.4));
  const fitting = Math.floor((width - nameWidth) / (widest + GAP));
  const count = table.heads.length;
  const perGroup = fitting >= count ? count : fitting >= 2 ? 2 : 1;
  const cell = Math.max(1, Math.min(widest, Math.floor((width - nameWidth) / perGroup) - GAP));
  const lines: string[] = [];
  for (let start = 0; start < count; start += perGroup) {
    if (start > 0) lines.push('');
    const end = Math.min(start + perGroup, count);
    const write = (name: string, cells: readonly string[]): void => {
      const names = cellWidth(name) <= nameWidth ? [name] : wrapCells(name, nameWidth);
      const blocks = [names, ...cells.slice(start, end).map((text) => wrapCells(text, cell))];
      const height = Math.max(...blocks.map((block) => block.length));
      for (let k = 0; k < height; k += 1) {
        const pieces = blocks.map((block, column) =>
          padCells(block[k] ?? '', column === 0 ? nameWidth : cell, unicode),
        );
        lines.push(pieces.join(' '.repeat(GAP)).trimEnd());
      }
    };
    write('', table.heads);
    for (const row of table.rows) write(row.name, row.cells);
  }
  return lines;
};

/** Widths of the pieces that should not be broken: a name may break at any space, a figure only before its tolerance. */
const unbroken = (cell: string): readonly number[] =>
  /[0-9]/.test(cell) ? [cellWidth(cell)] : cell.split(' ').map(cellWidth);
