import { stepsUp } from './decimal.ts';
import { shopFraction } from './fraction.ts';

/** Marks to the inch of an ordinary tape, used when nothing is known about the tolerance. */
const TAPE = 16;
/** Marks to the inch of a steel rule, the finest that are written. */
const RULE = 64;
/** Half-widths up to this [in], just under 1/32, are beyond tape and rule: decimal inches. */
const BEYOND_RULE = 0.031;
/** From this length on [in] feet are split off. */
const LONG = 240;
/** From this length on [in] fractions are pointless, and soon beyond the whole numbers of a double. */
const ABSURD = 1e6;

/** So that 1/16 in, through metres and back, still counts as 1/16. */
const ROUND_TRIP = 1 + 1e-9;

const powerOfTwoIn = (number: number): number => 2 ** Math.floor(Math.log2(number * ROUND_TRIP));

const clamped = (number: number, most: number): number => Math.min(most, Math.max(1, number));

/** Whether a length in inches is written with shop fractions; otherwise it needs decimal inches. */
export const suitsShop = (inches: number, halfWidth: number | null): boolean =>
  Math.abs(inches) < ABSURD && (halfWidth === null || halfWidth > BEYOND_RULE * ROUND_TRIP);

/** Steps of a quarter of a half-width or finer, so that rounding up adds little: 3/64, 1/16, 3/32, 5/16. */
function halfWidthInSteps(halfWidth: number): { readonly steps: number; readonly denominator: number } {
  const denominator = clamped(4 / powerOfTwoIn(halfWidth), RULE);
  return { steps: stepsUp(halfWidth * denominator), denominator };
}

/**
 * Marks to the inch that do not pretend more than is known: at most half the half-width apart, but sixteenths as
 * long as the half-width is a sixteenth or more, for that is what a tape shows.
 */
function marksFor(halfWidth: number | null): number {
  if (halfWidth === null) return TAPE;
  const { steps, denominator } = halfWidthInSteps(halfWidth);
  const shown = steps / denominator;
  return shown < 1 / TAPE ? 1 / powerOfTwoIn(shown) : clamped(2 / powerOfTwoIn(shown), TAPE);
}

/** A half-width [in] > 0 as the shop writes it, rounded up: never lost, never shrunk. */
export function shopHalfWidthText(halfWidth: number): string {
  const { steps, denominator } = halfWidthInSteps(halfWidth);
  return shopFraction(steps, denominator);
}

/** Whether a length [in] lies on a mark of a steel rule, but for the rounding of metres. */
export const onMark = (inches: number): boolean =>
  Math.abs(inches) < ABSURD && Math.abs(inches * RULE - Math.round(inches * RULE)) < 1e-6;

/** A length [in] that lies on a mark. */
export const exactShopLengthText = (inches: number): string => onMarksText(inches, RULE);

/** A length [in] as the shop writes it, to the nearest mark: `4 1/8 in`, from 20 ft on `78 ft 8 3/4 in`. */
export const shopLengthText = (inches: number, halfWidth: number | null): string =>
  onMarksText(inches, marksFor(halfWidth));

function onMarksText(inches: number, marks: number): string {
  const steps = Math.round(Math.abs(inches) * marks);
  const sign = inches < 0 && steps > 0 ? '-' : '';
  const feet = steps < LONG * marks ? 0 : Math.floor(steps / (12 * marks));
  const rest = shopFraction(steps - feet * 12 * marks, marks);
  return `${sign}${feet > 0 ? `${feet} ft ` : ''}${rest} in`;
}
