import { readFileSync } from 'node:fs';
import { readRig } from '@lastinch/core/rigfile';
import { type Sheet, type SheetBlock, sheetOfRig } from '@lastinch/core/sheet';
import { beforeAll, describe, expect, it } from 'vitest';
import { PAPER_SIZES, type PaperSize, sheetHtml, sheetTypst } from '../src/index.ts';

const OCHRE = readFileSync(new URL('../../../examples/ochre/ochre.rig.yaml', import.meta.url), 'utf8');
/** Text that would be markup in either layout. */
const MARKUP = '<b>"&amp; \\ #let * $x$ `_@</b>';

let sheet: Sheet;
beforeAll(() => {
  const rig = readRig(OCHRE, { file: 'ochre.rig.yaml' });
  if (!rig.ok) throw new Error(JSON.stringify(rig.problems));
  const made = sheetOfRig({
    rig: rig.value,
    setup: 'soft-stop-seat-down',
    courses: ['ledge'],
    system: 'metric',
    trials: 2,
  });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  const section = { id: 'spares', title: MARKUP, blocks: [{ kind: 'tick', text: MARKUP }] } as const;
  sheet = { ...made.value, sections: [...made.value.sections, section] };
});

const textsOf = (block: SheetBlock): readonly string[] => {
  switch (block.kind) {
    case 'table':
      return [...block.heads, ...block.rows.flat()];
    case 'reading':
      return [block.what, block.expected, block.key];
    case 'columns':
      return [];
    default:
      return [block.text];
  }
};
const allTexts = (): readonly string[] =>
  sheet.sections
    .flatMap(({ title, blocks }) => [title, ...blocks.flatMap(textsOf)])
    .filter((text) => text !== '');

/** Where each text stands in a layout, one after the other; fails at the first that is missing or out of order. */
const inOrder = (layout: string, written: (text: string) => string): void => {
  let at = 0;
  for (const text of allTexts()) {
    const found = layout.indexOf(written(text), at);
    expect(found, `missing or out of order: ${text}`).toBeGreaterThanOrEqual(0);
    at = found;
  }
};

const entities = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

describe.each(Object.keys(PAPER_SIZES) as PaperSize[])('the sheet on %s', (size) => {
  it('holds every word in its order as a page', () => {
    const page = sheetHtml(sheet, size);
    inOrder(page, entities);
    expect(page).toContain(`size: ${PAPER_SIZES[size].css};`);
    expect(page).not.toContain('<b>');
  });

  it('holds every word in its order as source of a PDF, each in a string of its own', () => {
    const { source, pictures } = sheetTypst(sheet, size);
    inOrder(
      source,
      (text) => `"${text.replaceAll('\\', '\\\\').replaceAll('"', '\\"').replace(/\s+/g, ' ')}"`,
    );
    expect(source).toContain(`paper: "${PAPER_SIZES[size].typst}"`);
    expect(pictures).toHaveLength(1);
    expect(source).toContain(`image("${pictures[0]?.name}"`);
  });
});

describe('what a sheet is made of', () => {
  it('loads nothing and runs nothing', () => {
    const page = sheetHtml(sheet, 'a4');
    expect(page).not.toMatch(/<(script|link|img|iframe|object)\b/i);
    expect(page.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:|url\((?!#)|@import/i);
  });

  it('draws its pictures in tones that a typesetter knows: no custom property, no media query', () => {
    const [picture] = sheetTypst(sheet, 'a4').pictures;
    expect(picture?.svg).toMatch(/^<svg /);
    expect(picture?.svg).not.toMatch(/var\(|@media|calc\(/);
  });

  it('gives each table a head, each row a name, and the page one title', () => {
    const page = sheetHtml(sheet, 'letter');
    expect(page.match(/<h1>/g)).toHaveLength(1);
    expect(page.match(/<table/g)?.length).toBe(page.match(/<thead>/g)?.length);
    expect(page.match(/<tr>/g)?.length).toBe(
      (page.match(/<th scope="row">/g)?.length ?? 0) + (page.match(/<thead>/g)?.length ?? 0),
    );
  });
});
