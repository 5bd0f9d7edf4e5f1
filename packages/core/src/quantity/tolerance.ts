import type { Dimension } from '../finding/figure.ts';
import type { Halves, Measure } from './grammar.ts';
import { lastUnitTyped, type Meant, meantBy } from './measure.ts';
import { isTrouble, type Trouble } from './trouble.ts';

/** 95 % half-widths in SI, ≥ 0. */
export interface HalfWidths {
  readonly plus: number;
  readonly minus: number;
}

/**
 * The unit that the two halves of a tolerance have in common: `mm` in `+3/-1 mm`, `+3 mm/-1` and `+3 mm/-1 mm`.
 * A half without a unit takes it, and so does a value without one (`110 +3/-1 mm`).
 */
export function unitInCommon({ plus, minus }: Halves): string | null {
  const names = [lastUnitTyped(plus), lastUnitTyped(minus)].filter((name) => name !== null);
  return names.every((name) => name === names[0]) ? (names[0] ?? null) : null;
}

/**
 * Half-widths of a value, in SI. A half with no unit, its own or common, is in the last unit of the value:
 * `4 1/8 in ± 1/16`, `2' 7" ± 1/4` (inches). Per cent is a share of the value, unless the value is itself in
 * per cent: `180 lb/in ± 5 %` is ± 9 lb/in, `8 % ± 1 %` is 7 % to 9 %.
 *
 * @param value – the value that the tolerance belongs to
 * @source coverage: JCGM 100:2008 (GUM), 6.2 and 6.3; k = 2 for a level of confidence of about 95 %
 */
export function halfWidths(halves: Halves, value: Meant, dimension: Dimension): HalfWidths | Trouble {
  const lent = unitInCommon(halves) ?? value.unit.name;
  const plus = halfWidth(halves.plus, lent, value, dimension);
  if (typeof plus !== 'number') return plus;
  const minus = halfWidth(halves.minus, lent, value, dimension);
  return typeof minus === 'number' ? { plus, minus } : minus;
}

function halfWidth(half: Measure, lent: string, value: Meant, dimension: Dimension): number | Trouble {
  const [part, second] = half.parts;
  const isShare = (part.unit ?? lent) === '%' && value.unit.name !== '%';
  if (isShare && !second) return (Math.abs(value.value) * part.amount) / 100;
  const meant = meantBy(half, dimension, lent);
  return isTrouble(meant) ? meant : meant.value;
}
