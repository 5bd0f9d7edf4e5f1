import type { Dimension } from '../finding/figure.ts';

/**
 * What somebody typed, understood: SI value, 95 % half-widths (normal, k = 2, GUM JCGM 100), and the text itself.
 * `4 1/8 in ± 1/16` has plus = minus = 1/16 in; `110 mm +3/-1` has both; `~ 4 in` is an assumed value.
 */
export interface Quantity {
  readonly dimension: Dimension;
  /** SI. */
  readonly value: number;
  /** Half-width upward [SI, ≥ 0], or null when none was typed. */
  readonly plus: number | null;
  /** Half-width downward [SI, ≥ 0], or null when none was typed. */
  readonly minus: number | null;
  /** True when the text begins with `~`: an assumption, not a measurement. */
  readonly assumed: boolean;
  /** The text as typed, trimmed; formatting a parsed quantity gives it back. */
  readonly text: string;
}

/** Which units a view prefers. `shop`: inches as fractions, lb, lb/in, psi, mph. `metric`: mm, kg, N/mm, kPa, km/h. */
export type UnitSystem = 'shop' | 'metric';
