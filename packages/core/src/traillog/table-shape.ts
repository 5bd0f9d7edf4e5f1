import { cellKind, cellsOf } from './cells.ts';

/** How a table of text is laid out. */
export interface TableShape {
  readonly separator: string;
  readonly decimal: '.' | ',';
  /** Index of the first line of data among the lines looked at. */
  readonly firstData: number;
  /** Names of the columns; empty texts without a header. */
  readonly names: readonly string[];
  /** What stands between header and data where units have a line of their own; empty texts without. */
  readonly units: readonly string[];
  readonly width: number;
}

const SEPARATORS = ['\t', ';', ',', '|', ' '];

/**
 * Finds separator, decimal mark and first line of data by what makes the most lines into rows of numbers: junk before
 * the header, a row of units and a torn last line are no matter.
 *
 * @param lines – from the start of the file; the last one may be torn
 * @returns null where nothing makes a table of two columns with numbers
 */
export function tableShape(lines: readonly string[]): TableShape | null {
  let best: TableShape | null = null;
  let most = 0;
  for (const separator of SEPARATORS)
    for (const decimal of ['.', ','] as const) {
      if (separator === decimal) continue;
      const found = shapeWith(lines, separator, decimal);
      if (found !== null && found.numbers > most) {
        best = found.shape;
        most = found.numbers;
      }
    }
  return best;
}

/** Lines looked at for the width. */
const LOOKED_AT = 200;

function shapeWith(lines: readonly string[], separator: string, decimal: '.' | ',') {
  const rows = lines.slice(0, LOOKED_AT).map((line) => cellsOf(line, separator));
  const kinds = rows.map((cells) => cells.map((cell) => cellKind(cell, decimal)));
  const isRow = kinds.map(
    (row) =>
      row.length > 1 &&
      row.some((kind) => kind === 'number') &&
      row.filter((kind) => kind === 'text').length * 3 <= row.length,
  );
  const widths = new Map<number, number>();
  rows.forEach((cells, k) => {
    if (isRow[k]) widths.set(cells.length, (widths.get(cells.length) ?? 0) + 1);
  });
  const [[width] = [0]] = [...widths].sort((a, b) => b[1] - a[1]);
  if (width < 2) return null;
  // A line of the width with numbers in it, and after it mostly more of them: two numbers in the junk are no table.
  const firstData = isRow.findIndex(
    (yes, k) =>
      yes &&
      rows[k].length === width &&
      isRow.slice(k, k + 5).filter(Boolean).length * 2 >= Math.min(5, rows.length - k),
  );
  if (firstData < 0) return null;
  const numbers = kinds
    .slice(firstData)
    .reduce(
      (sum, row, k) =>
        sum + (rows[firstData + k].length === width ? row.filter((kind) => kind === 'number').length : 0),
      0,
    );
  const above = rows.slice(Math.max(0, firstData - 2), firstData).filter((cells) => fits(cells, width));
  const hasUnits =
    above.length === 2 &&
    above[1].every((cell) => cell === '' || /^[([]?[a-zµμ°%][\w°²^/·⁻.\s-]{0,10}[)\]]?$/i.test(cell));
  const names = (hasUnits ? above[0] : above[above.length - 1]) ?? [];
  const padded = (cells: readonly string[]) => Array.from({ length: width }, (_, k) => cells[k] ?? '');
  const shape: TableShape = {
    separator,
    decimal,
    firstData,
    names: padded(names),
    units: padded(hasUnits ? above[1].map((cell) => cell.replace(/^[([]|[)\]]$/g, '')) : []),
    width,
  };
  return { shape, numbers };
}

/** A header may lack the comma that ends each row, or have one more. */
const fits = (cells: readonly string[], width: number): boolean =>
  Math.abs(cells.length - width) <= 1 && cells.filter((cell) => cell !== '').length >= Math.min(2, width - 1);
