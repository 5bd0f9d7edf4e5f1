import type { Dimension, Figure } from '../finding/figure.ts';
import { formatFigure, formatValue } from '../quantity/format.ts';
import type { UnitSystem } from '../quantity/quantity.ts';

/** The step to which a part is cut: a sixteenth of an inch, or a millimetre [m]. */
const CUT: Readonly<Record<UnitSystem, number>> = { shop: 0.0254 / 16, metric: 0.001 };
/** A micrometre is too little to go up a step for [m]; the verdict allows for as much. */
const NOTHING = 1e-6;

/** A length of which no less will do, rounded up to what can be cut. */
export const atLeast = ({ value }: Figure, system: UnitSystem): string =>
  formatValue(Math.ceil((value - NOTHING) / CUT[system]) * CUT[system], 'length', { system });

/** A length of which no more will do, rounded down to what can be cut. */
export const atMost = ({ value }: Figure, system: UnitSystem): string =>
  formatValue(Math.floor((value + NOTHING) / CUT[system]) * CUT[system], 'length', { system });

/** A figure with its tolerance; the size alone where the sentence says the direction. */
export const withTolerance = (figure: Figure, system: UnitSystem, unit?: string): string =>
  formatFigure(figure, { system, unit });
export const sizeOf = (figure: Figure, system: UnitSystem): string =>
  formatFigure({ ...figure, value: Math.abs(figure.value) }, { system });

/** A number without tolerance: choices, limits, speeds. */
export const plain = (value: number, dimension: Dimension, system: UnitSystem): string =>
  formatValue(value, dimension, { system });

const MINUTE = 60;
const HOUR = 3600;
const DAY = 24 * HOUR;

/** `8.2 min ± 0.6`, `3.1 h ± 0.4`; a day has no more than a day. */
export function durationOf(figure: Figure, system: UnitSystem): string {
  if (figure.value >= DAY) return 'more than a day';
  const unit = figure.value >= 2 * HOUR ? 'h' : figure.value >= 2 * MINUTE ? 'min' : 's';
  return formatFigure(figure, { system, unit });
}

/** `35 %`. */
export const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** A probability in words that do not pretend: `about 30 in 100`, `less than 1 in 100`. */
export function inAHundred(probability: number): string {
  const whole = Math.round(probability * 100);
  if (whole < 1) return 'less than 1 in 100';
  return whole > 99 ? 'more than 99 in 100' : `about ${whole} in 100`;
}
