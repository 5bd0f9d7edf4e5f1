import type { TyreSize } from '../rig/parts.ts';

export const TYRE_SIZE_ACCEPTED = '315/70R17 or 35x12.50R17';

const INCH = 0.0254;

/** `LT315/70R17`, `315/70-17`: width in mm, aspect ratio in percent, rim in inches. */
const METRIC = /^(?:LT|P|C)?\s*(\d{3})\s*\/\s*(\d{2,3})\s*(?:ZR|R|-|D|B)\s*(\d{2}(?:\.5)?)/i;
/** `35x12.50R17LT`, `33X10.5-15`: diameter, width and rim in inches. */
const FLOTATION = /^(\d{2}(?:\.\d+)?)\s*[x×]\s*(\d{1,2}(?:[.,]\d+)?)\s*(?:ZR|R|-|D|B)?\s*(\d{2}(?:\.5)?)/i;

/**
 * Size of a tyre as it stands on its side. Load index, speed letter and what else follows are not read.
 *
 * @returns null when it is no size, or one that no wheel has
 */
export function readTyreSize(text: string): TyreSize | null {
  const typed = text.trim();
  const metric = METRIC.exec(typed);
  if (metric) {
    const [width, aspect, rim] = metric.slice(1).map(Number);
    return sound({ width: width / 1000, aspect: aspect / 100, rim: rim * INCH });
  }
  const flotation = FLOTATION.exec(typed);
  if (!flotation) return null;
  const [diameter, width, rim] = flotation.slice(1).map((cell) => Number(cell.replace(',', '.')));
  return sound({ width: width * INCH, aspect: (diameter - rim) / 2 / width, rim: rim * INCH });
}

const sound = (size: TyreSize): TyreSize | null =>
  size.width > 0.1 && size.width < 0.6 && size.aspect > 0.2 && size.aspect < 1.2 && size.rim > 0.2
    ? size
    : null;
