import { ENDS } from '../finding/place.ts';
import { STANDARD_GRAVITY } from '../stance/gravity.ts';
import { COORDINATES, type Pull } from './roll-energy.ts';
import type { RollModel } from './roll-model.ts';
import { type Settled, settle } from './settle.ts';

/** A side slope, right side down. Angles [rad]. */
export interface SideSlope {
  /** At which the first upper wheel carries nothing. */
  readonly firstLift: number;
  /** At which no upper wheel carries anything, or it goes over before. */
  readonly tips: number;
  /** Lean of the body against the ground at the last angle at which it stands. */
  readonly lean: number;
}

/** Gravity on a side slope: g·cos α square to the ground, g·sin α along it. */
export const pullOnSlope = (angle: number): Pull => ({
  normal: STANDARD_GRAVITY * Math.cos(angle),
  right: STANDARD_GRAVITY * Math.sin(angle),
});

const STEPS = 10;
/** Angles are found to this [rad]: a hundredth of a degree. */
const FINE = 1.5e-4;

/**
 * Tilts a rig on a rising side slope, right side down, everything at rest, until its upper wheels carry nothing. Springs,
 * bars, stops, droop limits and tyres act as they come.
 *
 * @param steepest – angle at which the rig without any give would tip [rad]: it never stands beyond
 * @returns angles; for the left side down ask `mirrored(model)`
 * @validity a smooth slope, standing still, wheels that do not slide. Not a driver's limit: a rut, a rock, a turn or a
 *   brake takes much of it.
 * @source statics; the tilt table of ISO 16333 and of the agency's tilt-table ratio asks the same (from memory)
 */
export function sideSlope(model: RollModel, steepest: number): SideSlope {
  let stood = settle(model, pullOnSlope(0));
  let below = 0;
  let firstLift: number | null = null;
  let above = steepest;
  for (let step = 1; step <= STEPS; step += 1) {
    const angle = (steepest * step) / STEPS;
    const now = settle(model, pullOnSlope(angle), stood.coordinates);
    const stands = isUp(now);
    if (firstLift === null && (!stands || least(now) <= 0))
      firstLift = bisect(below, angle, stood, model, (state) => isUp(state) && least(state) > 0).angle;
    if (!stands) {
      above = angle;
      break;
    }
    [below, stood] = [angle, now];
  }
  const last = bisect(below, above, stood, model, isUp);
  return { firstLift: firstLift ?? last.angle, tips: last.angle, lean: last.state.bodyRoll };

  function bisect(
    low: number,
    high: number,
    from: Settled,
    of: RollModel,
    holds: (state: Settled) => boolean,
  ): { angle: number; state: Settled } {
    let state = from;
    let [under, over] = [low, high];
    while (over - under > FINE) {
      const middle = (under + over) / 2;
      const now = settle(of, pullOnSlope(middle), state.coordinates);
      if (holds(now)) [under, state] = [middle, now];
      else over = middle;
    }
    return { angle: (under + over) / 2, state };
  }
}

const upper = ({ tyreLoad }: Settled): readonly [number, number] => [tyreLoad.frontLeft, tyreLoad.rearLeft];
const least = (state: Settled): number => Math.min(...upper(state));
/** Stands, with a load on one upper wheel at least. */
const isUp = (state: Settled): boolean => state.status === 'stands' && Math.max(...upper(state)) > 0;

/** Where a rig without any give tips, right side down: tan α = lever ÷ height, about the line through the right tyres. */
export function rigidSlope(
  centre: { readonly share: number; readonly left: number; readonly height: number },
  model: RollModel,
): number {
  const [front, rear] = ENDS.map((end) => model.ends[end].halfTrack);
  return Math.atan(((1 - centre.share) * front + centre.share * rear + centre.left) / centre.height);
}

/** At rest on level ground. */
export const atRest = (model: RollModel): Settled =>
  settle(model, pullOnSlope(0), new Float64Array(COORDINATES));
