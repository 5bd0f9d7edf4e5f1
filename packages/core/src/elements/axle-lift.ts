import type { Corner, End } from '../finding/place.ts';
import { cornerAt } from '../finding/place.ts';
import type { Reading, ValueOf } from '../rig/reading.ts';
import type { AxleEnd, CgLift, Rig } from '../rig/rig.ts';

/** One axle raised, the other on scales. Masses [kg], lengths [m], rates [N/m]. */
export interface AxleLift {
  readonly total: number;
  /** On the axle that stays down, before and after. */
  readonly level: number;
  readonly lifted: number;
  readonly wheelbase: number;
  /** How much the hubs of the other went up. */
  readonly by: number;
  /** Hub to ground on level ground. */
  readonly radiusDown: number;
  readonly radiusRaised: number;
  /** Left out when the suspension was locked. */
  readonly springs?: LiftSprings;
}

/** What gives while an axle is raised with free suspension. */
export interface LiftSprings {
  readonly unsprungDown: number;
  readonly unsprungRaised: number;
  /** Of both springs of an axle, at the axle. */
  readonly rateDown: number;
  readonly rateRaised: number;
  /** Share of that give that is believed, 0 … about 1.5. */
  readonly share: number;
}

const GRAVITY = 9.80665;

/**
 * Height of the centre of gravity from raising one axle. With the line of hubs at θ₀ on level ground and at θ raised,
 * sin θ = sin θ₀ + by ÷ L, moments about the raised hubs give the height c over that line,
 *
 *     c = L·(lifted − level) ÷ (total·(tan θ − tan θ₀)),   height = radius + a·sin θ₀ + c·cos θ₀
 *
 * which for wheels alike is the h = r + L·ΔW ÷ (W·tan θ) of the standard. With free suspension the body sinks by d over
 * the axle that stays down and comes up by e over the other, so it leans further than its hubs and its centre comes
 * nearer to the scales; for the sprung mass m and its own height c over the hubs, a from the axle that stays down,
 *
 *     L·(lifted − level) = m·[c·(d + e) ÷ L + (c + e·a/L − d·(1 − a/L))·tan θ − c·tan θ₀]
 *     d, e: (scale load − axle)·cos θ less the load on level ground, over the rate
 *
 * @returns height above level ground [m]
 * @validity brakes off, wheels free to roll, nothing but the hubs held; free suspension: links push along the line of
 *   hubs only, no friction, nothing on its stops. That is worth a third to a half of the correction.
 * @source ISO 10392:2011, 6.2 (an excerpt was read); moment balance
 */
export function heightFromLift(lift: AxleLift): number {
  const { total, level, lifted, wheelbase, by, radiusDown, radiusRaised, springs } = lift;
  const sinLevel = (radiusRaised - radiusDown) / wheelbase;
  const sinRaised = sinLevel + by / wheelbase;
  const cosRaised = Math.sqrt(1 - sinRaised ** 2);
  const cosLevel = Math.sqrt(1 - sinLevel ** 2);
  const [tanLevel, tanRaised] = [sinLevel / cosLevel, sinRaised / cosRaised];
  const gained = lifted - level;
  const overHubs = springs ? softHeight(springs) : (wheelbase * gained) / (total * (tanRaised - tanLevel));
  const behindDown = wheelbase * (1 - level / total) + overHubs * tanLevel;
  return radiusDown + behindDown * sinLevel + overHubs * cosLevel;

  function softHeight({ unsprungDown, unsprungRaised, rateDown, rateRaised, share }: LiftSprings): number {
    const sprung = total - unsprungDown - unsprungRaised;
    const [onDown, onRaised] = [level - unsprungDown, total - level - unsprungRaised];
    const toDown = onRaised / sprung;
    const sinks = (share * GRAVITY * ((lifted - unsprungDown) * cosRaised - onDown)) / rateDown;
    const rises = (share * GRAVITY * (onRaised - (total - lifted - unsprungRaised) * cosRaised)) / rateRaised;
    const shifted = rises * toDown - sinks * (1 - toDown);
    const own =
      ((wheelbase * gained) / sprung - shifted * tanRaised) /
      ((sinks + rises) / wheelbase + tanRaised - tanLevel);
    return (sprung * own) / total;
  }
}

/** The rig that was raised. */
export type LiftedRig = Pick<Rig, 'wheelbase' | 'cornerMass' | 'front' | 'rear'>;

/** The same from the readings of a rig, as it was measured: setups lift it from there. */
export function liftedHeight(rig: LiftedRig, lift: CgLift, of: ValueOf): number {
  const down: End = lift.raised === 'front' ? 'rear' : 'front';
  const on = (end: End) =>
    of(rig.cornerMass[cornerAt(end, 'left')]) + of(rig.cornerMass[cornerAt(end, 'right')]);
  const rate = ({ spring, springRatio }: AxleEnd) => 2 * of(spring.rate) * of(springRatio) ** 2;
  const level = on(down);
  return heightFromLift({
    total: level + on(lift.raised),
    level,
    lifted: of(lift.scale.left) + of(lift.scale.right),
    wheelbase: of(rig.wheelbase),
    by: of(lift.by),
    radiusDown: of(lift.tyreRadius),
    radiusRaised: of(rig[lift.raised].tyre.radius),
    ...(lift.give && {
      springs: {
        unsprungDown: of(rig[down].unsprungMass),
        unsprungRaised: of(rig[lift.raised].unsprungMass),
        rateDown: rate(rig[down]),
        rateRaised: rate(rig[lift.raised]),
        share: of(lift.give),
      },
    }),
  });
}

/** What one reading adds to a figure: half-width that it alone would give it, in the unit of the figure. */
export interface Contribution {
  readonly key: string;
  readonly halfWidth: number;
}

/**
 * Height by an axle lift with its half-width to first order, u² = Σ(∂h/∂x·u(x))², and which reading brings how much of
 * it, most first.
 *
 * @source JCGM 100:2008, 5.1.2; the slopes are differences over each reading's own half-width
 */
export function liftedHeightWithTolerance(rig: LiftedRig, lift: CgLift) {
  const at = (moved: Reading | null, by: number) =>
    liftedHeight(rig, lift, (reading) => (reading.key === moved?.key ? reading.value + by : reading.value));
  const contributions = readingsOfLift(rig, lift)
    .map((reading): Contribution => {
      const half = Math.max(reading.plus, reading.minus);
      return { key: reading.key, halfWidth: Math.abs(at(reading, half) - at(reading, -half)) / 2 };
    })
    .filter(({ halfWidth }) => halfWidth > 0)
    .sort((a, b) => b.halfWidth - a.halfWidth);
  return {
    height: at(null, 0),
    halfWidth: Math.hypot(...contributions.map(({ halfWidth }) => halfWidth)),
    contributions,
  };
}

/** Each reading that the height rests on, once. */
function readingsOfLift(rig: LiftedRig, lift: CgLift): readonly Reading[] {
  const found = new Map<string, Reading>();
  liftedHeight(rig, lift, (reading) => {
    found.set(reading.key, reading);
    return reading.value;
  });
  return [...found.values()];
}

/** Corners of the axle that stayed on the ground. */
export const cornersDown = ({ raised }: CgLift): readonly [Corner, Corner] => {
  const down: End = raised === 'front' ? 'rear' : 'front';
  return [cornerAt(down, 'left'), cornerAt(down, 'right')];
};
