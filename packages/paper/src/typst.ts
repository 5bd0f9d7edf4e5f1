import type { Sheet, SheetBlock, SheetSection } from '@lastinch/core/sheet';
import { columnsSvg, columnsTitle } from './columns-svg.ts';
import { FOOT, NO_KEY, READ_HEADS, titleOf } from './heads.ts';
import { PAPER_SIZES, type PaperSize } from './paper-size.ts';
import { typstText as text } from './typst-text.ts';

/** Source of a document for the typesetter, and the pictures that it names. */
export interface Typeset {
  readonly source: string;
  readonly pictures: readonly { readonly name: string; readonly svg: string }[];
}

/** The build sheet as source for the typesetter. Every text stands in a string of its own, so that none is read as markup. */
export function sheetTypst(sheet: Sheet, size: PaperSize): Typeset {
  const pictures: Typeset['pictures'][number][] = [];
  const body = sheet.sections.flatMap((section) => sectionTypst(section, sheet, pictures));
  return { source: [preamble(sheet, size), ...body, ''].join('\n'), pictures };
}

function sectionTypst(
  { id, title, blocks }: SheetSection,
  { system }: Sheet,
  pictures: Typeset['pictures'][number][],
): readonly string[] {
  const lines = [`#heading(level: 1, ${text(title)})`];
  let readings: string[] = [];
  const flush = (): void => {
    if (readings.length > 0) lines.push(tableTypst(READ_HEADS, '(3fr, 2fr, 1.4fr, 1.6fr)', readings));
    readings = [];
  };
  for (const block of blocks) {
    if (block.kind === 'reading') {
      readings.push(...[block.what, block.expected, '', block.key || NO_KEY].map(text));
      continue;
    }
    flush();
    if (block.kind === 'columns') {
      const name = `${id}-${pictures.length}.svg`;
      pictures.push({ name, svg: columnsSvg(block, system, name.replace('.svg', '')) });
      lines.push(`#figure(image("${name}", width: 100%, fit: "contain", alt: ${text(columnsTitle(block))}))`);
    } else lines.push(blockTypst(block));
  }
  flush();
  return lines;
}

function blockTypst(block: Exclude<SheetBlock, { kind: 'reading' | 'columns' }>): string {
  switch (block.kind) {
    case 'heading':
      return `#heading(level: 2, ${text(block.text)})`;
    case 'say':
      return `#par(${text(block.text)})`;
    case 'warn':
      return `#warn(${text(block.text)})`;
    case 'tick':
      return `#tick(${text(block.text)})`;
    case 'table':
      return tableTypst(
        block.heads,
        `(1.3fr, ${block.heads
          .slice(1)
          .map(() => '1fr')
          .join(', ')},)`,
        block.rows.flat().map(text),
      );
  }
}

const tableTypst = (heads: readonly string[], widths: string, cells: readonly string[]): string =>
  `#table(columns: ${widths}, table.header(${heads.map((head) => `strong(${text(head)})`).join(', ')}), ${cells.join(', ')})`;

const preamble = (sheet: Sheet, size: PaperSize): string => `#set document(title: ${text(titleOf(sheet))})
#set page(paper: "${PAPER_SIZES[size].typst}", margin: (x: 14mm, top: 14mm, bottom: 18mm), footer: context {
  set text(size: 8.5pt)
  line(length: 100%, stroke: 0.8pt)
  grid(columns: (1fr, auto), ${text(FOOT)}, counter(page).display("1 / 1", both: true))
})
#set text(font: "Atkinson Hyperlegible", size: 11.5pt, lang: "en")
#set par(leading: 0.6em, spacing: 0.8em)
#set table(stroke: 0.7pt, inset: 5pt)
#set heading(numbering: none)
#show heading.where(level: 1): it => block(above: 1.6em, below: 0.8em, sticky: true, width: 100%, stroke: (bottom: 1.6pt), inset: (bottom: 4pt), text(size: 15pt, it.body))
#show heading.where(level: 2): it => block(above: 1.1em, below: 0.6em, sticky: true, text(size: 12.5pt, it.body))
#show table: set text(size: 10pt)
#show table: set par(leading: 0.45em)
#let warn(words) = block(stroke: 2pt, inset: 7pt, width: 100%, breakable: false, strong("! " + words))
#let tick(words) = block(breakable: false, above: 0.75em, below: 0.75em, grid(columns: (8mm, 1fr), box(width: 4.6mm, height: 4.6mm, stroke: 1.2pt, baseline: 1mm), words))
#text(size: 19pt, weight: "bold", ${text(titleOf(sheet))})
#line(length: 100%, stroke: 3pt)`;
