import type { WantedCurve } from '../stopdesign/density-for-curve.ts';

/** A stretch of a wanted curve that is not followed. */
export interface CurveMiss {
  /** [m] */
  readonly from: number;
  readonly to: number;
  readonly way: 'soft' | 'hard';
  /** Worst there: share of the wanted force, and the crush [m]. */
  readonly share: number;
  readonly at: number;
}

const PLACES = 60;

/**
 * Where a curve is missed, stretch by stretch, and by how much.
 *
 * @param met – share of the wanted force that counts as met
 * @param from – crush before which nothing is said [m]
 * @returns share Infinity where the print has closed before
 */
export function missesOf(
  target: WantedCurve,
  forceAt: (crush: number) => number,
  { met, from }: { readonly met: number; readonly from: number },
): readonly CurveMiss[] {
  const end = target.crush[target.crush.length - 1];
  const misses: CurveMiss[] = [];
  let open: CurveMiss | null = null;
  for (let k = 1; k <= PLACES; k += 1) {
    const crush = (end * k) / PLACES;
    if (crush < from) continue;
    const off = forceAt(crush) / along(target, crush) - 1;
    const way = off < 0 ? 'soft' : 'hard';
    const share = Math.abs(off);
    if (share <= met || (open !== null && open.way !== way)) {
      if (open !== null) misses.push(open);
      open = null;
    }
    if (share <= met) continue;
    const before: CurveMiss = open ?? { from: crush - end / PLACES, to: crush, way, share: 0, at: crush };
    open = { ...before, to: crush, ...(share > before.share ? { share, at: crush } : {}) };
  }
  return open === null ? misses : [...misses, open];
}

/** On straight lines through a curve. */
export function along({ crush, force }: WantedCurve, at: number): number {
  const k = crush.findIndex((c) => c >= at);
  const i = k === -1 ? crush.length - 1 : Math.max(1, k);
  return force[i - 1] + ((force[i] - force[i - 1]) * (at - crush[i - 1])) / (crush[i] - crush[i - 1]);
}
