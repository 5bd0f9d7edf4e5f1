import type { Reading } from '../rig/reading.ts';
import type { Draws } from '../stance/draws.ts';
import type { Blame } from './result.ts';

/** Smaller shares are left out: nobody takes a tape in hand for them. */
const WORTH_NAMING = 0.005;

/**
 * Share of the variance of a result that each reading is to blame for, largest first: the squared correlation of the
 * result with the reading's own error over the trials.
 *
 * For a sum of independent readings this is the budget of the GUM, (c·u)² ÷ Σ(c·u)². Where two contacts are nearly
 * level, each takes the part of the trials in which it comes first, and the shares add to less than 1.
 *
 * @param result – nominal at index 0, then one value a trial
 * @param readings – those that the result was made from
 * @invariant shares ≥ 0 and together at most 1
 * @source JCGM 100:2008, 5.1.2 (linear case); JCGM 101:2008, annex B; first-order index of Sobol (1993) in its linear
 * form (from memory)
 */
export function blameOf(result: Float64Array, readings: Iterable<Reading>, draws: Draws): readonly Blame[] {
  const { trials } = draws;
  let mean = 0;
  for (let i = 1; i <= trials; i += 1) mean += result[i];
  mean /= trials;
  let variance = 0;
  for (let i = 1; i <= trials; i += 1) variance += (result[i] - mean) ** 2;
  const shares: Blame[] = [];
  if (!(variance > 0)) return shares;
  let total = 0;
  for (const reading of readings) {
    if (reading.plus === 0 && reading.minus === 0) continue;
    const scores = draws.scores(reading);
    let along = 0;
    let size = 0;
    for (let i = 0; i < trials; i += 1) {
      along += scores[i] * (result[i + 1] - mean);
      size += scores[i] * scores[i];
    }
    const share = (along * along) / (size * variance);
    if (share < WORTH_NAMING) continue;
    total += share;
    shares.push({ key: reading.key, share });
  }
  // Sampled dimensions are nearly, not exactly, uncorrelated: the sum may pass 1 by some thousandths.
  const scale = total > 1 ? 1 / total : 1;
  return shares
    .map(({ key, share }) => ({ key, share: share * scale }))
    .sort((a, b) => b.share - a.share || (a.key < b.key ? -1 : 1));
}
