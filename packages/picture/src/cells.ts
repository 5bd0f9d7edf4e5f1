/**
 * Text as a terminal counts it: in cells. Most characters take one, full-width scripts and pictographs two, combining
 * marks none (Unicode Standard Annex #11, East Asian Width, the ranges in common use).
 */
const WIDE =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]/u;
const NONE = /\p{M}|[\u200b-\u200f\u2060]/u;

const cellsOf = (character: string): number => (NONE.test(character) ? 0 : WIDE.test(character) ? 2 : 1);

/** How many cells of a terminal a text takes. */
export const cellWidth = (text: string): number => {
  let cells = 0;
  for (const character of text) cells += cellsOf(character);
  return cells;
};

/**
 * Text that is safe to print: no control characters, so that a name in a file cannot steer the terminal. Without
 * Unicode, signs are spelt in ASCII and other letters become question marks.
 */
export const printable = (text: string, unicode: boolean): string => {
  const clean = text.replace(/[\p{C}\p{Zl}\p{Zp}]/gu, ' ');
  if (unicode) return clean;
  return clean
    .replaceAll('±', '+-')
    .replaceAll('−', '-')
    .replaceAll('…', '.')
    .replace(/[^ -~]/gu, '?');
};

/** The text, or as much of its beginning as fits into so many cells with a mark that something is missing. */
export const fitCells = (text: string, cells: number, unicode: boolean): string => {
  if (cellWidth(text) <= cells) return text;
  let fitted = '';
  let used = 0;
  for (const character of text) {
    if (used + cellsOf(character) > cells - 1) break;
    fitted += character;
    used += cellsOf(character);
  }
  return cells < 1 ? '' : `${fitted}${unicode ? '…' : '.'}`;
};

/** Filled with spaces to exactly so many cells, cut when longer. */
export const padCells = (text: string, cells: number, unicode: boolean): string => {
  const fitted = fitCells(text, cells, unicode);
  return fitted + ' '.repeat(Math.max(0, cells - cellWidth(fitted)));
};

/** Broken at spaces into lines of at most so many cells; a longer word is broken where it must be. */
export const wrapCells = (text: string, cells: number): readonly string[] => {
  const lines: string[] = [];
  let line = '';
  const put = (word: string): void => {
    const longer = line === '' ? word : `${line} ${word}`;
    if (cellWidth(longer) <= cells) {
      line = longer;
      return;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const character of word) {
      if (line !== '' && cellWidth(line + character) > cells) {
        lines.push(line);
        line = '';
      }
      line += character;
    }
  };
  for (const word of text.split(' ')) if (word !== '') put(word);
  if (line !== '') lines.push(line);
  return lines.length > 0 ? lines : [''];
};
