import type { Corner, TravelResult, UnitSystem } from '@lastinch/core';
import { CORNERS } from '@lastinch/core';
import { cellWidth, padCells, printable, wrapCells } from './cells.ts';
import { type BarGrid, barCell, barRows, keyed, labelKey, SIGNS } from './column-bar.ts';
import { type ColumnShape, columnShape, reachOf } from './column-parts.ts';
import { columnTable } from './column-table.ts';
import { CORNER_MARKS, CORNER_NAMES, VERDICT_NAMES } from './names.ts';
import { markText, type Ruler, rulerFor } from './ruler.ts';
import { textTable } from './text-table.ts';

export interface ColumnsTextOptions {
  /** Cells of the terminal: 40 to 200; what is narrower is laid out for 40. */
  readonly width: number;
  readonly system: UnitSystem;
  /** The setup to compare with: its bar stands to the left of each, marked A. */
  readonly against?: TravelResult;
  /** Box and shade characters; false keeps to ASCII. */
  readonly unicode?: boolean;
  /** Most rows of the drawn travel. */
  readonly rows?: number;
}

const NARROWEST = 40;
const MOST_ROWS = 48;
/** A cell needs so much for its bar or bars and the two capitals of its corner. */
const CELL = { single: 12, pair: 14 } as const;

/**
 * The travel columns of the four corners for a terminal, to scale, with tolerance, legend and all figures.
 *
 * @returns lines of at most `width` cells, joined by newlines; no control characters, no colour.
 * @invariant a part takes as many rows as its length, rounded at its ends to the nearest row.
 */
export const columnsText = (travel: TravelResult, options: ColumnsTextOptions): string => {
  const width = Math.max(NARROWEST, Math.floor(options.width));
  const unicode = options.unicode ?? true;
  const results = options.against === undefined ? [travel] : [options.against, travel];
  const shapes = results.map(
    (result) => new Map(CORNERS.map((corner) => [corner, columnShape(result.corners[corner])])),
  );
  const all = shapes.flatMap((byCorner) => [...byCorner.values()]);
  const reach = reachOf(all);
  const ruler = rulerFor(options.system, (reach.up + reach.down) / (options.rows ?? MOST_ROWS));
  const grid: BarGrid = {
    step: ruler.step,
    highest: Math.floor(reach.up / ruler.step + 0.5),
    lowest: -Math.ceil(reach.down / ruler.step + 0.5),
  };
  const bars = barLines(results, shapes, ruler, grid, width, unicode);
  const lines = [
    ...headLines(results, width, unicode),
    '',
    ...bars.lines,
    '',
    ...legendLines(all, ruler, width, unicode),
    ...bars.key,
    '',
    ...textTable(columnTable(results, options.system, unicode), width, unicode),
  ];
  return lines.map((line) => line.trimEnd()).join('\n');
};

const headLines = (results: readonly TravelResult[], width: number, unicode: boolean): readonly string[] =>
  results.flatMap((result, k) => {
    const mark = results.length > 1 ? `${'AB'[k]}: ` : 'Travel of ';
    return wrapCells(printable(mark + result.setup, unicode), width);
  });

const barLines = (
  results: readonly TravelResult[],
  shapes: readonly ReadonlyMap<Corner, ColumnShape>[],
  ruler: Ruler,
  grid: BarGrid,
  width: number,
  unicode: boolean,
): { readonly lines: readonly string[]; readonly key: readonly string[] } => {
  const pair = results.length > 1;
  const numbers = numberColumn(ruler, grid, unicode);
  const scale = numbers.width + 2;
  const perRow =
    [4, 2, 1].find((count) => Math.floor((width - scale) / count) >= (pair ? CELL.pair : CELL.single)) ?? 1;
  const cell = Math.min(Math.floor((width - scale) / perRow), pair ? 22 : 34);
  const lines: string[] = [];
  const inside = pair ? Math.min(7, Math.floor((cell - 8) / 2)) : Math.min(7, Math.max(3, cell - 19));
  const barsOf = (corner: Corner) =>
    shapes.map((byCorner) => barRows(byCorner.get(corner)!, grid, inside, unicode));
  const key = pair ? new Map<string, string>() : labelKey(CORNERS.flatMap(barsOf), cell);
  for (let start = 0; start < CORNERS.length; start += perRow) {
    if (start > 0) lines.push('');
    const corners = CORNERS.slice(start, start + perRow);
    const head = (texts: readonly string[], margin = ''): string =>
      padCells(margin, scale, unicode) + texts.map((text) => padCells(text, cell, unicode)).join('');
    const unit = `${' '.repeat(numbers.width - ruler.unitName.length)}${ruler.unitName}`;
    lines.push(
      head(
        corners.map((corner) => cornerName(corner, cell)),
        unit,
      ),
    );
    const bars = corners.map(barsOf);
    lines.push(
      pair
        ? head(
            corners.map(() => ['A', 'B'].map((mark) => ` ${padCells(mark, inside + 3, unicode)}`).join('')),
          )
        : head(corners.map((corner) => VERDICT_NAMES[results[0]!.corners[corner].verdict])),
    );
    const blank = (k: number): boolean =>
      bars.every((lanes) => lanes.every((lane) => lane[grid.highest - k]!.bar.trim() === ''));
    let highest = grid.highest;
    while (highest > 0 && blank(highest)) highest -= 1;
    let lowest = grid.lowest;
    while (lowest < 0 && blank(lowest)) lowest += 1;
    for (let k = highest; k >= lowest; k -= 1) {
      const row = grid.highest - k;
      const texts = bars.map((lanes) =>
        pair
          ? padCells(lanes.map((lane) => lane[row]!.bar).join(' '), cell, unicode)
          : barCell(lanes[0]![row]!, cell, unicode, key),
      );
      lines.push(`${numbers.at(k)}${texts.join('')}`);
      if (k === 0) lines.push(rideLine(numbers.width, scale + cell * corners.length, unicode));
    }
  }
  const named = [...key].map(([name, letter]) => `${keyed(letter)} ${name}`);
  return { lines, key: flowed(named, width) };
};

