import type { Problem } from '../finding/problem.ts';
import { shorten } from './document.ts';

/** One row of a table file, each cell with its unit. */
export interface CsvRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/** What the file must be. */
export interface CsvRule {
  readonly columns: number;
  /** A row as it should look, for whoever wrote another one. */
  readonly example: string;
  readonly mostCharacters: number;
}

/**
 * Columns out of a CSV, TSV or semicolon file: `#` starts a comment; cells carry their units, or a first row
 * `crush [mm], force [N]` gives the unit of each column.
 *
 * @failure `rig-wrong-shape` at a line that has another number of cells; `file-too-large`
 */
export function readCsvRows(
  text: string,
  where: { readonly file: string; readonly key: string },
  { columns, example, mostCharacters }: CsvRule,
  problems: Problem[],
): readonly CsvRow[] {
  if (text.length > mostCharacters) {
    const accepted = `at most ${mostCharacters} characters`;
    problems.push({ code: 'file-too-large', where, found: `${text.length} characters`, accepted });
    return [];
  }
  const rows: CsvRow[] = [];
  let units: readonly string[] = [];
  let first = true;
  text
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/)
    .forEach((raw, index) => {
      const row = raw.replace(/#.*/, '').trim();
      if (row === '') return;
      const cells = splitRow(row);
      if (cells.length !== columns) {
        const accepted = `${NUMBERS[columns] ?? columns} cells, for example ${example}`;
        problems.push({
          code: 'rig-wrong-shape',
          where: { ...where, line: index + 1 },
          found: shorten(row),
          accepted,
        });
        return;
      }
      const heads = cells.map(unitOfHead);
      if (first && heads.every((head) => head !== null)) units = heads.map((head) => ` ${head}`);
      else
        rows.push({
          line: index + 1,
          cells: cells.map((cell, column) => withUnit(cell, units[column] ?? '')),
        });
      first = false;
    });
  return rows;
}

const NUMBERS: Readonly<Record<number, string>> = { 2: 'two', 3: 'three' };

/** Tab, then semicolon, then comma: a decimal comma needs one of the other two. */
function splitRow(row: string): string[] {
  const separator = ['\t', ';', ','].find((mark) => row.includes(mark)) ?? ',';
  return row.split(separator).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'));
}

const unitOfHead = (cell: string): string | null =>
  /^[^\d[(]*[[(]([^\])]+)[\])]$/.exec(cell)?.[1]?.trim() ?? null;

/** Only a bare number takes the unit of its column. */
const withUnit = (cell: string, unit: string): string =>
  /^[-+−]?[\d.,eE+-]+$/.test(cell) ? cell + unit : cell;
