import type { End, Side } from '../finding/place.ts';
import { SIDES } from '../finding/place.ts';
import type { ContactKind } from '../rig/rig.ts';
import type { Setup } from '../rig/setup.ts';
import { NOMINAL_DRAWS } from '../stance/draws.ts';
import { movesOf } from '../stance/moves.ts';
import { COIL, contactsOf, SHOCK } from './contacts.ts';
import { droopOf } from './droop.ts';
import type { DroopLine } from './result.ts';
import { freeBump } from './stop-gap.ts';

/** Where an axle stands against the frame: heave [m], bump positive; body roll over it [rad], right side down positive. */
export interface Pose {
  readonly heave: number;
  readonly roll: number;
}

/** What is left at one side of an axle in a pose. All at the nominal readings, axle travel [m] unless it says otherwise. */
export interface SideGaps {
  /** Axle travel at the stop's station. */
  readonly travel: number;
  /** Left before the stop touches, ≥ 0. */
  readonly stopGap: number;
  /** Crush of the stop, along the stop, ≥ 0. */
  readonly stopCrush: number;
  /** Whether the stop is crushed past what it can take. */
  readonly stopUsedUp: boolean;
  readonly contacts: readonly {
    readonly id: string;
    readonly name: string;
    readonly kind: ContactKind;
    /** Left before it is hit; negative: the pose cannot be reached. */
    readonly left: number;
    /** The same along the motion of the point that touches. */
    readonly gap: number;
  }[];
  /** Left before each droop limit; negative: beyond it. */
  readonly droop: readonly { readonly id: DroopLine['id']; readonly left: number }[];
}

/**
 * Gaps that are left in a pose of the axle, for both sides.
 *
 *     travel at station y = heave − roll·y,   y left positive
 *
 * @validity small roll; a body contact is taken where it touches, or at the stop's station of its side; coil and shock at their own;
 * hose and strap at the shock's; the axle turns about the middle of the rig
 * @source geometry
 */
export function gapsAt(setup: Setup, end: End, { heave, roll }: Pose): Readonly<Record<Side, SideGaps>> {
  const { base, stop } = setup.ends[end];
  const moves = movesOf(setup, end, NOMINAL_DRAWS);
  const at = (spread: number, side: Side) => heave - (roll * spread * (side === 'left' ? 1 : -1)) / 2;
  const of = (side: Side): SideGaps => {
    const travel = at(base.stopMount.spread.value, side);
    const coilTravel = at(base.springSpread.value, side);
    const shockTravel = at(base.shock.spread.value, side);
    const beyond = travel - freeBump(setup, end, side, moves, NOMINAL_DRAWS)[0];
    const stopCrush = Math.max(0, beyond * base.stopMount.ratio.value);
    return {
      travel,
      stopGap: Math.max(0, -beyond),
      stopCrush,
      stopUsedUp: stopCrush > stop.usableCrush.value,
      contacts: contactsOf(setup, end, side, moves, NOMINAL_DRAWS).map((contact) => {
        const spread = base.contacts.find(({ id }) => id === contact.id)?.spread;
        const bodyTravel = spread ? at(spread.value, side) : travel;
        const used = contact.id === COIL ? coilTravel : contact.id === SHOCK ? shockTravel : bodyTravel;
        const left = contact.travel[0] - used;
        const { id, name, kind } = contact;
        return { id, name, kind, left, gap: left * contact.ratio.value };
      }),
      droop: droopOf(setup, end, moves, NOMINAL_DRAWS).map(({ id, travel: limit }) => {
        const used = id === 'spring' ? coilTravel : id === 'shaft' ? heave : shockTravel;
        return { id, left: limit[0] + used };
      }),
    };
  };
  const [left, right] = SIDES;
  return { left: of(left), right: of(right) };
}