const cornerName = (corner: Corner, cell: number): string =>
  cellWidth(CORNER_NAMES[corner]) < cell ? CORNER_NAMES[corner] : CORNER_MARKS[corner];

/** Numbers of the tape: each stands on the row above its mark in bump and below it in droop, next to the edge. */
const numberColumn = (
  ruler: Ruler,
  grid: BarGrid,
  unicode: boolean,
): { width: number; at: (row: number) => string } => {
  const wall = SIGNS[unicode ? 'unicode' : 'ascii'].wall;
  const text = (mark: number): string =>
    mark !== 0 && mark % ruler.every === 0 ? printable(markText(ruler, mark), unicode) : '';
  // A mark is an edge between rows; its number stands on the row that lies on the side of ride height.
  const markOf = (row: number): number => (row >= 0 ? row + 1 : row);
  let width = ruler.unitName.length;
  for (let k = grid.lowest; k <= grid.highest; k += 1) width = Math.max(width, cellWidth(text(markOf(k))));
  return {
    width,
    at: (row) => {
      const number = text(markOf(row));
      return `${' '.repeat(width - cellWidth(number))}${number}${number === '' ? wall : unicode ? '┤' : '+'} `;
    },
  };
};

const rideLine = (numbers: number, width: number, unicode: boolean): string => {
  const line = SIGNS[unicode ? 'unicode' : 'ascii'].ride;
  const word = ' ride height ';
  const start = `${' '.repeat(Math.max(0, numbers - 1))}0${unicode ? '┼' : '+'}`;
  return start + line.repeat(Math.max(0, width - start.length - word.length - 2)) + word + line.repeat(2);
};

const legendLines = (
  shapes: readonly ColumnShape[],
  ruler: Ruler,
  width: number,
  unicode: boolean,
): readonly string[] => {
  const signs = SIGNS[unicode ? 'unicode' : 'ascii'];
  const used = new Set<string>(shapes.flatMap((shape) => shape.parts.map((part) => part.id)));
  const words = [
    `${signs.metal} hard contact`,
    used.has('flex') ? `${signs.flex} flex` : '',
    used.has('reserve') ? `${signs.reserve} reserve` : '',
    used.has('clearance') ? `${signs.clearance} to spare` : '',
    shapes.some((shape) => shape.overlap !== null) ? `${signs.overlap} stop reaches where nothing may` : '',
    used.has('crush') ? `${signs.crush} stop crush` : '',
    'blank free bump',
    used.has('droop') ? `${signs.droop} droop` : '',
    `${signs.tolerance} a boundary lies in here, 95 %`,
    `one row is ${rowText(ruler)}`,
  ].filter((word) => word !== '');
  return flowed(words, width);
};

/** Entries one after the other, as many to a line as fit; one that is longer than a line is broken at its spaces. */
const flowed = (words: readonly string[], width: number): readonly string[] => {
  const lines: string[] = [];
  let line = '';
  for (const word of words.flatMap((entry) => wrapCells(entry, width))) {
    const longer = line === '' ? word : `${line}   ${word}`;
    if (cellWidth(longer) <= width) line = longer;
    else {
      lines.push(line);
      line = word;
    }
  }
  return [...lines, line].filter((text) => text !== '');
};

const rowText = (ruler: Ruler): string => {
  const units = ruler.step / ruler.unit;
  return units < 1
    ? `1/${Math.round(1 / units)} ${ruler.unitName}`
    : `${Math.round(units)} ${ruler.unitName}`;
};
