import type { ValueOf } from '../rig/reading.ts';
import type { Strap } from '../rig/rig.ts';

/**
 * What ends droop: a strap, or the shock on its own top. It pulls when stretched:
 *
 *     F = rate·e·max(0, 1 − rateFactor·v),   e = stretch beyond the limit
 *
 * Same ad-hoc loss as the stop: harder while opening (v < 0), softer on the way back.
 *
 * @param rate – [N/m]
 * @param stretch – beyond the limit [m], > 0; the caller decides whether it is reached
 * @param speed – [m/s], compression positive
 * @returns pull [N] ≥ 0: it draws axle and body together, so the force on the body is −F
 * @validity a strap's measured stretch curve is not in it; one rate stands for it
 */
export function droopPull(rate: number, rateFactor: number, stretch: number, speed: number): number {
  const gain = 1 - rateFactor * speed;
  return gain > 0 ? rate * stretch * gain : 0;
}

/**
 * Rate of a limit strap: full load ÷ stretch at full load, K = load ÷ (stretch·length).
 *
 * @param stretch – at full load, share of the free length, > 0
 * @returns [N/m]; it acts from where the strap comes tight, not from where it is fully stretched
 */
export function strapRate(fullLoad: number, stretch: number, length: number): number {
  return fullLoad / (stretch * length);
}

/**
 * A strap and the shock's own top are two limits: each pulls beyond its own place with its own rate, and the pulls add.
 * These stand in where they were not measured: the washers on which a shock tops out [N/m], and the load at which
 * webbing is said to stretch so much [N]. Common practice, no source.
 */
export const USUAL_TOP_OUT_RATE = 2e6;
export const USUAL_STRAP_LOAD = 13e3;

/** Energy held by a stretched limit [J]. */
export function droopEnergy(rate: number, stretch: number): number {
  return (rate * stretch * stretch) / 2;
}

/** Rate of the strap of a rig [N/m]: as measured, else its usual load over its stretch. */
export function strapRateOf({ rate, stretch, length }: Strap, of: ValueOf): number {
  return rate ? of(rate) : strapRate(USUAL_STRAP_LOAD, of(stretch), of(length));
}
