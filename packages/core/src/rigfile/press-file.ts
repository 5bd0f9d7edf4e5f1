import { bad, good, type Problem, type Result } from '../finding/problem.ts';
import { parseQuantity } from '../quantity/parse.ts';
import { readCsvRows } from './csv-rows.ts';

/** A press test as it stands in a file, in the order it was read. */
export interface PressFile {
  /** [m] */
  readonly travel: readonly number[];
  /** [N] */
  readonly force: readonly number[];
  /** Line of each reading in the file, 1-based. */
  readonly line: readonly number[];
}

export interface PressFileOptions {
  readonly file: string;
  /** Units of the two columns where the file says none: `mm, N`; null for none. */
  readonly columns: string | null;
  /** Of the ram [m], where the gauge reads pressure; null when it reads force. */
  readonly ram: number | null;
}

const PAIRS = { columns: 2, example: '12 mm, 340 N', mostCharacters: 2_000_000 };

/**
 * Reads a press test: travel and what the gauge showed, a reading a row. Units stand in each cell, or in a first row
 * `travel [mm], force [N]`, or are given for both columns. A gauge that reads pressure needs the diameter of its ram.
 *
 * @failure `rig-wrong-shape`, `file-too-large`, `ask-option`, problems of quantities, each with its line
 */
export function readPressFile(text: string, { file, columns, ram }: PressFileOptions): Result<PressFile> {
  const problems: Problem[] = [];
  const heads = columns === null ? null : columns.split(/[,;]/).map((unit) => unit.trim());
  if (heads !== null && (heads.length !== 2 || heads.includes('')))
    return bad({
      code: 'ask-option',
      where: { key: '--columns' },
      found: columns ?? '',
      accepted: 'the units of both columns, for example "mm, N" or "in, lb"',
    });
  // With units from outside, they stand as a first row of their own, in place of a row of mere names.
  const body = heads === null ? text : `travel [${heads[0]}], gauge [${heads[1]}]\n${withoutNames(text)}`;
  const shift = heads === null ? 0 : 1;
  const rows = readCsvRows(body, { file, key: '' }, PAIRS, problems);
  const readings = rows.map(({ line, cells: [travel = '', gauge = ''] }) => {
    const where = { file, line: line - shift };
    const moved = parseQuantity(travel, 'length', where);
    const pressed = gaugeForce(gauge, where, ram);
    if (!moved.ok) problems.push(...moved.problems);
    if (!pressed.ok) problems.push(...pressed.problems);
    return {
      line: line - shift,
      travel: moved.ok ? moved.value.value : Number.NaN,
      force: pressed.ok ? pressed.value : Number.NaN,
    };
  });
  if (problems.length > 0) return bad(...problems.slice(0, MOST_PROBLEMS).map((one) => placed(one, shift)));
  return good({
    travel: readings.map((one) => one.travel),
    force: readings.map((one) => one.force),
    line: readings.map((one) => one.line),
  });
}

/** One slip in a column is a problem on every row: a few say enough. */
const MOST_PROBLEMS = 5;

/** Rows that are not two cells are told by the file as it was prefixed, and without a key. */
function placed(problem: Problem, shift: number): Problem {
  const { key, line, ...where } = problem.where;
  if (problem.code !== 'rig-wrong-shape' || line === undefined)
    return { ...problem, where: key ? problem.where : { ...where, ...(line !== undefined && { line }) } };
  return { ...problem, where: { ...where, line: line - shift } };
}

/** A first row without any figure holds names of columns; its line stays, empty. */
function withoutNames(text: string): string {
  const lines = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  const first = lines.findIndex((line) => line.replace(/#.*/, '').trim() !== '');
  return lines.map((line, i) => (i === first && !/\d/.test(line) ? '' : line)).join('\n');
}

function gaugeForce(cell: string, where: Problem['where'], ram: number | null): Result<number> {
  const force = parseQuantity(cell, 'force', where);
  if (force.ok) return good(force.value.value);
  const pressure = parseQuantity(cell, 'pressure', where);
  if (!pressure.ok) return force;
  if (ram !== null) return good(pressure.value.value * (Math.PI / 4) * ram ** 2);
  return bad({
    code: 'quantity-unit-wrong-kind',
    where,
    found: cell,
    accepted: 'a force, for example 340 N or 76 lb; for a gauge that reads pressure also --ram "2 in"',
  });
}
