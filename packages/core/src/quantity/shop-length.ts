import { stepsUp } from './decimal.ts';
import { shopFraction } from './fraction.ts';

/** Marks of an ordinary tape, used when nothing is known about the tolerance. */
const TAPE = 16;
/** The finest marks of a steel rule. */
const RULE = 64;
/** Half-widths below this [in] are beyond tape and rule: such lengths are written in decimal inches. */
const FINEST_HALF_WIDTH = 1 / 32;
/** From this length on [in] feet are split off. */
const LONG = 240;
/** From this length on [in] fractions are pointless, and soon beyond the whole numbers of a double. */
const ABSURD = 1e6;

/** So that 1/16 in, through metres and back, still counts as 1/16. */
const ROUND_TRIP = 1 + 1e-9;

const powerOfTwoBelow = (number: number): number => 2 ** Math.floor(Math.log2(number * ROUND_TRIP));

const between = (least: number, number: number, most: number): number =>
  Math.min(most, Math.max(least, number));

/** Whether a length in inches is written with shop fractions, or must be written in decimal inches. */
export const suitsShop = (inches: number, halfWidth: number | null): boolean =>
  Math.abs(inches) < ABSURD && (halfWidth === null || halfWidth * ROUND_TRIP >= FINEST_HALF_WIDTH);

/**
 * Denominator that does not pretend more than is known: steps of at most half the half-width, but sixteenths as
 * long as the half-width is a sixteenth or more, for that is what a tape shows.
 */
function denominatorFor(halfWidth: number | null): number {
  if (halfWidth === null) return TAPE;
  if (halfWidth * ROUND_TRIP < 1 / TAPE) return 1 / powerOfTwoBelow(halfWidth);
  return between(1, 2 / powerOfTwoBelow(halfWidth), TAPE);
}

/** A length in inches as the shop writes it: `4 1/8 in`, from 20 ft on `78 ft 8 3/4 in`. */
export function shopLengthText(inches: number, halfWidth: number | null): string {
  const denominator = denominatorFor(halfWidth);
  const steps = Math.round(Math.abs(inches) * denominator);
  const sign = inches < 0 && steps > 0 ? '-' : '';
  const perFoot = 12 * denominator;
  const feet = steps < LONG * denominator ? 0 : Math.floor(steps / perFoot);
  const rest = shopFraction(steps - feet * perFoot, denominator);
  return `${sign}${feet > 0 ? `${feet} ft ` : ''}${rest} in`;
}

/** A half-width > 0 in inches, rounded up to a quarter of its own size or finer: never lost, never shrunk. */
export function shopHalfWidthText(halfWidth: number): string {
  const denominator = between(1, 4 / powerOfTwoBelow(halfWidth), RULE);
  return shopFraction(stepsUp(halfWidth * denominator), denominator);
}
