import type { Sheet, SheetBlock, SheetReading, SheetSection } from '@lastinch/core/sheet';
import { columnsSvg } from './columns-svg.ts';
import { FOOT, NO_KEY, READ_HEADS, titleOf } from './heads.ts';
import { PAPER_SIZES, type PaperSize } from './paper-size.ts';
import { runsOf } from './runs.ts';

/**
 * The build sheet as one HTML document: style and pictures within, nothing loaded, so that it opens anywhere and prints on
 * the paper asked for.
 */
export function sheetHtml(sheet: Sheet, size: PaperSize): string {
  const title = titleOf(sheet);
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escaped(title)}</title>`,
    `<style>${style(size)}</style>`,
    '</head>',
    '<body>',
    `<h1>${escaped(title)}</h1>`,
    ...sheet.sections.map((section) => sectionHtml(section, sheet)),
    `<footer>${escaped(FOOT)}</footer>`,
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

const sectionHtml = ({ id, title, blocks }: SheetSection, sheet: Sheet): string =>
  [
    `<section aria-labelledby="${id}">`,
    `<h2 id="${id}">${escaped(title)}</h2>`,
    ...runsOf(blocks).map((run, k) => runHtml(run, sheet, `${id}-${k}`)),
    '</section>',
  ].join('\n');

function runHtml(run: readonly SheetBlock[], { system }: Sheet, id: string): string {
  const [block] = run as readonly [SheetBlock];
  switch (block.kind) {
    case 'heading':
      return `<h3>${escaped(block.text)}</h3>`;
    case 'say':
      return `<p>${escaped(block.text)}</p>`;
    case 'warn':
      return `<p class="warn">${escaped(block.text)}</p>`;
    case 'tick':
      return `<ul class="ticks">${run.map((one) => (one.kind === 'tick' ? `<li>${escaped(one.text)}</li>` : '')).join('')}</ul>`;
    case 'reading':
      return readingsHtml(run.filter((one) => one.kind === 'reading'));
    case 'table':
      return tableHtml(block.heads, block.rows);
    case 'columns':
      return `<figure>${columnsSvg(block, system, id)}</figure>`;
  }
}

const readingsHtml = (readings: readonly SheetReading[]): string =>
  tableHtml(
    READ_HEADS,
    readings.map(({ what, expected, key }) => [what, expected, '', key || NO_KEY]),
    'readings',
  );

function tableHtml(heads: readonly string[], rows: readonly (readonly string[])[], name = ''): string {
  const head = heads.map((text) => `<th scope="col">${escaped(text)}</th>`).join('');
  const body = rows.map(([first = '', ...rest]) => {
    const cells = rest.map((text) => `<td>${escaped(text)}</td>`).join('');
    return `<tr><th scope="row">${escaped(first)}</th>${cells}</tr>`;
  });
  return `<table${name && ` class="${name}"`}><thead><tr>${head}</tr></thead><tbody>${body.join('')}</tbody></table>`;
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/** Large type, strong lines, no colour: read at arm's length with oil on it. */
const style = (size: PaperSize): string => `
@page { size: ${PAPER_SIZES[size].css}; margin: 14mm 14mm 16mm; @bottom-right { content: counter(page) " / " counter(pages); } }
:root { color-scheme: light; }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1.5rem; max-width: 60rem; background: #fff; color: #000; font: 1.05rem/1.4 "Liberation Sans", "DejaVu Sans", Arial, sans-serif; }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 1rem; border-bottom: 4px solid; padding-bottom: .4rem; }
h2 { font-size: 1.35rem; margin: 1.8rem 0 .5rem; border-bottom: 2px solid; break-after: avoid; }
h3 { font-size: 1.1rem; margin: 1.1rem 0 .3rem; break-after: avoid; }
p { margin: .4rem 0; }
.warn { border: 3px solid; padding: .5rem .7rem; font-weight: bold; break-inside: avoid; }
.warn::before { content: "! "; }
.ticks { list-style: none; padding: 0; margin: .4rem 0; }
.ticks li { position: relative; padding: .3rem 0 .3rem 2rem; break-inside: avoid; }
.ticks li::before { content: ""; position: absolute; left: 0; top: .42rem; width: 1.15rem; height: 1.15rem; border: 2px solid; }
table { width: 100%; border-collapse: collapse; margin: .6rem 0; font-size: .95rem; }
th, td { border: 1px solid; padding: .25rem .45rem; text-align: left; vertical-align: top; font-weight: normal; overflow-wrap: anywhere; }
thead th { font-weight: bold; border-bottom-width: 3px; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
.readings td:nth-child(3) { width: 18%; }
.readings td:nth-child(4) { width: 16%; }
figure { margin: .8rem 0; break-inside: avoid; }
figure svg { display: block; width: 100%; height: auto; }
footer { margin-top: 2rem; border-top: 2px solid; padding-top: .5rem; font-size: .9rem; }
@media print { body { padding: 0; max-width: none; font-size: 11.5pt; } }
@media (max-width: 40rem) { body { padding: .8rem; } table { font-size: .85rem; } }
`;
