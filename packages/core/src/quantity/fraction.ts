import type { Trouble } from './trouble.ts';

/** The fractions that exist as one character. */
const VULGAR: Readonly<Record<string, readonly [top: number, bottom: number]>> = {
  '½': [1, 2],
  '⅓': [1, 3],
  '⅔': [2, 3],
  '¼': [1, 4],
  '¾': [3, 4],
  '⅕': [1, 5],
  '⅖': [2, 5],
  '⅗': [3, 5],
  '⅘': [4, 5],
  '⅙': [1, 6],
  '⅚': [5, 6],
  '⅛': [1, 8],
  '⅜': [3, 8],
  '⅝': [5, 8],
  '⅞': [7, 8],
};

/** For the tokenizer: one of these, or `5/8`. */
export const FRACTION_PATTERN = `\\d+/\\d+|[${Object.keys(VULGAR).join('')}]`;

/** A typed fraction, `5/8` or `⅝`. */
export function fractionTyped(text: string): number | Trouble {
  const [top, bottom] = VULGAR[text] ?? text.split('/').map(Number);
  return bottom === 0
    ? { trouble: 'quantity-out-of-range', accepted: 'a fraction over 1 or more' }
    : top! / bottom!;
}

/**
 * So many steps as the shop writes them, reduced: 66 sixteenths are `4 1/8`, 10 are `5/8`, 48 are `3`.
 *
 * @param steps – whole number ≥ 0
 * @param denominator – steps in one, whole number ≥ 1
 */
export function shopFraction(steps: number, denominator: number): string {
  const whole = Math.floor(steps / denominator);
  const rest = steps % denominator;
  if (rest === 0) return `${whole}`;
  const common = greatestCommonDivisor(rest, denominator);
  const fraction = `${rest / common}/${denominator / common}`;
  return whole === 0 ? fraction : `${whole} ${fraction}`;
}

const greatestCommonDivisor = (a: number, b: number): number =>
  b === 0 ? a : greatestCommonDivisor(b, a % b);
