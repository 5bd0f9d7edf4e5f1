/** A press test as text, a reading a line, and the same as cells of a table. */

/** Tab, then semicolon, then comma, as the file is read. */
const separatorOf = (line: string): string => ['\t', ';', ','].find((mark) => line.includes(mark)) ?? ',';

export const linesOf = (text: string): readonly string[] => (text === '' ? [] : text.split(/\r?\n/));

/** Travel and gauge of a line; what is in neither stays with the second. */
export function cellsOf(line: string): readonly [string, string] {
  const mark = separatorOf(line);
  const at = line.indexOf(mark);
  return at < 0 ? [line.trim(), ''] : [line.slice(0, at).trim(), line.slice(at + 1).trim()];
}

/** The text with one cell of one line changed; lines before it are made where there were none. */
export function withCell(text: string, row: number, column: 0 | 1, typed: string): string {
  const lines = [...linesOf(text)];
  while (lines.length <= row) lines.push('');
  const line = lines[row] ?? '';
  const cells = [...cellsOf(line)];
  // A decimal comma must not become a border between cells.
  const mark = line === '' ? ';' : separatorOf(line);
  cells[column] = typed;
  lines[row] = cells.every((cell) => cell.trim() === '') ? '' : `${cells[0]}${mark} ${cells[1]}`.trimEnd();
  while (lines.length > 0 && lines[lines.length - 1] === '') lines.pop();
  return lines.join('\n');
}

/** The text with pasted lines in place of those from a row on. */
export function withLines(text: string, row: number, pasted: string): string {
  const lines = [...linesOf(text)];
  while (lines.length < row) lines.push('');
  return [...lines.slice(0, row), ...linesOf(pasted.trim())].join('\n');
}

/** The name of a file as far as it can be a key: `Soft 60mm.csv` is `Soft-60mm`. */
export function shelfNameOf(file: string): string {
  const plain = file
    .replace(/\.[^.]*$/, '')
    .replace(/[^\w-]+/g, '-')
    .replace(/^[^A-Za-z]+|-+$/g, '')
    .slice(0, 40);
  return plain === '' ? 'pressed' : plain;
}
