import type { End, Side } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { type Column, columnOf } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import type { Moves } from '../stance/moves.ts';
import { COIL, contactsOf, SHOCK } from './contacts.ts';
import { droopOf } from './droop.ts';
import { freeBump } from './stop-gap.ts';

/** One thing that can stop an axle from rolling further, sampled. */
export interface SampledLimit {
  readonly id: string;
  readonly name: string;
  readonly side: Side;
  /** On which side of the axle it lies: on the one that goes up (1) or down (−1). */
  readonly way: 1 | -1;
  /** Axle travel at which it is reached, in bump or in droop [m]. */
  readonly travel: Column;
  /** Where that travel counts: half the distance left to right [m]; 0 for the middle. */
  readonly arm: Column;
  /** Whose true length tells it better, and by which ratio, where mounts were measured. */
  readonly strut: { readonly part: 'spring' | 'shock' | 'stop'; readonly ratio: Column } | null;
}

/**
 * Everything that can end the flex of one axle when `up` goes up: contacts, the stop used up, coil and shock on the side
 * that goes up; strap, open shock, hose and shaft on the other.
 *
 * @validity a body contact counts where it touches, or at the stop's station where nobody taped that; the shaft in the middle
 */
export function flexLimits(
  setup: Setup,
  end: End,
  up: Side,
  moves: Moves,
  draws: Draws,
): readonly SampledLimit[] {
  const { base, stop } = setup.ends[end];
  const length = draws.trials + 1;
  const down: Side = up === 'left' ? 'right' : 'left';
  const half = (spread: Column) => columnOf(length, (i) => spread[i] / 2);
  const stopArm = half(draws.of(base.stopMount.spread));
  const springArm = half(draws.of(base.springSpread));
  const shockArm = half(draws.of(base.shock.spread));
  const middle = new Float64Array(length);
  const spring = { part: 'spring', ratio: draws.of(base.springRatio) } as const;
  const shock = { part: 'shock', ratio: draws.of(base.shock.ratio) } as const;
  const free = freeBump(setup, end, up, moves, draws);
  const usable = draws.of(stop.usableCrush);
  const stopRatio = draws.of(base.stopMount.ratio);
  const bump = { side: up, way: 1 } as const;
  const limits: SampledLimit[] = [
    {
      ...bump,
      id: 'stop',
      name: 'stop crushed to its limit',
      travel: columnOf(length, (i) => free[i] + usable[i] / stopRatio[i]),
      arm: stopArm,
      strut: null,
    },
  ];
  for (const { id, name, travel } of contactsOf(setup, end, up, moves, draws)) {
    const spread = base.contacts.find((contact) => contact.id === id)?.spread;
    const bodyArm = spread ? half(draws.of(spread)) : stopArm;
    const [arm, strut] =
      id === COIL ? [springArm, spring] : id === SHOCK ? [shockArm, shock] : [bodyArm, null];
    limits.push({ ...bump, id, name, travel, arm, strut });
  }
  for (const { id, travel } of droopOf(setup, end, moves, draws)) {
    // A coil that goes loose ends nothing.
    if (id === 'spring') continue;
    limits.push({
      id: id === 'shock' ? 'shock-open' : id,
      name: DROOP_NAMES[id],
      side: down,
      way: -1,
      travel,
      arm: id === 'shaft' ? middle : shockArm,
      strut: id === 'shock' || id === 'strap' ? shock : null,
    });
  }
  return limits;
}

const DROOP_NAMES = {
  shock: 'shock fully open',
  strap: 'strap fully stretched',
  hose: 'hose taut',
  shaft: 'shaft out of travel',
} as const;
