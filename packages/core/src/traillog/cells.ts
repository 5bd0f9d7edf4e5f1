import { readTime } from './time-text.ts';

/** Cells of a line. Quotes hold separators together; two of them stand for one. */
export function cellsOf(line: string, separator: string): string[] {
  const cells: string[] = [];
  let cell = '';
  let isQuoted = false;
  for (let i = 0; i < line.length; i += 1) {
    const letter = line[i];
    if (letter === '"') {
      if (isQuoted && line[i + 1] === '"') {
        cell += '"';
        i += 1;
      } else isQuoted = !isQuoted;
    } else if (letter === separator && !isQuoted) {
      cells.push(cell.trim());
      cell = '';
    } else cell += letter;
  }
  cells.push(cell.trim());
  // Columns set with blanks: many blanks are one.
  return separator === ' ' ? cells.filter((each) => each !== '') : cells;
}

/** Words for `nothing was measured`. */
const NOTHING = new Set([
  '',
  'nan',
  'null',
  'none',
  'n/a',
  'na',
  '-',
  '--',
  'undefined',
  'inf',
  '-inf',
  'infinity',
  '-infinity',
]);

export const isNothing = (cell: string): boolean => NOTHING.has(cell.toLowerCase());

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** A number as it stands in a file with this decimal mark; null where it is none. */
export function numberOf(cell: string, decimal: '.' | ','): number | null {
  const plain = decimal === ',' ? cell.replace(',', '.') : cell;
  return NUMBER.test(plain) ? Number(plain) : null;
}

/** What a cell is for telling data from header. */
export function cellKind(cell: string, decimal: '.' | ','): 'number' | 'time' | 'nothing' | 'text' {
  if (isNothing(cell)) return 'nothing';
  if (numberOf(cell, decimal) !== null) return 'number';
  return readTime(cell) === null ? 'text' : 'time';
}
