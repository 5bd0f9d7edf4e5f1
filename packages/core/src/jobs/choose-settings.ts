import type { EndPatch } from '../rig/setup-patch.ts';
import { type Pass, squaresOf } from './choose-drive.ts';
import { AS_IT_IS, type TrimPatch } from './choose-patch.ts';
import type { SoftAxis } from './choose-table.ts';

/** One way to set a trim, and how it drives. */
export interface SetTrim {
  readonly settings: TrimPatch;
  /** One a course of the trim, at the nominal readings. */
  readonly passes: readonly Pass[];
}

/**
 * The best setting of a trim: one setting after another, in the order front to rear, shock, pressure, bar, each of its
 * values is tried with the others as they were found so far, and the better one stays. Better is: gets to the end of
 * every course; then keeps the reserve clear on all of them; then shakes the seat less over the day; of two that do not
 * keep it clear, the one with more left. All at the nominal readings; of equals the first of the list stays.
 *
 * @validity one pass over the settings, not all their combinations: with two settings that only help together it may
 * miss the best, never the better of what it tried
 */
export function bestSettings(
  axes: readonly SoftAxis[],
  drive: (settings: TrimPatch) => readonly Pass[],
): SetTrim {
  const first = axes.reduce<TrimPatch>(
    (settings, axis) => withPatch(settings, axis, axis.patches[0]),
    AS_IT_IS,
  );
  let best: SetTrim = { settings: first, passes: drive(first) };
  for (const axis of axes)
    for (const patch of axis.patches.slice(1)) {
      const settings = withPatch(best.settings, axis, patch);
      const passes = drive(settings);
      if (isBetter(passes, best.passes)) best = { settings, passes };
    }
  return best;
}

const withPatch = (settings: TrimPatch, { end }: SoftAxis, patch: EndPatch): TrimPatch => ({
  ...settings,
  [end]: { ...settings[end], ...patch },
});

function isBetter(one: readonly Pass[], than: readonly Pass[]): boolean {
  const [ends, ended] = [one, than].map((passes) => passes.every(({ isFinished }) => isFinished));
  if (ends !== ended) return ends;
  const [left, leftNow] = [leastOf(one), leastOf(than)];
  if (left < 0 || leftNow < 0) return left > leftNow;
  return squaresOf(one) < squaresOf(than);
}

/** Least spare of several courses [m]. */
export const leastOf = (passes: readonly Pass[]): number =>
  passes.reduce((least, { spare }) => Math.min(least, spare), Number.POSITIVE_INFINITY);
