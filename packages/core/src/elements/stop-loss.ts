import { cubicIntegral, cubicValue, type MonotoneCubic, monotoneCubic } from '../numerics/monotone-cubic.ts';
import type { MaxwellBranch } from './maxwell.ts';
import { type FrictionBranch, frictionForce } from './stop-friction.ts';

/**
 * What a stop loses, out of two numbers that a builder has: the share of a slow press that does not come back, and how
 * much harder it is when hit. A press curve is read while closing, so friction is in it; here it is taken apart into
 * what is given back and a branch on top.
 *
 *     F = max(0, elastic(c)·(1 + friction share) + viscous)
 *
 * @validity marked estimates, both. Where the loop turns (a fiftieth of the crush) and the damper's time (crush ÷ 1 m/s:
 *   most loss near the length of a hit) are numerical devices, since neither is known at home. Heat, cold, set and what
 *   the first strokes soften are not in it.
 * @source the branches at `stop-friction` and `maxwell`; how two readings become their numbers is a choice of this house
 */
export interface StopLoss {
  /** What is given back, force [N] over crush [m], from zero, rising: the press curve without its friction. */
  readonly crush: readonly number[];
  readonly force: readonly number[];
  /** A share of the elastic force; null where none was given. */
  readonly friction: FrictionBranch | null;
  readonly maxwell: MaxwellBranch | null;
}

/** Closing speed at which a stop is called so much harder than in a press [m/s]. */
export const HIT_SPEED = 1;
/** Travel in which the loop turns over half, ÷ usable crush, at most. */
const TURN_SHARE = 1 / 50;
/** Press loops of stops lose 15 to 40 % (common practice, no source); more than this is not a stop. */
export const MOST_HYSTERESIS = 0.6;
/** The friction branch has to leave something of the force while opening. */
const MOST_SHARE = 0.95;

export interface LossReadings {
  /** Usable crush of the stop [m]: how deep the slow press went. */
  readonly usableCrush: number;
  /** Lost ÷ put in, one slow press to the usable crush and back, 0 … `MOST_HYSTERESIS`; null where not known. */
  readonly hysteresis: number | null;
  /** Work of a press to the usable crush at 1 m/s ÷ work of a slow one, > 1; null where not known. */
  readonly dynamicFactor: number | null;
}

/**
 * @param crush – press curve, closing: from 0, rising [m]
 * @param force – from 0, rising [N]
 * @invariant pressed slowly from rest, elastic·(1 + friction) is the press curve again at every point of it
 */
export function stopLoss(
  crush: readonly number[],
  force: readonly number[],
  { usableCrush, hysteresis, dynamicFactor }: LossReadings,
): StopLoss {
  const press = monotoneCubic(crush, force);
  const maxwell =
    dynamicFactor !== null && dynamicFactor > 1 ? hitBranch(press, usableCrush, dynamicFactor) : null;
  if (hysteresis === null || hysteresis <= 0) return { crush, force, friction: null, maxwell };
  const stroke = strokeOf(press, usableCrush);
  let halfTravel = TURN_SHARE * usableCrush;
  // A wide loop that turns slowly cannot lose enough, and on a plateau slow friction would make the elastic part fall:
  // let it turn faster until it does.
  for (let tries = 0; tries < 40; tries += 1, halfTravel /= 2) {
    const limit = limitFor(stroke, halfTravel, hysteresis);
    if (limit === null) continue;
    const friction = { limit, halfTravel };
    const places = placesOf(crush, halfTravel);
    const elastic = places.map((c) => cubicValue(press, c) / (1 + frictionForce(c, FIRST_TOUCH, friction)));
    if (elastic.every((f, i) => i === 0 || f > elastic[i - 1]))
      return { crush: places, force: elastic, friction, maxwell };
  }
  throw new Error('stopLoss: a press curve must rise');
}

/** The points of the press curve, and as many between as the branch needs to be followed. */
function placesOf(crush: readonly number[], halfTravel: number): readonly number[] {
  const end = crush[crush.length - 1];
  const places = new Set(crush);
  for (let c = halfTravel / 2; c < end; c *= 1.2) places.add(c);
  return [...places].sort((a, b) => a - b);
}

/** Maxwell branch whose work at `HIT_SPEED` is (factor − 1) times that of the press: k·C² ÷ e with damper time C ÷ speed. */
function hitBranch(press: MonotoneCubic, usableCrush: number, factor: number): MaxwellBranch {
  const rate = (Math.E * (factor - 1) * cubicIntegral(press, usableCrush)) / usableCrush ** 2;
  return { rate, damping: (rate * usableCrush) / HIT_SPEED };
}

const FIRST_TOUCH = { travel: 0, force: 0 };

/** A slow press at Gauss's places: crush and force there, and how deep it went. */
interface Stroke {
  readonly crush: Float64Array;
  readonly force: Float64Array;
  readonly end: number;
}

/** Even pieces of the stroke, each by Gauss's rule of two points: the share to 1e-4. */
const PIECES = 128;
const OFF_MIDDLE = 0.5 / Math.sqrt(3);

function strokeOf(press: MonotoneCubic, end: number): Stroke {
  const crush = Float64Array.from(
    { length: 2 * PIECES },
    (_, k) => (end * ((k >> 1) + 0.5 + (k % 2 === 0 ? -OFF_MIDDLE : OFF_MIDDLE))) / PIECES,
  );
  return { crush, force: crush.map((c) => cubicValue(press, c)), end };
}

/** Lost ÷ put in, one slow press and release. */
function shareLost({ crush, force, end }: Stroke, friction: FrictionBranch): number {
  const turned = { travel: end, force: frictionForce(end, FIRST_TOUCH, friction) };
  let given = 0;
  let back = 0;
  for (let i = 0; i < crush.length; i += 1) {
    given += force[i];
    const elastic = force[i] / (1 + frictionForce(crush[i], FIRST_TOUCH, friction));
    back += elastic * (1 + frictionForce(crush[i], turned, friction));
  }
  return 1 - back / given;
}

/**
 * The limit at which a slow press and release loses the share asked for, to 1e-12: regula falsi in the Illinois form, since
 * the share rises with the limit. Null where not even the largest limit loses so much.
 */
function limitFor(stroke: Stroke, halfTravel: number, hysteresis: number): number | null {
  const missing = (limit: number) => shareLost(stroke, { limit, halfTravel }) - hysteresis;
  let [low, high] = [0, MOST_SHARE];
  let [under, over] = [-hysteresis, missing(high)];
  if (over < 0) return null;
  for (let k = 0; k < 60 && high - low > 1e-12; k += 1) {
    const limit = (low * over - high * under) / (over - under);
    const off = missing(limit);
    if (Math.abs(off) < 1e-13) return limit;
    if (off < 0) [low, under, over] = [limit, off, over / 2];
    else [high, over, under] = [limit, off, under / 2];
  }
  return (low + high) / 2;
}
