import type { Problem, Where } from '../finding/problem.ts';
import { parseQuantity } from '../quantity/parse.ts';
import { readCsvRows } from './csv-rows.ts';
import { shorten, whereOf } from './document.ts';
import type { Gaps } from './gaps.ts';
import { type ReadBeside, readNamedFile } from './read-beside.ts';

/** Points of a measured ground [m]. */
export interface ProfilePoints {
  readonly distance: readonly number[];
  readonly left: readonly number[];
  readonly right: readonly number[];
}

/** 10 km at a point every 5 cm. */
const TRIPLES = { columns: 3, example: '12.5 m, 31 mm, 28 mm', mostCharacters: 8_000_000 };
const FEWEST_POINTS = 3;
/** A spacing so many times the usual (median) one is no uneven spacing, but points that are missing. */
const GAP = 20;

/**
 * Reads a measured ground: rows in the file, or a CSV file beside it with distance, height left, height right.
 *
 * @returns null when something is wrong; the problems are in `gaps`
 * @failure `rig-key-missing`, `rig-table-too-short`, `rig-table-not-rising` where the distance stands still or goes
 * back, `rig-profile-gap`, problems of quantities and files
 */
export function buildProfile(
  gaps: Gaps,
  key: string,
  readBeside: ReadBeside | undefined,
): ProfilePoints | null {
  const here = gaps.at(key);
  if (here === undefined) {
    gaps.missing(key, '[distance, height left, height right] rows, or file: a CSV file beside this one');
    return null;
  }
  const rows = Array.isArray(here) ? rowsHere(gaps, key, here.length) : rowsBeside(gaps, key, readBeside);
  if (rows === null) return null;
  const problems = faultsOf(rows, whereOf(gaps.document, key));
  gaps.problems.push(...problems);
  if (problems.length > 0) return null;
  return {
    distance: rows.map((row) => row.cells[0]!),
    left: rows.map((row) => row.cells[1]!),
    right: rows.map((row) => row.cells[2]!),
  };
}

interface Row {
  /** Distance, left, right [m]. */
  readonly cells: readonly number[];
  readonly text: string;
  readonly where: Where;
}

function rowsHere(gaps: Gaps, key: string, count: number): readonly Row[] | null {
  const rows: Row[] = [];
  for (let index = 0; index < count; index++) {
    const cells = [0, 1, 2].map((column) => gaps.value(`${key}.${index}.${column}`));
    // A cell that is not a quantity has its own problem; order can be judged only when all are.
    if (!cells.every((cell) => cell !== null)) return null;
    const text = (gaps.at(`${key}.${index}`) as readonly unknown[]).map(String).join(', ');
    rows.push({ cells, text, where: whereOf(gaps.document, `${key}.${index}`) });
  }
  return rows;
}

function rowsBeside(gaps: Gaps, key: string, readBeside: ReadBeside | undefined): readonly Row[] | null {
  const found = readNamedFile(gaps, key, readBeside);
  if (found === null) return null;
  const { file, text } = found;
  const before = gaps.problems.length;
  const rows = readCsvRows(text, { file, key }, TRIPLES, gaps.problems).map(({ line, cells }): Row => {
    const where = { file, line, key };
    const read = cells.map((cell) => lengthOf(cell, where, gaps.problems));
    return { cells: read, text: cells.join(', '), where };
  });
  return gaps.problems.length > before ? null : rows;
}

/** Metres in a plain decimal number with one of the usual units: the common case, a hundred thousand times over. */
const PLAIN = /^(-?\d+(?:\.\d+)?) (m|cm|mm|ft|in)$/;
const METRES: Readonly<Record<string, readonly [times: number, over: number]>> = {
  m: [1, 1],
  cm: [1, 100],
  mm: [1, 1000],
  ft: [3048, 10_000],
  in: [254, 10_000],
};

function lengthOf(cell: string, where: Where, problems: Problem[]): number {
  const [, amount, unit] = PLAIN.exec(cell) ?? [];
  if (amount !== undefined && unit !== undefined) {
    const [times, over] = METRES[unit]!;
    return (Number(amount) * times) / over;
  }
  const typed = parseQuantity(cell, 'length', where);
  if (typed.ok) return typed.value.value;
  problems.push(...typed.problems);
  return Number.NaN;
}

/** The first thing that is wrong with the points as a whole. */
function faultsOf(rows: readonly Row[], whole: Where): readonly Problem[] {
  if (rows.length < FEWEST_POINTS) {
    const found = rows.length === 1 ? 'one point' : `${rows.length} points`;
    return [
      { code: 'rig-table-too-short', where: whole, found, accepted: `${FEWEST_POINTS} points or more` },
    ];
  }
  const spacings = rows.slice(1).map((row, i) => row.cells[0]! - rows[i]!.cells[0]!);
  const back = spacings.findIndex((spacing) => !(spacing > 0));
  if (back >= 0) {
    const { text, where } = rows[back + 1]!;
    const accepted = `a distance beyond that of ${shorten(rows[back]!.text)}`;
    return [{ code: 'rig-table-not-rising', where, found: shorten(text), accepted }];
  }
  const usual = [...spacings].sort((a, b) => a - b)[Math.floor(spacings.length / 2)]!;
  const gap = spacings.findIndex((spacing) => spacing > GAP * usual);
  if (gap < 0) return [];
  const { text, where } = rows[gap + 1]!;
  const accepted = `a point between it and ${shorten(rows[gap]!.text)}, no spacing more than ${GAP} times the usual one`;
  return [{ code: 'rig-profile-gap', where, found: shorten(text), accepted }];
}
