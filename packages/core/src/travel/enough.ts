import type { Figure } from '../finding/figure.ts';
import { type Column, figureOf } from '../stance/columns.ts';
import type { SampledColumn } from './sampled-column.ts';
import { verdictOn } from './verdict.ts';

/** What is missing to a pass [m, axle travel]: 95 % half-width − spare, at least nothing. */
export const shortOf = ({ value, tolerance }: Figure): number => Math.max(0, (tolerance ?? 0) - value);

/**
 * Smallest gain at some of the contacts that makes the whole corner pass, the others staying as they are [m, axle
 * travel]. Found on the trials, because the uncertainty changes as another contact comes to be the first.
 *
 * @param gains – whether a contact gains, by its index in the corner's list
 * @returns null when no gain is enough: a contact that gains nothing is too close itself
 */
export function smallestGain(corner: SampledColumn, gains: (index: number) => boolean): number | null {
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
  const spareWith = (gain: number): Figure => {
    const together = new Float64Array(length);
    for (let i = 0; i < length; i += 1) together[i] = Math.min(rising[i] + gain, staying[i]);
    return figureOf('length', together);
  };
  // Where the rising contacts decide, spare grows one for one, so that stepping by what is missing settles at once;
  // where the others come to decide, a few steps more.
  let gain = shortOf(figureOf('length', corner.spare));
  for (let step = 0; step < STEPS; step += 1) {
    const { value, tolerance } = spareWith(gain);
    const missing = (tolerance ?? 0) - value;
    if (Math.abs(missing) < CLOSE) break;
    gain = Math.max(0, gain + missing);
  }
  return verdictOn(spareWith(gain + CLOSE)) === 'pass' ? gain : null;
}

const STEPS = 8;
/** A hundredth of a millimetre: finer than anything that can be cut. */
const CLOSE = 1e-5;

function smallest(columns: readonly Column[], length: number): Column {
  const least = new Float64Array(length).fill(Number.POSITIVE_INFINITY);
  for (const column of columns) for (let i = 0; i < length; i += 1) least[i] = Math.min(least[i], column[i]);
  return least;
}
