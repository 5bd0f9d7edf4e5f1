import { NOT_UNDERSTOOD, type Trouble } from './trouble.ts';

const WITH_POINT = /^(?:\d+\.?\d*|\.\d+)$/;
const WITH_COMMA = /^(?:\d+,\d+|,\d+)$/;
const COMMA_GROUPS = /^[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$/;
const POINT_GROUPS = /^[1-9]\d{0,2}(?:\.\d{3})+,\d+$/;

/** Whole numbers, the only ones that a fraction may follow. */
export const isWhole = (text: string): boolean => /^\d+$/.test(text);

/**
 * A typed number without sign, decimal point or decimal comma, with an exponent if one likes.
 *
 * A comma is a decimal comma (`1,5`) unless it can only part thousands (`1,105.5`, `1,234,567`); a point is a
 * decimal point unless a decimal comma follows (`1.234,5`). One comma before exactly three digits may be either:
 * `1,105` is 1105 to one reader and 1.105 to another, so it is refused and both readings are offered. `0,125` is
 * clear, because no thousands begin with a zero.
 */
export function numberTyped(text: string): number | Trouble {
  const [mantissa = '', exponent = '0'] = text.toLowerCase().split('e');
  const plain = withoutGroups(mantissa);
  return typeof plain === 'string' ? Number(`${plain}e${exponent}`) : plain;
}

function withoutGroups(typed: string): string | Trouble {
  if (WITH_POINT.test(typed)) return typed;
  const comma = WITH_COMMA.test(typed);
  const groups = COMMA_GROUPS.test(typed);
  const asDecimal = typed.replace(',', '.');
  const asThousands = typed.replaceAll(',', '');
  if (comma && groups) {
    return { trouble: 'quantity-not-understood', accepted: `${asThousands} or ${asDecimal}` };
  }
  if (comma) return asDecimal;
  if (groups) return asThousands;
  return POINT_GROUPS.test(typed) ? typed.replaceAll('.', '').replace(',', '.') : NOT_UNDERSTOOD;
}
