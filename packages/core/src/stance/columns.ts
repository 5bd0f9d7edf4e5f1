import type { Dimension, Figure } from '../finding/figure.ts';
import { coverageHalfWidth } from '../numerics/coverage.ts';
import type { Reading } from '../rig/reading.ts';

/**
 * Arithmetic on sampled quantities: index 0 is the nominal value, then one value a trial. One loop a formula, so
 * that thousands of trials cost what a few did.
 */
export type Column = Float64Array;

/** The figure of a sampled quantity: nominal value, 95 % half-width. */
export const figureOf = (dimension: Dimension, column: Column): Figure => ({
  dimension,
  value: column[0],
  tolerance: coverageHalfWidth(column),
});

/** The figure of one reading: needs no sampling. */
export const figureOfReading = (reading: Reading): Figure => ({
  dimension: reading.dimension,
  value: reading.value,
  tolerance: Math.max(reading.plus, reading.minus),
});

/** A figure whose tolerance nobody knows. */
export const unsure = (figure: Figure): Figure => ({ ...figure, tolerance: null });

/** An exact figure: a choice or a limit, not a reading. */
export const exact = (dimension: Dimension, value: number): Figure => ({ dimension, value, tolerance: 0 });

/** Column of a formula over the nominal and every trial. */
export function columnOf(length: number, formula: (index: number) => number): Column {
  const column = new Float64Array(length);
  for (let i = 0; i < length; i += 1) column[i] = formula(i);
  return column;
}

/** Share of the trials in which something holds. */
export function shareOf(trials: number, holds: (index: number) => boolean): number {
  let count = 0;
  for (let i = 1; i <= trials; i += 1) if (holds(i)) count += 1;
  return count / trials;
}
