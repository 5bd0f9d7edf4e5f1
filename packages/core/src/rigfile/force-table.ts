import type { Dimension } from '../finding/figure.ts';
import type { Problem } from '../finding/problem.ts';
import { parseQuantity } from '../quantity/parse.ts';
import { readCsvRows } from './csv-rows.ts';
import { MAX_RIG_CHARACTERS, shorten, whereOf } from './document.ts';
import type { Gaps } from './gaps.ts';
import { type ReadBeside, readNamedFile } from './read-beside.ts';

/** Two columns [SI]. */
export interface ForceTable {
  readonly first: readonly number[];
  readonly second: readonly number[];
}

/** What a table must be; all are checked in one pass. */
export interface TableRule {
  readonly dimensions: readonly [Dimension, Dimension];
  /** `stop`: from [0, 0], both columns strictly rising. `shock`: speeds strictly rising through zero, force not falling. */
  readonly kind: 'stop' | 'shock';
}

/**
 * Reads a table that stands in the file, or in a CSV file beside it.
 *
 * @returns null when something is wrong; the problems are in `gaps`
 * @failure `rig-table-too-short`, `rig-table-start`, `rig-table-not-rising`, problems of quantities and files
 */
export function readForceTable(
  gaps: Gaps,
  key: string,
  rule: TableRule,
  readBeside: ReadBeside | undefined,
): ForceTable | null {
  const here = gaps.at(key);
  if (!Array.isArray(here)) return readBesideTable(gaps, key, rule, readBeside);
  const rows: Row[] = [];
  for (let index = 0; index < here.length; index++) {
    const first = gaps.value(`${key}.${index}.0`);
    const second = gaps.value(`${key}.${index}.1`);
    // A cell that is not a quantity has its own problem; order can be judged only when all are.
    if (first === null || second === null) return null;
    const text = (gaps.at(`${key}.${index}`) as readonly unknown[]).map(String).join(', ');
    rows.push({ first, second, text: `[${text}]`, where: whereOf(gaps.document, `${key}.${index}`) });
  }
  return checked(gaps, key, rows, rule);
}

interface Row {
  readonly first: number;
  readonly second: number;
  readonly text: string;
  readonly where: Problem['where'];
}

const PAIRS = { columns: 2, example: '12 mm, 340 N', mostCharacters: MAX_RIG_CHARACTERS };

function readBesideTable(
  gaps: Gaps,
  key: string,
  rule: TableRule,
  readBeside: ReadBeside | undefined,
): ForceTable | null {
  const found = readNamedFile(gaps, key, readBeside);
  if (found === null) return null;
  const { file, text: content } = found;
  const rows: Row[] = [];
  const before = gaps.problems.length;
  for (const pair of readCsvRows(content, { file, key }, PAIRS, gaps.problems)) {
    const cells = rule.dimensions.map((dimension, column) =>
      parseQuantity(pair.cells[column]!, dimension, { file, line: pair.line, key }),
    );
    const [first, second] = cells;
    for (const cell of cells) if (!cell.ok) gaps.problems.push(...cell.problems);
    if (!first?.ok || !second?.ok) continue;
    const text = pair.cells.join(', ');
    rows.push({
      first: first.value.value,
      second: second.value.value,
      text,
      where: { file, line: pair.line, key },
    });
  }
  return gaps.problems.length > before ? null : checked(gaps, key, rows, rule);
}

function checked(gaps: Gaps, key: string, rows: readonly Row[], rule: TableRule): ForceTable | null {
  const problems: Problem[] = [];
  const add = (code: Problem['code'], row: Row | undefined, accepted: string) =>
    problems.push({
      code,
      where: row?.where ?? whereOf(gaps.document, key),
      found: shorten(row?.text ?? ''),
      accepted,
    });
  if (rows.length < 2) {
    add('rig-table-too-short', rows[0], 'two rows or more');
  } else if (rule.kind === 'stop') {
    if (rows[0]!.first !== 0 || rows[0]!.second !== 0)
      add('rig-table-start', rows[0], 'a first row of zero and zero');
    const fault = rows.findIndex(
      (row, i) => i > 0 && !(row.first > rows[i - 1]!.first && row.second > rows[i - 1]!.second),
    );
    if (fault > 0) add('rig-table-not-rising', rows[fault], `crush and force above ${rows[fault - 1]!.text}`);
  } else {
    const fault = rows.findIndex(
      (row, i) => i > 0 && !(row.first > rows[i - 1]!.first && row.second >= rows[i - 1]!.second),
    );
    if (fault > 0)
      add('rig-table-not-rising', rows[fault], `a speed above ${rows[fault - 1]!.text}, force not below`);
    if (rows[0]!.first >= 0 || rows.at(-1)!.first <= 0) {
      add(
        'rig-table-too-short',
        rows[0],
        'rows for rebound (negative speed) and for compression (positive speed)',
      );
    }
    const wrongWay = rows.find((row) => row.first * row.second < 0 || (row.first === 0 && row.second !== 0));
    if (wrongWay)
      add('rig-inconsistent', wrongWay, 'force that opposes the motion: negative in rebound, zero at rest');
  }
  gaps.problems.push(...problems);
  if (problems.length > 0) return null;
  return { first: rows.map((row) => row.first), second: rows.map((row) => row.second) };
}
