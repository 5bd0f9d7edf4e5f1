import type { Figure } from '../finding/figure.ts';
import type { Verdict } from './result.ts';

/** A micrometre: what sampling and rounding may take from a spacer that was worked out to be just enough [m]. */
const ROUNDING = 1e-6;

/**
 * Verdict on a spare travel and its 95 % half-width u: pass when spare ≥ u, fail when spare ≤ −u, and in between the
 * readings cannot prove either. Unknown uncertainty proves nothing.
 *
 * @source rule T16 of SPEC.md
 */
export function verdictOn({ value, tolerance }: Figure): Verdict {
  if (tolerance === null || !Number.isFinite(tolerance)) return 'not-proven';
  if (value >= tolerance - ROUNDING) return 'pass';
  return value <= -tolerance ? 'fail' : 'not-proven';
}
