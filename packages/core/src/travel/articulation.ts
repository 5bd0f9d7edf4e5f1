import { CORNERS, type Corner, cornerAt, endOf, type Side, sideOf } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { columnOf, figureOf, unsure } from '../stance/columns.ts';
import { type Draws, drawsOf, type TrialOptions } from '../stance/draws.ts';
import { STANDARD_GRAVITY } from '../stance/gravity.ts';
import type { Articulation, Flex, PadContact, Ramp } from './articulation-result.ts';
import { type AxleStand, heaveAt, momentAt, travelAt } from './axle-balance.ts';
import { rampOf } from './ramp.ts';
import { type RolledAxle, rollAxle, rollUnder, sharedAt } from './rolled-axle.ts';
import { padOffset } from './strut-travel.ts';

/** Fewer trials than a travel column: each is an axle rolled to its end. */
const TRIALS = 256;
const TYRE_LIFTS = 'tyre-lifts';

/**
 * Articulation of a setup: each axle with one wheel up and the other down until the first contact ends it, and one
 * front wheel up a ramp until the first tyre lifts.
 *
 * An axle carries all the while what it carries at ride height, so its middle goes down against the body once a stop
 * pushes or a coil is loose: heave follows from the balance of forces at every roll (`axle-balance.ts`). It ends at the first of:
 * stop crushed to its limit, a body contact, coil solid, shock closed on the side that goes up; strap stretched, shock
 * open, hose, shaft on the other; or no load left on the low tyre. Where mounts and links were measured, coil, shock and
 * strap are judged by the true lengths of their struts.
 *
 * @param options – 256 trials when left out
 * @validity slow; level ground; tyres and frame rigid; friction, shock gas and the spread of weight left to right left
 * out of the balance; body contacts counted where they touch, or at the stop's station; mounts at their nominal places in every trial
 * @source statics and rigid-body kinematics
 */
export function articulationOf(setup: Setup, options: TrialOptions = {}): Articulation {
  const draws = drawsOf(setup.rig, { ...options, trials: options.trials ?? TRIALS });
  const rolled = {} as Record<Corner, RolledAxle>;
  const shared = { front: sharedAt(setup, 'front', draws), rear: sharedAt(setup, 'rear', draws) };
  for (const corner of CORNERS)
    rolled[corner] = rollAxle(setup, endOf(corner), sideOf(corner), shared[endOf(corner)], draws);
  const flex = {} as Record<Corner, Flex>;
  for (const corner of CORNERS) flex[corner] = flexOf(setup, rolled[corner], draws);
  const ramp = (side: Side): Ramp => {
    const other: Side = side === 'left' ? 'right' : 'left';
    return rampOf(setup, side, rolled[cornerAt('front', side)], rolled[cornerAt('rear', other)], draws);
  };
  return {
    setup: setup.id,
    flex,
    ramps: { frontLeft: ramp('left'), frontRight: ramp('right') },
    trials: draws.trials,
    seed: draws.seed,
  };
}

function flexOf(setup: Setup, axle: RolledAxle, draws: Draws): Flex {
  const { end, up, limits, springs, held, heldBy, liftingMoment, lowTyre, shared } = axle;
  const { base } = setup.ends[end];
  const length = draws.trials + 1;
  const down: Side = up === 'left' ? 'right' : 'left';
  const roll = columnOf(length, (i) => rollUnder(axle, i, liftingMoment[i]));
  const stands = Array.from(
    { length },
    (_, i): AxleStand => ({ heave: heaveAt(springs[i], roll[i]), roll: roll[i] }),
  );
  const arm = draws.of(base.track);
  const counts = new Map<number, number>();
  // Past the end of the list stands the tyre that lifts.
  const first = (i: number) => (roll[i] < held[i] ? limits.length : heldBy[i]);
  for (let i = 1; i < length; i += 1) counts.set(first(i), (counts.get(first(i)) ?? 0) + 1);
  const named = (k: number) =>
    limits[k] ?? {
      id: k < 0 ? 'none' : TYRE_LIFTS,
      name: k < 0 ? 'nothing known' : 'tyre lifts',
      side: down,
    };
  const order = [...new Set([first(0), ...[...counts].sort((a, b) => b[1] - a[1]).map(([k]) => k)])];
  const known = shared.moves.needs.length === 0;
  const figure = (dimension: 'angle' | 'length' | 'force', of: (i: number) => number) => {
    const made = figureOf(dimension, columnOf(length, of));
    return known ? made : unsure(made);
  };
  return {
    end,
    up,
    limits: order.map((k) => {
      const { id, name, side } = named(k);
      return { id, name, side, firstShare: (counts.get(k) ?? 0) / draws.trials };
    }),
    angle: figure('angle', (i) => roll[i]),
    bump: figure('length', (i) => travelAt(arm[i] / 2, 1, stands[i])),
    droop: figure('length', (i) => -travelAt(arm[i] / 2, -1, stands[i])),
    lowTyreLoad: figure('force', (i) =>
      Math.max(0, lowTyre[i] * STANDARD_GRAVITY - momentAt(springs[i], stands[i]) / arm[i]),
    ),
    pad: padOf(setup, axle, stands[0]),
  };
}

/** @returns null where nothing tells where the tip goes */
function padOf(setup: Setup, { end, up, shared }: RolledAxle, stand: AxleStand): PadContact | null {
  const mount = setup.ends[end].base.points.mounts.stop;
  if (!mount || !shared.geometry) return null;
  const roll = up === 'left' ? stand.roll : -stand.roll;
  const offset = padOffset(shared.geometry, up, mount.carrier, { heave: stand.heave, roll });
  if (offset === null) return null;
  const pad = mount.padSize?.value;
  const tip = mount.tipSize?.value ?? 0;
  const stands =
    pad === undefined ? 'unknown' : offset > pad / 2 ? 'off' : offset + tip / 2 > pad / 2 ? 'edge' : 'whole';
  return { offset: { dimension: 'length', value: offset, tolerance: null }, stands };
}
