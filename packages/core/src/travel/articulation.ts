import { CORNERS, type Corner, type Side } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { type Column, figureOf, unsure } from '../stance/columns.ts';
import { drawsOf, type TrialOptions } from '../stance/draws.ts';
import type { Articulation, Flex, PadContact } from './articulation-result.ts';
import type { AxleStand } from './axle-balance.ts';
import { rampFigures } from './ramp.ts';
import type { RolledAxle } from './rolled-axle.ts';
import { type SampledArticulation, type SampledFlex, sampleArticulation } from './sampled-articulation.ts';
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
  return articulationFrom(setup, sampleArticulation(setup, draws), draws);
}

/** What is told of a sampled articulation. */
export function articulationFrom(
  setup: Setup,
  { flex: sampled, ramps }: SampledArticulation,
  { trials, seed }: Pick<Articulation, 'trials' | 'seed'>,
): Articulation {
  const flex = {} as Record<Corner, Flex>;
  for (const corner of CORNERS) flex[corner] = flexFigures(setup, sampled[corner]);
  return {
    setup: setup.id,
    flex,
    ramps: { frontLeft: rampFigures(ramps.frontLeft), frontRight: rampFigures(ramps.frontRight) },
    trials,
    seed,
  };
}

function flexFigures(setup: Setup, flex: SampledFlex): Flex {
  const { axle, roll, bump, droop, lowTyreLoad, stand, known } = flex;
  const { end, up, limits, held, heldBy } = axle;
  const down: Side = up === 'left' ? 'right' : 'left';
  const trials = roll.length - 1;
  const counts = new Map<number, number>();
  // Past the end of the list stands the tyre that lifts.
  const first = (i: number) => (roll[i] < held[i] ? limits.length : heldBy[i]);
  for (let i = 1; i <= trials; i += 1) counts.set(first(i), (counts.get(first(i)) ?? 0) + 1);
  const named = (k: number) =>
    limits[k] ?? {
      id: k < 0 ? 'none' : TYRE_LIFTS,
      name: k < 0 ? 'nothing known' : 'tyre lifts',
      side: down,
    };
  const order = [...new Set([first(0), ...[...counts].sort((a, b) => b[1] - a[1]).map(([k]) => k)])];
  const figure = (dimension: 'angle' | 'length' | 'force', column: Column) => {
    const made = figureOf(dimension, column);
    return known ? made : unsure(made);
  };
  return {
    end,
    up,
    limits: order.map((k) => {
      const { id, name, side } = named(k);
      return { id, name, side, firstShare: (counts.get(k) ?? 0) / trials };
    }),
    angle: figure('angle', roll),
    bump: figure('length', bump),
    droop: figure('length', droop),
    lowTyreLoad: figure('force', lowTyreLoad),
    pad: padOf(setup, axle, stand),
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
