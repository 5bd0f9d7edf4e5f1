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

/** A number without tolerance: choices, limits, speeds. Rounded to what anybody chooses one to. */
export const plain = (value: number, dimension: Dimension, system: UnitSystem): string =>
  formatValue(rounded(value, dimension, system), dimension, { system });

function rounded(value: number, dimension: Dimension, system: UnitSystem): number {
  if (dimension === 'acceleration') return Number(value.toPrecision(3));
  const tenths = system === 'metric' && dimension === 'length' && Math.abs(value) >= 0.001;
  return tenths ? Math.round(value * 10_000) / 10_000 : value;
}

/** The finest mark that a tool of each system has: of a steel rule, of a vernier [m]. */
const FINEST: Readonly<Record<UnitSystem, number>> = { shop: 0.0254 / 64, metric: 0.0001 };

/** A half-width that has to be reached, rounded down to a mark; below the finest one in two digits, never to zero. */
export function within(value: number, dimension: Dimension, system: UnitSystem): string {
  const marks = dimension === 'length' ? Math.floor(value / FINEST[system] + 1e-9) : 0;
  if (marks > 0) return formatFigure({ dimension, value: marks * FINEST[system], tolerance: 0 }, { system });
  const step = 10 ** (Math.floor(Math.log10(value)) - 1);
  const digits = Math.floor(value / step + 1e-9) * step;
  return formatValue(digits, dimension, { system: dimension === 'length' ? 'metric' : system });
}

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
