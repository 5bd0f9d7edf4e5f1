import { cellWidth, fitCells, printable } from './cells.ts';
import { rangeOf, type Samples } from './decimate.ts';

export interface HistorySeries extends Samples {
  readonly name: string;
}

export interface HistoryTextOptions {
  /** Each series gets a plot of its own, all on the same two scales, so that they compare without colour. */
  readonly series: readonly HistorySeries[];
  /** Cells, 30 and more. */
  readonly width: number;
  /** Rows of one plot. */
  readonly height?: number;
  readonly unicode?: boolean;
  /** How a value of an axis is written, with its unit. */
  readonly xText?: (value: number) => string;
  readonly yText?: (value: number) => string;
}

/** Dots in one cell of the finer characters: two beside each other, four above each other. */
const BRAILLE = { across: 2, down: 4, first: 0x2800 } as const;
/** Bit of each dot, by column and by row from the top (Unicode Standard, block Braille Patterns, U+2800). */
const BITS = [
  [0x01, 0x02, 0x04, 0x40],
  [0x08, 0x10, 0x20, 0x80],
] as const;

/**
 * Histories as small plots in characters: dots of 2 × 4 a cell, or `#` in ASCII. In every column of dots the line
 * covers all that the samples cover there, so no peak is lost.
 *
 * @returns lines of at most `width` cells
 */
export const historyText = (options: HistoryTextOptions): string => {
  const width = Math.max(30, Math.floor(options.width));
  const height = Math.max(2, Math.floor(options.height ?? 6));
  const unicode = options.unicode ?? true;
  const write = (text: string): string => printable(text, unicode);
  const plain = (value: number): string => String(Number(value.toPrecision(3)));
  const xText = (value: number): string => write((options.xText ?? plain)(value));
  const yText = (value: number): string => write((options.yText ?? plain)(value));
  const xs = rangeOf(options.series.map(({ x }) => x));
  const ys = rangeOf(options.series.map(({ y }) => y));
  if (xs === null || ys === null) return '';
  const span = ys.high - ys.low;
  const low = span > 0 ? ys.low : ys.low - 1;
  const high = span > 0 ? ys.high : ys.high + 1;

  const room = Math.min(Math.max(cellWidth(yText(high)), cellWidth(yText(low))), Math.floor(width / 3));
  const cells = width - room - 1;
  const lines: string[] = [];
  for (const series of options.series) {
    lines.push(fitCells(write(series.name), width, unicode));
    const rows = plotRows(series, { from: xs.low, to: xs.high, low, high }, cells, height, unicode);
    rows.forEach((row, k) => {
      const label = k === 0 ? yText(high) : k === height - 1 ? yText(low) : '';
      const fitted = fitCells(label, room, unicode);
      lines.push(`${' '.repeat(room - cellWidth(fitted))}${fitted}${unicode ? '┤' : '|'}${row}`.trimEnd());
    });
  }
  const start = fitCells(xText(xs.low), Math.floor(cells / 2) - 1, unicode);
  const end = fitCells(xText(xs.high), Math.floor(cells / 2) - 1, unicode);
  lines.push(`${' '.repeat(room + 1)}${start}${' '.repeat(cells - cellWidth(start) - cellWidth(end))}${end}`);
  return lines.join('\n');
};

interface Window {
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
}

const plotRows = (
  samples: Samples,
  window: Window,
  cells: number,
  height: number,
  unicode: boolean,
): readonly string[] => {
  const across = cells * (unicode ? BRAILLE.across : 1);
  const down = height * (unicode ? BRAILLE.down : 1);
  const covered = coverage(samples, window, across, down);
  const rows: string[] = [];
  for (let row = 0; row < height; row += 1) {
    let text = '';
    for (let cell = 0; cell < cells; cell += 1) {
      if (!unicode) {
        text += isCovered(covered, cell, row) ? '#' : ' ';
        continue;
      }
      let bits = 0;
      for (let a = 0; a < BRAILLE.across; a += 1) {
        for (let d = 0; d < BRAILLE.down; d += 1) {
          if (isCovered(covered, cell * BRAILLE.across + a, row * BRAILLE.down + d)) bits |= BITS[a]![d]!;
        }
      }
      text += bits === 0 ? ' ' : String.fromCodePoint(BRAILLE.first + bits);
    }
    rows.push(text);
  }
  return rows;
};

/** Topmost and lowest dot that the line touches in each column of dots. */
interface Coverage {
  readonly top: Int32Array;
  readonly bottom: Int32Array;
}

const isCovered = ({ top, bottom }: Coverage, column: number, row: number): boolean =>
  row >= top[column]! && row <= bottom[column]!;

const coverage = (
  { x, y }: Samples,
  { from, to, low, high }: Window,
  across: number,
  down: number,
): Coverage => {
  const top = new Int32Array(across).fill(down);
  const bottom = new Int32Array(across).fill(-1);
  const columnOf = (value: number): number => ((value - from) / (to - from || 1)) * (across - 1);
  const rowOf = (value: number): number => ((high - value) / (high - low)) * (down - 1);
  const mark = (column: number, row: number): void => {
    const at = Math.round(row);
    if (at < top[column]!) top[column] = at;
    if (at > bottom[column]!) bottom[column] = at;
  };
  for (let k = 0; k < x.length; k += 1) {
    if (!Number.isFinite(x[k]!) || !Number.isFinite(y[k]!)) continue;
    const here = columnOf(x[k]!);
    mark(Math.round(here), rowOf(y[k]!));
    if (k === 0 || !Number.isFinite(y[k - 1]!) || !Number.isFinite(x[k - 1]!)) continue;
    // The line between two samples, at every column border that it crosses: both neighbours see that height.
    const before = columnOf(x[k - 1]!);
    for (let border = Math.ceil(before - 0.5) + 0.5; border < here; border += 1) {
      const share = (border - before) / (here - before || 1);
      if (share < 0 || share > 1) continue;
      const row = rowOf(y[k - 1]! + (y[k]! - y[k - 1]!) * share);
      mark(Math.floor(border), row);
      if (border + 0.5 < across) mark(Math.floor(border) + 1, row);
    }
  }
  return { top, bottom };
};
