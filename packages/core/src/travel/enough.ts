import type { Figure } from '../finding/figure.ts';
import { type Column, columnOf, figureOf } from '../stance/columns.ts';
import type { SampledColumn } from './sampled-column.ts';
import { verdictOn } from './verdict.ts';

/** What is missing to a pass [m, axle travel]: 95 % half-width − spare, at least nothing. */
export const shortOf = ({ value, tolerance }: Figure): number => Math.max(0, (tolerance ?? 0) - value);

/**
 * Smallest length, cut or added at some of the contacts, that makes the whole corner pass, the others staying as they
 * are [m]. Found on the trials, because the uncertainty changes as another contact comes to be the first.
 *
 * @param gains – whether a contact gains, by its index in the corner's list
 * @param ratio – travel of the place where it is cut ÷ axle travel, sampled; null for a length at the axle itself
 * @returns null when no length is enough: a contact that gains nothing is too close itself
 */
export function smallestLength(
  corner: SampledColumn,
  gains: (index: number) => boolean,
  ratio: Column | null,
): number | null {
  const length = corner.spare.length;
  const rising = smallest(
    corner.spares.filter((_, k) => gains(k)),
    length,
  );
  const staying = smallest(
    corner.spares.filter((_, k) => !gains(k)),
    length,
  );
  if (!Number.isFinite(rising[0])) return null;
  if (Number.isFinite(staying[0]) && verdictOn(figureOf('length', staying)) !== 'pass') return null;
  const spareWith = (added: number): Figure => {
    const together = new Float64Array(length);
    for (let i = 0; i < length; i += 1)
      together[i] = Math.min(rising[i] + (ratio ? added / ratio[i] : added), staying[i]);
    return figureOf('length', together);
  };
  // Where the rising contacts decide, spare grows in proportion, so that adding what is missing settles at once;
  // where the others come to decide, a few steps more.
  const per = ratio ? ratio[0] : 1;
  let added = shortOf(figureOf('length', corner.spare)) * per;
  for (let step = 0; step < STEPS; step += 1) {
    const { value, tolerance } = spareWith(added);
    const missing = (tolerance ?? 0) - value;
    if (Math.abs(missing) < CLOSE) break;
    added = Math.max(0, added + missing * per);
  }
  return verdictOn(spareWith(added)) === 'pass' ? added : null;
}

/**
 * Largest gap along the stop that the owner can set instead, so that the corner passes [m]. The gap that is set is
 * exact, the one that was taped is gone with its error.
 *
 * @param stopRatio – stop travel ÷ axle travel, sampled
 * @returns null when even a closed gap does not pass
 */
export function largestGap({ spare, freeBump, moves }: SampledColumn, stopRatio: Column): number | null {
  const room = columnOf(spare.length, (i) => spare[i] + freeBump[i] + moves.sag[i]);
  let gap = freeBump[0] * stopRatio[0];
  for (let step = 0; step < STEPS; step += 1) {
    const at = gap;
    const { value, tolerance } = figureOf(
      'length',
      columnOf(spare.length, (i) => room[i] - at / stopRatio[i]),
    );
    const missing = (tolerance ?? 0) - value;
    if (Math.abs(missing) < CLOSE) break;
    gap -= missing * stopRatio[0];
  }
  return gap > 0 ? gap : null;
}

const STEPS = 10;
/** Finer than what the verdict allows for [m]. */
const CLOSE = 1e-7;

function smallest(columns: readonly Column[], length: number): Column {
  const least = new Float64Array(length).fill(Number.POSITIVE_INFINITY);
  for (const column of columns) for (let i = 0; i < length; i += 1) least[i] = Math.min(least[i], column[i]);
  return least;
}
