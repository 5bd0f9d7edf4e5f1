import type { AntiRollBar } from '../rig/parts.ts';
import type { ValueOf } from '../rig/reading.ts';

/**
 * Anti-roll bar: it resists tilt between axle and body and nothing else,
 *
 *     M = K·(ψ − φ)
 *
 * @param rate – K at the axle [N·m/rad] ≥ 0
 * @param tilt – axle roll − body roll [rad], left side up positive
 * @returns moment on the body [N·m], left side up; its opposite acts on the axle
 * @invariant holds K·tilt²/2 and loses none
 * @validity small angles; links that never go slack; friction of bushes is not in it
 * @source linear torsion
 */
export function antiRollMoment(rate: number, tilt: number): number {
  return rate * tilt;
}

/** Energy held by a twisted bar [J]. */
export function antiRollEnergy(rate: number, tilt: number): number {
  return (rate * tilt * tilt) / 2;
}

/** A bar as it is measured on a bench: one arm held, the other pulled at its link. */
export interface BarOnBench {
  /** Force at a link ÷ travel of that link, the other link held [N/m]. */
  readonly linkRate: number;
  /** Left to right link, on the axle [m]. */
  readonly linkSpread: number;
  /** Travel of a link ÷ travel of the axle below it. */
  readonly linkRatio: number;
}

/**
 * Rate at the axle [N·m/rad]: a tilt ψ moves the links apart by ratio·spread·ψ, each then pulls with rate times that,
 * K = linkRate·(linkRatio·linkSpread)².
 *
 * @source virtual work. For a straight round bar linkRate = G·J ÷ (length·arm²)
 */
export function barRateAtAxle({ linkRate, linkSpread, linkRatio }: BarOnBench): number {
  return linkRate * (linkRatio * linkSpread) ** 2;
}

/** Rate at the axle of the bar of a rig [N·m/rad]; 0 without one. */
export function barRateOf(bar: AntiRollBar | null, of: ValueOf): number {
  if (!bar) return 0;
  if (bar.rate) return of(bar.rate);
  if (!bar.link) return 0;
  const { rate, spread, ratio } = bar.link;
  return barRateAtAxle({ linkRate: of(rate), linkSpread: of(spread), linkRatio: of(ratio) });
}
