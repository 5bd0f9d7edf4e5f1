/** The build sheet as a page and as source of a PDF; plates as drawings to cut. */

export { READ_HEADS } from './heads.ts';
export { sheetHtml } from './html.ts';
export { PAPER_SIZES, type PaperSize } from './paper-size.ts';
export { DXF_LAYERS, plateDxf } from './plate-dxf.ts';
export { plateSvg } from './plate-svg.ts';
export { fitsPaper, plateTemplate } from './plate-template.ts';
export { runsOf } from './runs.ts';
export { sheetTypst, type Typeset } from './typst.ts';
