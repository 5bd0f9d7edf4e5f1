import { CORNERS, type Corner, cornerAt, ENDS, type End } from '../finding/place.ts';
import {
  AXLE,
  type Balance,
  BODY_ROLL,
  balanceAt,
  COORDINATES,
  newBalance,
  type Pull,
} from './roll-energy.ts';
import type { RollModel } from './roll-model.ts';

/** How a rig stands under a pull. */
export interface Settled {
  /** `stands` at least of the energy; `tips` when it found none near. */
  readonly status: 'stands' | 'tips';
  /** Right side down [rad], against the ground. */
  readonly bodyRoll: number;
  readonly axleRoll: Readonly<Record<End, number>>;
  /** On each tyre, square to the ground [N]; below zero: what it would have to pull. */
  readonly tyreLoad: Readonly<Record<Corner, number>>;
  /** Coordinates in the order of `roll-energy.ts`: where to go on from. */
  readonly coordinates: Float64Array;
}

/** Beyond, it lies on its side [rad]. */
const FALLEN = 0.7;
const STEP_LIMIT = 80;
/** Slope of the energy left, as a share of the weight [1]; moments count per metre. */
const ACCURACY = 1e-11;

/**
 * Where a rig comes to rest: the least of its potential energy that lies downhill of `from`, by Newton's method with the
 * curvature raised until it leads down (Levenberg), so that it never ends on a saddle.
 *
 * @param from – coordinates to start at; those of a like pull make it follow one way of standing
 * @source Nocedal and Wright, Numerical Optimization, 3.4 (from memory)
 */
export function settle(
  model: RollModel,
  pull: Pull,
  from: Float64Array = new Float64Array(COORDINATES),
): Settled {
  const q = from.slice();
  const here = newBalance();
  const there = newBalance();
  const next = new Float64Array(COORDINATES);
  const weight = weightOf(model);
  balanceAt(model, pull, q, here);
  let raise = 0;
  let stands = false;
  for (let step = 0; step < STEP_LIMIT; step += 1) {
    if (largest(here.slope) <= ACCURACY * weight) {
      stands = isLeast(here);
      if (stands) break;
      raise = Math.max(raise, 1e-6 * weight);
    }
    const move = descent(here, raise);
    if (move === null) {
      raise = Math.max(10 * raise, 1e-6 * weight);
      continue;
    }
    for (let i = 0; i < COORDINATES; i += 1) next[i] = q[i] + move[i];
    balanceAt(model, pull, next, there);
    // Far below the rounding of the energy itself a step that leads down may look level.
    if (
      there.energy <= here.energy + 1e-13 * Math.abs(here.energy) ||
      largest(there.slope) < largest(here.slope)
    ) {
      q.set(next);
      balanceAt(model, pull, q, here);
      raise = raise > 1e-6 * weight ? raise / 10 : 0;
    } else raise = Math.max(10 * raise, 1e-4 * weight);
    if (Math.abs(q[BODY_ROLL]) > FALLEN || Math.abs(q[AXLE + 1]) > FALLEN || Math.abs(q[AXLE + 3]) > FALLEN)
      break;
  }
  return stateAt(model, q, stands ? 'stands' : 'tips');
}

function stateAt(model: RollModel, q: Float64Array, status: Settled['status']): Settled {
  const tyreLoad = {} as Record<Corner, number>;
  for (const [e, end] of ENDS.entries()) {
    const { halfTrack, tyreRate, tyreLoad: atRest } = model.ends[end];
    const [rise, roll] = [q[AXLE + 2 * e], q[AXLE + 2 * e + 1]];
    tyreLoad[cornerAt(end, 'left')] = atRest.left - tyreRate * (rise + halfTrack * roll);
    tyreLoad[cornerAt(end, 'right')] = atRest.right - tyreRate * (rise - halfTrack * roll);
  }
  return {
    status,
    bodyRoll: q[BODY_ROLL],
    axleRoll: { front: q[AXLE + 1], rear: q[AXLE + 3] },
    tyreLoad,
    coordinates: q,
  };
}

const weightOf = ({ ends }: RollModel): number =>
  CORNERS.reduce((sum, corner) => {
    const { tyreLoad } = ends[corner.startsWith('front') ? 'front' : 'rear'];
    return sum + (corner.endsWith('Left') ? tyreLoad.left : tyreLoad.right);
  }, 0);

function largest(values: Float64Array): number {
  let most = 0;
  for (let i = 0; i < values.length; i += 1) most = Math.max(most, Math.abs(values[i]));
  return most;
}

const isLeast = (balance: Balance): boolean => descent(balance, 0) !== null;

/** Solves (curvature + raise)·move = −slope by Cholesky; null when that is not positive. */
export function descent(
  { slope, curvature }: Pick<Balance, 'slope' | 'curvature'>,
  raise: number,
): Float64Array | null {
  const n = COORDINATES;
  const factor = new Float64Array(n * n);
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = curvature[n * i + j] + (i === j ? raise : 0);
      for (let k = 0; k < j; k += 1) sum -= factor[n * i + k] * factor[n * j + k];
      if (i === j) {
        if (!(sum > 1e-9)) return null;
        factor[n * i + i] = Math.sqrt(sum);
      } else factor[n * i + j] = sum / factor[n * j + j];
    }
  }
  const move = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    let sum = -slope[i];
    for (let k = 0; k < i; k += 1) sum -= factor[n * i + k] * move[k];
    move[i] = sum / factor[n * i + i];
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = move[i];
    for (let k = i + 1; k < n; k += 1) sum -= factor[n * k + i] * move[k];
    move[i] = sum / factor[n * i + i];
  }
  return move;
}
