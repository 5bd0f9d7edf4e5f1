import type { Box, TextItem } from './scene.ts';

/**
 * Advance widths of a wide sans serif for the printable ASCII characters from space on, in hundredths of the font
 * size (measured in a browser on DejaVu Sans 2.37, the widest of the fonts that the style can fall back to).
 * Real text is therefore never wider than what was reserved for it.
 */
const ADVANCES = [
  32, 40, 46, 84, 64, 95, 78, 27, 39, 39, 50, 84, 32, 36, 32, 34, 64, 64, 64, 64, 64, 64, 64, 64, 64, 64, 34,
  34, 84, 84, 84, 53, 100, 68, 69, 70, 77, 63, 58, 77, 75, 29, 29, 66, 56, 86, 75, 79, 60, 79, 69, 63, 61, 73,
  68, 99, 69, 61, 69, 39, 34, 39, 84, 50, 50, 61, 63, 55, 63, 62, 35, 63, 63, 28, 28, 58, 28, 97, 63, 61, 63,
  63, 41, 52, 39, 63, 59, 82, 59, 59, 52, 64, 34, 64, 84,
];
/** Signs and letters outside ASCII take one em, as the widest of those in use do. */
const OTHER = 100;
const BOLD = 1.13;

/** Width of a text [px] in a font of that size, never less than what is drawn. */
export const textWidth = (text: string, size: number, bold = false): number => {
  let hundredths = 0;
  for (const character of text) {
    const code = character.codePointAt(0) ?? 32;
    hundredths += ADVANCES[code - 32] ?? OTHER;
  }
  return (hundredths / 100) * size * (bold ? BOLD : 1);
};

/** The text, or its beginning with an ellipsis, so that it fits into a width [px]. */
export const fitText = (text: string, width: number, size: number, bold = false): string => {
  if (textWidth(text, size, bold) <= width) return text;
  const characters = [...text];
  while (characters.length > 1) {
    characters.pop();
    const shorter = `${characters.join('').trimEnd()}…`;
    if (textWidth(shorter, size, bold) <= width) return shorter;
  }
  return characters.length > 0 ? '…' : '';
};

/** Breaks a text at spaces into lines no wider than a width [px]; a single word that is too long is cut. */
export const wrapText = (text: string, width: number, size: number, bold = false): readonly string[] => {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer, size, bold) <= width) line = longer;
    else {
      if (line !== '') lines.push(line);
      line = fitText(word, width, size, bold);
    }
  }
  if (line !== '') lines.push(line);
  return lines;
};

/** Height of one line of text as a share of its font size. */
export const LINE_HEIGHT = 1.2;

/** The box that a text item covers, in scene units. */
export const textBox = (item: TextItem, metresPerPixel: number): Box => {
  const long = textWidth(item.text, item.size, item.bold) * metresPerPixel;
  const high = item.size * LINE_HEIGHT * metresPerPixel;
  if (item.upright) {
    return {
      left: item.x - high / 2,
      right: item.x + high / 2,
      bottom: item.y - long / 2,
      top: item.y + long / 2,
    };
  }
  const left = item.anchor === 'start' ? item.x : item.anchor === 'end' ? item.x - long : item.x - long / 2;
  return { left, right: left + long, bottom: item.y - high / 2, top: item.y + high / 2 };
};
