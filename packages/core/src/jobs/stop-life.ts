import { CORNERS, cornerAt, type End, SIDES } from '../finding/place.ts';
import { minerSum, rainflow } from '../numerics/rainflow.ts';
import type { RideModel } from '../ride/model.ts';
import { runRide } from '../ride/run.ts';
import type { Setup } from '../rig/setup.ts';
import { durationOf } from './driving.ts';
import type { FeltGrounds } from './felt-ground.ts';
import type { Demand } from './stop-drive.ts';

/** Least and most of a band. */
export interface LifeBand {
  readonly least: number;
  readonly most: number;
}

/** How one course uses a stop up: the side that is worn more. */
export interface StopLife {
  readonly demand: string;
  /** Times it is touched in one pass. */
  readonly hits: number;
  /** Length of a pass [m]; null for a drop, which knows none. */
  readonly pass: number | null;
  /** One pass, counted in crushes to the usable crush and back. */
  readonly fullCrushes: LifeBand;
  /** Passes until Miner's sum is 1; null as upper end, and as both, where it is never used. */
  readonly passes: { readonly least: number | null; readonly most: number | null };
}

/**
 * Life goes with range of crush to the power of −slope: about twice the exponent of tearing energy, 2 for natural rubber, 4
 * for unfilled synthetic.
 * @source Lake and Lindley (from memory)
 */
export const LIFE_SLOPES = [4, 8] as const;
/** Full crushes that a stop bears (common practice, no source): a marked band, not a promise. */
export const FULL_CRUSHES: LifeBand = { least: 1e4, most: 1e5 };
/** Crush loses nothing of its peaks at this rate [1/s]: a hit takes 50 ms and more. */
const RATE = 400;

/**
 * Crush history of one pass, counted by rainflow, summed by Miner.
 *
 * @validity nominal readings; crush beyond the usable one wears by the same law, which is kind to it; heat, oil, sun and
 *   cold are not in it
 */
export function stopLife(
  model: RideModel,
  setup: Setup,
  end: End,
  demand: Demand,
  grounds: FeltGrounds,
): StopLife {
  const track = grounds.of(demand.course, setup);
  const { history, corners } = runRide(model, track, {
    speed: demand.speed,
    duration: durationOf(track, model.sprung.toFrontAxle + model.sprung.toRearAxle, demand.speed),
    historyRate: RATE,
  });
  if (history === null) throw new Error('a history was asked for');
  const usable = setup.ends[end].stop.usableCrush.value;
  const sides = SIDES.map((side) => {
    const at = CORNERS.indexOf(cornerAt(end, side));
    const crush = Float64Array.from({ length: history.count }, (_, k) =>
      Math.max(0, history.crush[4 * k + at]),
    );
    const cycles = rainflow(crush).filter(({ range }) => range > 0);
    const sums = LIFE_SLOPES.map((slope) => minerSum(cycles, (range) => (usable / range) ** slope));
    return {
      hits: corners[cornerAt(end, side)].contacts.stop,
      least: Math.min(...sums),
      most: Math.max(...sums),
    };
  });
  const worse = sides.reduce((a, b) => (b.most > a.most ? b : a));
  return {
    demand: demand.name,
    hits: worse.hits,
    pass: track.initialLift > 0 ? null : track.end,
    fullCrushes: { least: worse.least, most: worse.most },
    passes: {
      least: worse.most > 0 ? FULL_CRUSHES.least / worse.most : null,
      most: worse.least > 0 ? FULL_CRUSHES.most / worse.least : null,
    },
  };
}
