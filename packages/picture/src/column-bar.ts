import { cellWidth, padCells, printable } from './cells.ts';
import { type ColumnShape, nearContacts } from './column-parts.ts';

/** The characters of a bar. Each part has its own, so that nothing rests on colour. */
export interface BarSigns {
  readonly metal: string;
  readonly flex: string;
  readonly reserve: string;
  readonly clearance: string;
  readonly overlap: string;
  readonly crush: string;
  readonly free: string;
  readonly droop: string;
  readonly contact: string;
  readonly ride: string;
  readonly wall: string;
  readonly tolerance: string;
  readonly unknown: string;
}

export const SIGNS: Readonly<Record<'unicode' | 'ascii', BarSigns>> = {
  unicode: {
    metal: '█',
    flex: '╱',
    reserve: '░',
    clearance: '·',
    overlap: '╳',
    crush: '▒',
    free: ' ',
    droop: '╎',
    contact: '╌',
    ride: '─',
    wall: '│',
    tolerance: '┊',
    unknown: '?',
  },
  ascii: {
    metal: '#',
    flex: '/',
    reserve: '+',
    clearance: '.',
    overlap: 'X',
    crush: '=',
    free: ' ',
    droop: "'",
    contact: '-',
    ride: '-',
    wall: '|',
    tolerance: ':',
    unknown: '?',
  },
};

/** The grid that all bars share: row k lies between k·step and (k + 1)·step of travel from ride height. */
export interface BarGrid {
  readonly step: number;
  /** Index of the highest and the lowest row. */
  readonly highest: number;
  readonly lowest: number;
}

export interface BarRow {
  /** Wall, filling, wall and the sign of the tolerance: `inside + 3` cells. */
  readonly bar: string;
  /** What begins or ends here, in a few words; empty when nothing does. */
  readonly label: string;
}

/** Travel to the nearest edge between two rows. */
const edge = (travel: number, step: number): number => Math.round(travel / step);

/** A column as rows of characters from the highest down, to scale within half a row. The ride line is not among them. */
export const barRows = (
  shape: ColumnShape,
  grid: BarGrid,
  inside: number,
  unicode: boolean,
): readonly BarRow[] => {
  const signs = SIGNS[unicode ? 'unicode' : 'ascii'];
  const { step } = grid;
  const fills = new Map<number, string>();
  const walls = new Set<number>();
  const fill = (from: number, to: number, sign: string, walled = true): void => {
    for (let k = from; k < to; k += 1) {
      fills.set(k, sign);
      if (walled) walls.add(k);
    }
  };
  const metal = edge(shape.boundaries.find((boundary) => boundary.id === 'metal')!.at, step);
  for (const contact of nearContacts(shape)) {
    const at = edge(contact.travel.value, step);
    if (at > metal) fill(at, at + 1, signs.contact, false);
  }
  fill(metal, metal + 1, signs.metal);
  for (const part of shape.parts) fill(edge(part.from, step), edge(part.to, step), signs[part.id]);
  if (shape.overlap !== null) {
    const from = edge(shape.overlap.from, step);
    // Shown even where it is less than half a row: it decides.
    fill(from, Math.max(edge(shape.overlap.to, step), from + 1), signs.overlap);
  }
  const labels = labelsOf(shape, step, unicode);
  const rows: BarRow[] = [];
  for (let k = grid.highest; k >= grid.lowest; k -= 1) {
    const wall = walls.has(k) ? signs.wall : ' ';
    const bar = wall + (fills.get(k) ?? ' ').repeat(inside) + wall + toleranceSign(shape, k, step, signs);
    rows.push({ bar, label: labels.get(k) ?? '' });
  }
  return rows;
};

const toleranceSign = (shape: ColumnShape, row: number, step: number, signs: BarSigns): string => {
  let sign = ' ';
  for (const { id, at, tolerance } of shape.boundaries) {
    if (id === 'ride') continue;
    if (tolerance === null) {
      const nearest = edge(at, step);
      if (row === nearest || row === nearest - 1) return signs.unknown;
    } else if (
      tolerance > 0 &&
      at + tolerance > (row + 1e-6) * step &&
      at - tolerance < (row + 1 - 1e-6) * step
    ) {
      sign = signs.tolerance;
    }
  }
  return sign;
};

/** Row → label. What lies above its edge is named above it, what lies below, below. Earlier ones keep their row. */
const labelsOf = (shape: ColumnShape, step: number, unicode: boolean): ReadonlyMap<number, string> => {
  const labels = new Map<number, string>();
  const put = (row: number, text: string): void => {
    if (!labels.has(row)) labels.set(row, printable(text, unicode));
  };
  for (const { id, name, at } of shape.boundaries) {
    const row = edge(at, step);
    if (id === 'metal') put(row, name);
    else if (id === 'droopLimit') put(row, name);
    else if (id !== 'ride') put(row - 1, name);
  }
  for (const contact of nearContacts(shape)) put(edge(contact.travel.value, step), contact.name);
  return labels;
};

/** Cells beside a bar that a label may take. */
const roomOf = (row: BarRow, cells: number): number => cells - [...row.bar].length - 2;

/**
 * Letters for the labels that do not fit beside their bars, in the order in which they are met: a label is never cut, for
 * contacts are told apart by how their names end. One name has one letter wherever it stands.
 *
 * @param bars – of all corners
 * @param cells – of one bar with its label
 */
export const labelKey = (
  bars: readonly (readonly BarRow[])[],
  cells: number,
): ReadonlyMap<string, string> => {
  const key = new Map<string, string>();
  for (const rows of bars)
    for (const row of rows)
      if (!key.has(row.label) && cellWidth(row.label) > roomOf(row, cells))
        key.set(row.label, letters(key.size));
  return key;
};

const ALPHABET = 26;
/** a … z, aa, ab … */
const letters = (index: number): string =>
  (index < ALPHABET ? '' : letters(Math.floor(index / ALPHABET) - 1)) +
  String.fromCharCode('a'.charCodeAt(0) + (index % ALPHABET));

/** How a letter stands in the drawing and in the key. */
export const keyed = (letter: string): string => `(${letter})`;

/** Bar and label together in so many cells. */
export const barCell = (
  row: BarRow,
  cells: number,
  unicode: boolean,
  key: ReadonlyMap<string, string>,
): string => {
  const letter = key.get(row.label);
  return padCells(`${row.bar} ${letter === undefined ? row.label : keyed(letter)}`, cells, unicode);
};
