import type { Dimension, Figure } from '../finding/figure.ts';
import {
  decimalsFor,
  decimalsForHalfWidth,
  decimalText,
  halfWidthText,
  withoutTrailingZeros,
} from './decimal.ts';
import { fromSi, type Unit } from './dimension.ts';
import type { Quantity, UnitSystem } from './quantity.ts';
import { exactShopLengthText, onMark, shopHalfWidthText, shopLengthText, suitsShop } from './shop-length.ts';
import { shownUnit } from './shown.ts';

export interface FormatOptions {
  readonly system: UnitSystem;
  /** A unit of `UNITS[dimension]` instead of the usual one, for example `%` or `in/s`. */
  readonly unit?: string;
}

/** Digits shown when nothing is known about the tolerance, and when the number is exact but round in no unit. */
const DIGITS = { unknown: 4, exact: 5 };

/**
 * A value with its unit and nothing said about its tolerance: `4 1/8 in`, `104.8 mm`, `180 lb/in`.
 * Shop lengths to the nearest 1/16, all else to four digits.
 *
 * @param value – SI; anything that is not finite is written `unknown`
 * @throws when `unit` is not a unit of the dimension (our own mistake)
 */
export function formatValue(value: number, dimension: Dimension, options: FormatOptions): string {
  return Number.isFinite(value) ? written(value, [], dimension, options).value : 'unknown';
}

/**
 * A value with its 95 % half-width in the same unit: `4 1/8 in ± 1/16`, `104.8 mm ± 1.6`, `4 1/8 in ± unknown`.
 * One that is exact (half-width 0: a choice or a limit) stands alone: `3/8 in`. A shop length that is exact but on no
 * mark is written in millimetres where it is round: `10 mm`.
 *
 * @param figure – a half-width that is null, negative or not finite is written `unknown`
 * @invariant a half-width above zero is never written as 0, and never more than 1 % too small; `parseQuantity` reads
 * the value back to within half of the half-width that stands beside it
 */
export function formatFigure({ value, dimension, tolerance }: Figure, options: FormatOptions): string {
  if (!Number.isFinite(value)) return 'unknown';
  const known = tolerance !== null && tolerance >= 0 && Number.isFinite(tolerance);
  const { value: text, halfWidths } = written(value, known ? [tolerance] : [], dimension, options);
  return tolerance === 0 ? text : `${text} ± ${halfWidths[0] ?? 'unknown'}`;
}

/** The text as typed, untouched. A quantity that was never typed is written in the system asked for. */
export function formatQuantity(quantity: Quantity, options: FormatOptions): string {
  const { text, value, plus, minus, dimension, assumed } = quantity;
  if (text !== '') return text;
  const halves = plus === null || minus === null ? [] : plus === minus ? [plus] : [plus, minus];
  const { value: number, halfWidths } = written(value, halves, dimension, options);
  const [first, second] = halfWidths;
  const tolerance = first === undefined ? '' : second === undefined ? ` ± ${first}` : ` +${first}/-${second}`;
  return `${assumed ? '~ ' : ''}${number}${tolerance}`;
}

interface WrittenFigure {
  /** With its unit. */
  readonly value: string;
  /** Without unit: they are in the unit that the value ends with. */
  readonly halfWidths: readonly string[];
}

function written(
  value: number,
  halfWidths: readonly number[],
  dimension: Dimension,
  { system, unit: wanted }: FormatOptions,
): WrittenFigure {
  const unit = shownUnit(dimension, system, value, wanted);
  const amount = fromSi(value, unit);
  const halves = halfWidths.map((each) => fromSi(each, unit));
  const finest = finestOf(halves);
  // Only where the caller left the unit to us, and nothing but the value needs writing.
  if (finest === 0 && dimension === 'length' && unit.name === 'in' && wanted === undefined)
    return exactInShop(value, amount, halves, unit);
  return dimension === 'length' && unit.name === 'in' && suitsShop(amount, finest)
    ? inFractions(amount, halves, finest)
    : inDecimals(amount, halves, finest, unit);
}

/** On its mark; else in millimetres where it is round; else in decimal inches. */
function exactInShop(value: number, inches: number, halves: readonly number[], unit: Unit): WrittenFigure {
  if (onMark(inches)) return { value: exactShopLengthText(inches), halfWidths: halves.map(() => '0') };
  const halfMillimetres = value * 2000;
  const round = Math.round(halfMillimetres);
  if (Math.abs(value) < 10 && Math.abs(halfMillimetres - round) < 1e-6)
    return { value: `${round / 2} mm`, halfWidths: halves.map(() => '0') };
  return inDecimals(inches, halves, 0, unit);
}

/** The half-width that decides how finely all is written: null when none is known, 0 when the value is exact. */
function finestOf(halves: readonly number[]): number | null {
  const open = halves.filter((each) => each > 0);
  if (open.length > 0) return Math.min(...open);
  return halves.length > 0 ? 0 : null;
}

const inFractions = (inches: number, halves: readonly number[], finest: number | null): WrittenFigure => ({
  value: shopLengthText(inches, finest),
  halfWidths: halves.map((each) => (each > 0 ? shopHalfWidthText(each) : '0')),
});

function inDecimals(
  amount: number,
  halves: readonly number[],
  finest: number | null,
  unit: Unit,
): WrittenFigure {
  const decimals = finest
    ? decimalsForHalfWidth(finest)
    : decimalsFor(amount, finest === 0 ? DIGITS.exact : DIGITS.unknown);
  const number = decimalText(amount, decimals);
  return {
    value: `${finest ? number : withoutTrailingZeros(number)} ${unit.name}`.trimEnd(),
    halfWidths: halves.map((each) => (each > 0 ? halfWidthText(each, decimals) : '0')),
  };
}
