import { cellWidth, fitCells, printable } from './cells.ts';

export interface BandTextOptions {
  /** Between `low` and `high` at each x, which rises from zero. */
  readonly band: {
    readonly x: readonly number[];
    readonly low: readonly number[];
    readonly high: readonly number[];
  };
  /** Curves over it, each drawn with its own letter. */
  readonly lines: readonly {
    readonly mark: string;
    readonly x: readonly number[];
    readonly y: readonly number[];
  }[];
  /** Value at the top of the picture; what lies above is left out. */
  readonly top: number;
  /** Cells, 30 and more. */
  readonly width: number;
  readonly height?: number;
  readonly unicode?: boolean;
  readonly xText: (value: number) => string;
  readonly yText: (value: number) => string;
}

/**
 * A band and curves over it in characters. A letter stands in every cell that its curve passes; where two pass, the
 * first one given.
 *
 * @returns lines of at most `width` cells
 */
export const bandText = (options: BandTextOptions): readonly string[] => {
  const { band, lines, top, unicode = true } = options;
  const width = Math.max(30, Math.floor(options.width));
  const height = Math.max(4, Math.floor(options.height ?? 14));
  const write = (text: string): string => printable(text, unicode);
  const labels = [top, 0].map((value) => write(options.yText(value)));
  const room = Math.min(Math.max(...labels.map(cellWidth)), Math.floor(width / 3));
  const cells = width - room - 1;
  const from = Math.min(0, ...lines.flatMap(({ x }) => x.slice(0, 1)));
  const to = band.x[band.x.length - 1] ?? 1;
  const xAt = (column: number): number => from + ((to - from) * column) / cells;
  const rowOf = (value: number): number => Math.floor((1 - value / top) * height);
  const rows: string[][] = Array.from({ length: height }, (_, row) =>
    Array.from({ length: cells }, (_, column) => {
      const x = xAt(column + 0.5);
      const middle = top * (1 - (row + 0.5) / height);
      const [low, high] = [valueAt(band.x, band.low, x), valueAt(band.x, band.high, x)];
      return low !== null && high !== null && middle >= low && middle <= high ? (unicode ? '░' : '.') : ' ';
    }),
  );
  for (const { mark, x, y } of [...lines].reverse()) {
    for (let column = 0; column < cells; column += 1) {
      const ends = [valueAt(x, y, xAt(column)), valueAt(x, y, xAt(column + 1))];
      const [before, after] = [ends[0] ?? ends[1], ends[1] ?? ends[0]];
      if (before === null || before === undefined || after === null || after === undefined) continue;
      const [high, low] = [
        rowOf(Math.max(before, after)),
        Math.min(height - 1, rowOf(Math.min(before, after))),
      ];
      for (let row = Math.max(0, high); row <= low; row += 1) rows[row]![column] = mark;
    }
  }
  const drawn = rows.map((row, k) => {
    const label = fitCells(k === 0 ? labels[0]! : k === height - 1 ? labels[1]! : '', room, unicode);
    return `${' '.repeat(room - cellWidth(label))}${label}${unicode ? '┤' : '|'}${row.join('')}`.trimEnd();
  });
  const [start, end] = [from, to].map((value) =>
    fitCells(write(options.xText(value)), Math.floor(cells / 2) - 1, unicode),
  ) as [string, string];
  const gap = ' '.repeat(Math.max(1, cells - cellWidth(start) - cellWidth(end)));
  return [...drawn, `${' '.repeat(room + 1)}${start}${gap}${end}`];
};

/** On straight lines between points; null outside them. */
const valueAt = (x: readonly number[], y: readonly number[], at: number): number | null => {
  for (let i = 1; i < x.length; i += 1) {
    if (at < x[i - 1]! || at > x[i]!) continue;
    return y[i - 1]! + ((y[i]! - y[i - 1]!) * (at - x[i - 1]!)) / (x[i]! - x[i - 1]! || 1);
  }
  return null;
};
