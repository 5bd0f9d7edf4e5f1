import { cubicInverse, cubicSlope, monotoneCubic } from '../numerics/monotone-cubic.ts';
import type { TyreSize } from '../rig/parts.ts';

/** A rate that is a straight line over inflation: the carcass carries `carcass`, the air `perPressure` a pascal. */
export interface TyreRateLine {
  /** [N/m] */
  readonly carcass: number;
  /** [N/m per Pa] */
  readonly perPressure: number;
}

/**
 * Vertical rate of a 33 to 37 in light-truck tyre of unknown size: laid through 80 to 160 N/mm at 10 to 15 psi and
 * 170 to 300 N/mm at 24 to 30 psi.
 *
 * @source bands of the trade: common practice, no source
 */
export const USUAL_TYRE: TyreRateLine = { carcass: 21e3, perPressure: 1.15 };

/** One kgf/mm [N/m]. */
const KGF_PER_MM = 9806.65;

/**
 * Vertical rate by size: K = 0.00028·p·√((1.03 − 0.4·AR)·S·(2·S·AR + D)) + 3.45, K in kgf/mm, p in kPa, section width S and
 * rim D in mm, AR the aspect ratio (the printed form has it in percent).
 *
 * @validity a regression on passenger and light-truck radials: marked estimate, ± 30 %. Below road pressure and for cross-ply
 *   it is a guess in the same shape.
 * @source Rhyne, Tire Science and Technology 33 (2005) (from memory, low to medium confidence)
 */
export function rateBySize({ width, aspect, rim }: TyreSize): TyreRateLine {
  const [s, d] = [1000 * width, 1000 * rim];
  const perKilopascal = 0.00028 * Math.sqrt((1.03 - 0.4 * aspect) * s * (2 * s * aspect + d));
  return { carcass: 3.45 * KGF_PER_MM, perPressure: (perKilopascal * KGF_PER_MM) / 1000 };
}

/** The line of a tyre: by its size where that is known. */
export const lineOf = (size: TyreSize | null): TyreRateLine =>
  size === null ? USUAL_TYRE : rateBySize(size);

/** Rate of such a line at an inflation [N/m]. */
export const rateOnLine = ({ carcass, perPressure }: TyreRateLine, pressure: number): number =>
  carcass + perPressure * pressure;

/**
 * A rate known at one inflation, taken to another along the line of its kind:
 *
 *     k′ = k·(carcass + s·p′) ÷ (carcass + s·p)
 *
 * @validity the carcass's share is that of the line, not of this tyre; load and deflection are taken as unchanged
 * @source structure of the regressions above: linear in inflation with an offset
 */
export function rateAtPressure(rate: number, from: number, to: number, line: TyreRateLine): number {
  return (rate * rateOnLine(line, to)) / rateOnLine(line, from);
}

/**
 * Rate out of a press test: slope of the monotone cubic through load against deflection, at the load that the tyre carries.
 *
 * @param deflection – from 0, rising [m]
 * @param load – from 0, rising [N]
 * @param staticLoad – [N]; beyond the table the end slope
 * @returns [N/m]
 */
export function rateFromPress(
  deflection: readonly number[],
  load: readonly number[],
  staticLoad: number,
): number {
  const curve = monotoneCubic(deflection, load);
  return cubicSlope(curve, cubicInverse(curve, staticLoad));
}
