import type { End, Side } from '../finding/place.ts';
import type { Problem } from '../finding/problem.ts';
import type { Setup } from '../rig/setup.ts';
import type { Column } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import { type Moves, need, partKey } from '../stance/moves.ts';

/** Whether a setup fits another stop than the one on the rig. */
export const hasOtherStop = (setup: Setup, end: End): boolean => {
  const { base, stop } = setup.ends[end];
  return stop.usableCrush.key !== base.stop.usableCrush.key;
};

/**
 * What is missing to say where another stop's gap ends: the free lengths of both, or the gap that the owner will set.
 * Nothing is assumed here: a stop that is longer by an inch than thought takes an inch of travel.
 */
export function stopGapNeeds(setup: Setup, end: End): readonly Problem[] {
  const { base, patch, stop } = setup.ends[end];
  if (!hasOtherStop(setup, end) || patch.stopGap) return [];
  const needs: Problem[] = [];
  if (!stop.freeLength) needs.push(need(`${partKey(stop.usableCrush.key)}.freeLength`, stop.id));
  if (!base.stop.freeLength)
    needs.push(need(`${partKey(base.stop.usableCrush.key)}.freeLength`, base.stop.id));
  return needs;
}

/**
 * Free bump travel: axle travel until the stop touches, sampled [m].
 *
 *     g = (gap − spacer − (free length of the new stop − of the old)) ÷ ratio + springLift − sag
 *     g = gap that the owner will set ÷ ratio − sag, where he says it
 *
 * @source rules T1, T2, T8, T9, T10 of SPEC.md
 */
export function freeBump(setup: Setup, end: End, side: Side, moves: Moves, draws: Draws): Column {
  const { base, patch, stop } = setup.ends[end];
  const { springLift, sag } = moves;
  const ratio = draws.of(base.stopMount.ratio);
  const free = new Float64Array(ratio.length);
  if (patch.stopGap) {
    const set = draws.of(patch.stopGap);
    for (let i = 0; i < free.length; i += 1) free[i] = set[i] / ratio[i] - sag[i];
    return free;
  }
  const gap = draws.of(base.stopMount.gap[side]);
  const spacer = patch.stopSpacer && draws.of(patch.stopSpacer);
  const swapped = hasOtherStop(setup, end) && stop.freeLength && base.stop.freeLength;
  const after = swapped && stop.freeLength ? draws.of(stop.freeLength) : null;
  const before = swapped && base.stop.freeLength ? draws.of(base.stop.freeLength) : null;
  for (let i = 0; i < free.length; i += 1) {
    let along = gap[i];
    if (spacer) along -= spacer[i];
    if (after && before) along -= after[i] - before[i];
    free[i] = along / ratio[i] + springLift[i] - sag[i];
  }
  return free;
}
