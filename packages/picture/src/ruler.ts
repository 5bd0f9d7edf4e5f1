import type { UnitSystem } from '@lastinch/core';

/** A ruler as on a tape: exact steps of the unit system, every so many of them with a number. */
export interface Ruler {
  /** Distance between marks [m]. */
  readonly step: number;
  /** Every how many marks a number stands. */
  readonly every: number;
  /** Metres of one unit of the numbers. */
  readonly unit: number;
  readonly unitName: string;
}

const INCH = 0.0254;

/** Steps that a tape has, in its unit, with how many of them lie from number to number. */
const STEPS: Readonly<Record<UnitSystem, readonly { readonly step: number; readonly every: number }[]>> = {
  shop: [
    { step: 1 / 16, every: 16 },
    { step: 1 / 8, every: 8 },
    { step: 1 / 4, every: 4 },
    { step: 1 / 2, every: 2 },
    { step: 1, every: 2 },
    { step: 2, every: 3 },
    { step: 6, every: 2 },
    { step: 12, every: 5 },
  ],
  metric: [
    { step: 1, every: 10 },
    { step: 2, every: 10 },
    { step: 5, every: 4 },
    { step: 10, every: 5 },
    { step: 20, every: 5 },
    { step: 50, every: 2 },
    { step: 100, every: 5 },
    { step: 500, every: 2 },
  ],
};

/** The finest ruler whose marks are at least `smallest` metres apart; the coarsest one when none is. */
export const rulerFor = (system: UnitSystem, smallest: number): Ruler => {
  const unit = system === 'shop' ? INCH : 0.001;
  const steps = STEPS[system];
  const fit = steps.find(({ step }) => step * unit >= smallest) ?? steps[steps.length - 1]!;
  return { step: fit.step * unit, every: fit.every, unit, unitName: system === 'shop' ? 'in' : 'mm' };
};

/** Whole numbers k of the marks at k·step between two heights. */
export const marksBetween = (ruler: Ruler, bottom: number, top: number): readonly number[] => {
  const first = Math.ceil(bottom / ruler.step - 1e-9);
  const last = Math.floor(top / ruler.step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => first + k);
};

/** The number at mark k: with its sign, because bump is positive and droop negative. */
export const markText = (ruler: Ruler, k: number): string => {
  const value = Math.round(((k * ruler.step) / ruler.unit) * 10000) / 10000;
  return value > 0 ? `+${value}` : value < 0 ? `−${-value}` : '0';
};
