/** The build sheet as a page and as source of a PDF. */

export { sheetHtml } from './html.ts';
export { PAPER_SIZES, type PaperSize } from './paper-size.ts';
export { sheetTypst, type Typeset } from './typst.ts';
