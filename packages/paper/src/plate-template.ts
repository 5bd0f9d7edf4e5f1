import type { Plate } from '@lastinch/core/plates';
import { PAPER_SIZES, type PaperSize } from './paper-size.ts';
import { plateSvg, plateSvgSize } from './plate-svg.ts';
import type { Typeset } from './typst.ts';
import { typstText } from './typst-text.ts';

/** Of a sheet of paper, less margins and words [mm]. @source ISO 216 (A4); US Letter 8 1/2 by 11 in */
const ROOM: Readonly<Record<PaperSize, { readonly width: number; readonly height: number }>> = {
  a4: { width: 210 - 20, height: 297 - 80 },
  letter: { width: 215.9 - 20, height: 279.4 - 80 },
};

/** Whether a plate fits on one sheet in true scale. */
export function fitsPaper(plate: Plate, size: PaperSize): boolean {
  const { width, height } = plateSvgSize(plate, 0);
  return width <= ROOM[size].width && height <= ROOM[size].height;
}

/**
 * A paper template in true scale, to be glued on and centre-punched through: the plate without kerf, bars of 100 mm and 4 in to
 * hold a rule against, and what it is.
 */
export function plateTemplate(
  plate: Plate,
  size: PaperSize,
  title: string,
  notes: readonly string[],
): Typeset {
  const name = 'plate.svg';
  const { width, height } = plateSvgSize(plate, 0);
  const bar = (long: string, said: string): string =>
    `#box(stack(dir: ttb, spacing: 1.5mm, line(length: ${long}, stroke: 1pt), ${typstText(said)}))`;
  const source = [
    `#set document(title: ${typstText(title)})`,
    `#set page(paper: "${PAPER_SIZES[size].typst}", margin: 10mm)`,
    '#set text(font: "Atkinson Hyperlegible", size: 10pt, lang: "en")',
    '#set par(spacing: 0.7em)',
    `#heading(level: 1, ${typstText(title)})`,
    ...notes.map((note) => `#par(${typstText(note)})`),
    `#par(${typstText('Print at 100 %, without fitting to the page. Hold a rule against both bars before anything is marked.')})`,
    bar('100mm', '100 mm'),
    '#h(6mm)',
    bar('4in', '4 in'),
    `#align(center, image("${name}", width: ${width}mm, height: ${height}mm, alt: ${typstText(title)}))`,
    '',
  ].join('\n');
  return { source, pictures: [{ name, svg: plateSvg(plate, 0, title) }] };
}
