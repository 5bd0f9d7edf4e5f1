import { type Plate, plateCut } from '@lastinch/core/plates';
import { boxOf, holeTag, millimetres, pathData } from './plate-path.ts';

/** White round the plate [mm]. */
const MARGIN = 2;

/** Width and height of the drawing of a plate [mm]. */
export function plateSvgSize(
  plate: Plate,
  kerf: number,
): { readonly width: number; readonly height: number } {
  const { width, height } = boxOf(plate, kerf);
  return { width: width + 2 * MARGIN, height: height + 2 * MARGIN };
}

/**
 * A plate in true scale: cuts as thin full lines, bends dashed, a cross in each hole. Units of the drawing are millimetres.
 */
export function plateSvg(plate: Plate, kerf: number, title: string): string {
  const { outside, holes } = plateCut(plate, kerf);
  const box = boxOf(plate, kerf);
  const { width, height } = plateSvgSize(plate, kerf);
  const [left, top] = [box.left - MARGIN, -(box.bottom + box.height) - MARGIN];
  const bends = plate.bends.map(
    ({ x1, y1, x2, y2 }) =>
      `<line x1="${millimetres(x1)}" y1="${millimetres(-y1)}" x2="${millimetres(x2)}" y2="${millimetres(-y2)}"/>`,
  );
  const crosses = plate.holes.map(({ x, y }) => {
    const [cx, cy] = [millimetres(x), millimetres(-y)];
    return `<path d="M${cx - 2} ${cy}h4M${cx} ${cy - 2}v4"/>`;
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${left} ${top} ${width} ${height}">`,
    `<title>${title.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</title>`,
    '<g id="cut" fill="none" stroke="#000000" stroke-width="0.2">',
    `<path d="${pathData(outside)}"/>`,
    ...holes.map(holeTag),
    '</g>',
    `<g id="bend" fill="none" stroke="#000000" stroke-width="0.2" stroke-dasharray="3 1.5">${bends.join('')}</g>`,
    `<g id="middle" fill="none" stroke="#000000" stroke-width="0.1">${crosses.join('')}</g>`,
    '</svg>',
    '',
  ].join('\n');
}
