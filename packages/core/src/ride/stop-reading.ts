import { stopForce } from '../elements/stop.ts';
import type { Dynamics } from './dynamics.ts';
import * as at from './layout.ts';

/** Crush of the stop at a corner [m], 0 when not touched. */
export function crushAt(dynamics: Dynamics, corner: number, travel: number): number {
  const c = dynamics.axles[corner >> 1].numbers;
  return Math.max(0, c[at.STOP_RATIO] * travel - c[at.STOP_GAP + (corner & 1)]);
}

/** Axle travel left to metal [m]; negative when metal is driven in. */
export function clearanceAt(dynamics: Dynamics, corner: number, travel: number): number {
  const c = dynamics.axles[corner >> 1].numbers;
  const side = corner & 1;
  return (c[at.STOP_GAP + side] + c[at.METAL_AT + side]) / c[at.STOP_RATIO] - travel;
}

/** Force of stop and metal along the stop [N], 0 when neither is touched. */
export function stopForceAt(dynamics: Dynamics, corner: number, travel: number, speed: number): number {
  const { numbers: c, stop } = dynamics.axles[corner >> 1];
  const side = corner & 1;
  const crush = c[at.STOP_RATIO] * travel - c[at.STOP_GAP + side];
  const metal = crush - c[at.METAL_AT + side];
  if (crush <= 0 && metal <= 0) return 0;
  return stopForce(
    stop,
    c[at.STOP_RATE_FACTOR],
    c[at.METAL_RATE],
    Math.max(0, crush),
    Math.max(0, metal),
    c[at.STOP_RATIO] * speed,
  );
}
