import type { Dimension, Figure } from '../finding/figure.ts';
import type { Severity } from '../finding/finding.ts';
import { coverageHalfWidth } from '../numerics/coverage.ts';

/**
 * Figure of something worked out at the nominal geometry (first) and in trials of it (the others). Without trials
 * its tolerance is unknown.
 */
export function figureOver<T>(
  dimension: Dimension,
  answers: readonly T[],
  of: (answer: T) => number,
): Figure {
  const values = Float64Array.from(answers, of);
  return {
    dimension,
    value: values[0] ?? Number.NaN,
    tolerance: values.length < 3 ? null : coverageHalfWidth(values),
  };
}

export const exactly = (dimension: Dimension, value: number): Figure => ({ dimension, value, tolerance: 0 });

/** What bears on a limit: over it for certain, within it for certain, or too close to say. Unknown proves nothing. */
export function severityOf({ value, tolerance }: Figure): Severity {
  if (tolerance === null) return value < 0 ? 'over' : 'unproven';
  if (value >= tolerance - ROUNDING) return 'fine';
  return value <= -tolerance ? 'over' : 'unproven';
}

/** A micrometre, or a millionth of a radian: what sampling may take from a part that was worked out to be just enough. */
const ROUNDING = 1e-6;
