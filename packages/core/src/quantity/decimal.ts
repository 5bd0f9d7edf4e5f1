/** Beyond this many decimals a number is written with an exponent. */
const MOST_DECIMALS = 12;

/** A half-width is rounded up, except when it passes a step by a twentieth of it or by 1 %, whichever is less. */
const SLACK = { ofStep: 0.05, ofHalfWidth: 0.01 };

/** Exponent of the leading digit: 2 for 123, -1 for 0.5; 0 for 0. */
const magnitude = (number: number): number => Number(number.toExponential().split('e')[1]);

/** Decimals that show so many digits of a number and never cut a whole number. */
export const decimalsFor = (number: number, digits: number): number =>
  Math.max(0, digits - 1 - magnitude(number));

/** Steps in a half-width, rounded up so that text never claims to know more than the figure does. */
export const stepsUp = (steps: number): number =>
  Math.ceil(steps - Math.min(SLACK.ofStep, SLACK.ofHalfWidth * steps));

/**
 * Decimals that show two digits of a half-width > 0, or one where it says the same and is coarse enough not to
 * move the value (`± 3`, but `± 1.0`); negative when the last of them stands before the point (`± 120`).
 *
 * @source JCGM 100:2008 (GUM), 7.2.6: at most two digits, and rounding up may be preferred
 */
export function decimalsForHalfWidth(halfWidth: number): number {
  const decimals = 1 - magnitude(halfWidth);
  const digits = stepsUp(scaled(halfWidth, decimals));
  return digits >= 30 && digits % 10 === 0 ? decimals - 1 : decimals;
}

/** A half-width > 0 rounded up to so many decimals. */
export const halfWidthText = (halfWidth: number, decimals: number): string =>
  decimals > MOST_DECIMALS
    ? halfWidth.toExponential(1)
    : decimalText(scaled(stepsUp(scaled(halfWidth, decimals)), -decimals), decimals);

/** A number rounded to so many decimals; a negative count rounds to tens, hundreds … */
export function decimalText(number: number, decimals: number): string {
  // Rounding noise is not worth sixteen digits.
  if (decimals > MOST_DECIMALS) return Math.abs(number) < 1e-9 ? number.toExponential(1) : String(number);
  const text =
    decimals < 0
      ? scaled(Math.round(scaled(number, decimals)), -decimals).toFixed(0)
      : number.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** number × 10^decimals, dividing by a whole power where that is exact and multiplying is not. */
const scaled = (number: number, decimals: number): number =>
  decimals < 0 ? number / 10 ** -decimals : number * 10 ** decimals;

/** `4.500` → `4.5`: zeros that claim digits nobody measured. */
export const withoutTrailingZeros = (text: string): string =>
  text.includes('.') && !text.includes('e') ? text.replace(/\.?0+$/, '') : text;
