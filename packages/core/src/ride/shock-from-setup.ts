import { USUAL_TOP_OUT_RATE } from '../elements/droop-limit.ts';
import { shockGasOf } from '../elements/shock-gas.ts';
import { knownTo, withSealFriction } from '../elements/shock-table.ts';
import type { End } from '../finding/place.ts';
import type { ValueOf } from '../rig/reading.ts';
import type { Setup } from '../rig/setup.ts';
import type { AxleModel } from './model.ts';

/** How far a shock may go each way, in axle travel at its station [m]; infinite where its lengths do not say. */
export interface ShockRoom {
  readonly bump: number;
  readonly droop: number;
}

/**
 * A shock with the gas, the seals and the ends that were read of it. On its own metal it has the rate of its top, both
 * ways; at the axle ratio² of that.
 */
export function shockLaw(setup: Setup, end: End, room: ShockRoom, at: ValueOf): AxleModel['shock'] {
  const { base, shockSetting } = setup.ends[end];
  const { shock } = base;
  const ratio = at(shock.ratio);
  const friction = shock.friction ? Math.max(0, at(shock.friction)) : 0;
  const damping = withSealFriction({ ...shockSetting, knownTo: knownTo(shockSetting) }, friction);
  const gas = shockGasOf(shock, at);
  const topOut = shock.topOutRate ? at(shock.topOutRate) : USUAL_TOP_OUT_RATE;
  const hasEnds = Number.isFinite(room.bump) || Number.isFinite(room.droop);
  return {
    halfStation: at(shock.spread) / 2,
    ratio,
    speed: damping.speed,
    force: damping.force,
    ...(gas && { gas }),
    ...(hasEnds && {
      ends: { closedAt: room.bump, openAt: room.droop, rate: topOut * ratio ** 2 },
    }),
  };
}
