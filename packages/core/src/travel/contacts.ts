import type { End, Side } from '../finding/place.ts';
import type { Reading } from '../rig/reading.ts';
import type { ContactKind } from '../rig/rig.ts';
import type { Setup } from '../rig/setup.ts';
import type { Column } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import type { Moves } from '../stance/moves.ts';

/** One candidate of the hard-travel list, sampled [m, axle travel]. */
export interface SampledContact {
  readonly id: string;
  readonly name: string;
  readonly kind: ContactKind;
  /** Travel of the point ÷ axle travel. */
  readonly ratio: Reading;
  /** From ride height to the contact. */
  readonly travel: Column;
  /** What must stay free of it. */
  readonly allowance: Column;
}

export const COIL = 'coil';
export const SHOCK = 'shock';

/**
 * The contact list of one corner: every measured contact, the coil going solid, the shock bottoming, each in axle
 * travel of its own ratio.
 *
 *     body:  (gap + notch) ÷ ratio + height          keeps flex + reserve free
 *     shock: (length at ride − closed) ÷ ratio + height    keeps its own reserve free
 *     coil:  (length at ride − solid) ÷ ratio        keeps its own reserve free; a spacer or a lower seat moves no coil
 *
 * @returns in the order of the rig; coil and shock only where their lengths are known
 * @source rules T1–T10 of SPEC.md
 */
export function contactsOf(
  setup: Setup,
  end: End,
  side: Side,
  moves: Moves,
  draws: Draws,
): readonly SampledContact[] {
  const { base, patch, spring } = setup.ends[end];
  const { height, coilLength } = moves;
  const length = draws.trials + 1;
  const list: SampledContact[] = [];
  if (base.contacts.length > 0) {
    const flex = draws.of(base.flex);
    const reserve = draws.of(setup.rig.limits.reserve);
    const allowance = new Float64Array(length);
    for (let i = 0; i < length; i += 1) allowance[i] = flex[i] + reserve[i];
    for (const contact of base.contacts) {
      const gap = draws.of(contact.gap[side]);
      const ratio = draws.of(contact.ratio);
      const gained = patch.notch?.[contact.id];
      const notch = gained && draws.of(gained);
      const travel = new Float64Array(length);
      for (let i = 0; i < length; i += 1)
        travel[i] = (notch ? gap[i] + notch[i] : gap[i]) / ratio[i] + height[i];
      list.push({
        id: contact.id,
        name: contact.name,
        kind: 'body',
        ratio: contact.ratio,
        travel,
        allowance,
      });
    }
  }
  if (coilLength && spring.solidLength) {
    const solid = draws.of(spring.solidLength);
    list.push({
      id: COIL,
      name: 'coil solid',
      kind: 'coil',
      ratio: base.springRatio,
      ...strokeLeft(coilLength, solid, draws.of(base.springRatio), draws.of(base.coilReserve), null),
    });
  }
  const { rideLength, collapsedLength } = base.shock;
  if (rideLength && collapsedLength) {
    const ratio = draws.of(base.shock.ratio);
    list.push({
      id: SHOCK,
      name: 'shock bottomed',
      kind: 'shock',
      ratio: base.shock.ratio,
      ...strokeLeft(
        draws.of(rideLength),
        draws.of(collapsedLength),
        ratio,
        draws.of(base.shockReserve),
        height,
      ),
    });
  }
  return list;
}

/** Travel until a length is used up, and its reserve, both along the axle. */
function strokeLeft(long: Column, short: Column, ratio: Column, reserve: Column, height: Column | null) {
  const travel = new Float64Array(long.length);
  const allowance = new Float64Array(long.length);
  for (let i = 0; i < long.length; i += 1) {
    travel[i] = (long[i] - short[i]) / ratio[i] + (height ? height[i] : 0);
    allowance[i] = reserve[i] / ratio[i];
  }
  return { travel, allowance };
}
