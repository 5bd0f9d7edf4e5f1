export { columnScene } from './column.ts';
export { svgItems, svgOf } from './svg.ts';
export { pictureStyle } from './svg-style.ts';
