import type { Problem } from '../finding/problem.ts';
import { MAX_RIG_CHARACTERS, shorten } from './document.ts';

/** One row of a table file, each cell with its unit. */
export interface CsvPair {
  readonly line: number;
  readonly cells: readonly [string, string];
}

/**
 * Two columns out of a CSV, TSV or semicolon file: `#` starts a comment; cells carry their units, or a first row
 * `crush [mm], force [N]` gives the unit of each column.
 *
 * @failure `rig-wrong-shape` at the line that has not two cells; `file-too-large`
 */
export function readCsvPairs(
  text: string,
  where: { readonly file: string; readonly key: string },
  problems: Problem[],
): readonly CsvPair[] {
  if (text.length > MAX_RIG_CHARACTERS) {
    const accepted = `at most ${MAX_RIG_CHARACTERS} characters`;
    problems.push({ code: 'file-too-large', where, found: `${text.length} characters`, accepted });
    return [];
  }
  const pairs: CsvPair[] = [];
  let units: readonly [string, string] = ['', ''];
  let first = true;
  text
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/)
    .forEach((raw, index) => {
      const row = raw.replace(/#.*/, '').trim();
      if (row === '') return;
      const cells = splitRow(row);
      const [left, right] = cells;
      if (cells.length !== 2 || left === undefined || right === undefined) {
        problems.push({
          code: 'rig-wrong-shape',
          where: { ...where, line: index + 1 },
          found: shorten(row),
          accepted: 'two cells, for example 12 mm, 340 N',
        });
        return;
      }
      const heads = [unitOfHead(left), unitOfHead(right)] as const;
      if (first && heads[0] !== null && heads[1] !== null) units = [` ${heads[0]}`, ` ${heads[1]}`];
      else pairs.push({ line: index + 1, cells: [withUnit(left, units[0]), withUnit(right, units[1])] });
      first = false;
    });
  return pairs;
}

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
