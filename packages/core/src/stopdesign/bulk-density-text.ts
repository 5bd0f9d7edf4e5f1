import { bad, good, type Result, type Where } from '../finding/problem.ts';
import { FOAM_DENSITIES, FOAM_SOLID } from './foam-law.ts';

const POUND = 0.453_592_37;
const UNITS: readonly (readonly [RegExp, number])[] = [
  [/^kg\s*\/\s*m(3|³)$/i, 1],
  [/^g\s*\/\s*(cm(3|³)|cc|ml)$/i, 1000],
  [/^(lb|lbs)\s*\/\s*ft(3|³)$/i, POUND / 0.3048 ** 3],
];
const EXAMPLES = '500 kg/m3, 0.5 g/cm3, 31 lb/ft3: weight ÷ volume of the stop';

/**
 * Weight ÷ volume of a foam as typed [kg/m³].
 *
 * @failure `quantity-unit-missing`, `quantity-not-understood`; `quantity-out-of-range` for what is no foam
 */
export function parseBulkDensity(text: string, where: Where = {}): Result<number> {
  const match = /^\s*(-?\d+(?:[.,]\d+)?)\s*(.*?)\s*$/.exec(text);
  const wrong = (code: 'quantity-not-understood' | 'quantity-unit-missing') =>
    bad({ code, where, found: text, accepted: EXAMPLES });
  if (match === null) return wrong('quantity-not-understood');
  const [, amount = '', name = ''] = match;
  if (name === '') return wrong('quantity-unit-missing');
  const unit = UNITS.find(([pattern]) => pattern.test(name));
  if (unit === undefined) return wrong('quantity-not-understood');
  const value = Number(amount.replace(',', '.')) * unit[1];
  const [least, most] = FOAM_DENSITIES.map((share) => Math.round(share * FOAM_SOLID));
  if (value >= least && value <= most) return good(value);
  const accepted = `${least} to ${most} kg/m3: lighter and denser ones the laws of cells do not know`;
  return bad({ code: 'quantity-out-of-range', where, found: text, accepted });
}
