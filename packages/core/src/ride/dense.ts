import { hermiteValue } from '../numerics/hermite.ts';
import * as at from './layout.ts';
import type { i32, Memory } from './memory.ts';

/** State inside a step: a cubic through both ends for every coordinate, speed and first-order state. */
export function stateInside(m: Memory, from: i32, to: i32, step: number, share: number, into: i32): void {
  rowInside(m, from, to, step, share, into, at.POSITION, at.MOTION_SIZE);
  rowInside(m, from, to, step, share, into, at.SUMS, at.SUMS_SIZE);
  m[into + at.TIME] = m[from + at.TIME] + share * step;
}

function rowInside(
  m: Memory,
  from: i32,
  to: i32,
  step: number,
  share: number,
  into: i32,
  row: i32,
  size: i32,
): void {
  for (let i = row; i < row + size; i += 1) {
    const k = i + at.RATE;
    m[into + i] = hermiteValue(m[from + i], m[from + k], m[to + i], m[to + k], step, share);
  }
}

/** Largest value of the cubic with slopes m0 > 0 > m1 at its ends: its slope has one root between them. */
export function crestOf(y0: number, m0: number, y1: number, m1: number, step: number): number {
  // Slope · step = a + 2pθ + qθ², whose root between 0 and 1 is the one that stays right as q vanishes.
  const a = step * m0;
  const b = step * m1;
  const rise = y1 - y0;
  const p = 3 * rise - 2 * a - b;
  const q = 3 * (a + b - 2 * rise);
  const share = a / (Math.sqrt(Math.max(0, p * p - a * q)) - p);
  return hermiteValue(y0, m0, y1, m1, step, share);
}

/** What a cubic with slopes m0 > 0 > m1 at its ends cannot rise above the higher of them, as a share of step·(m0 − m1). */
export const MOST_ABOVE_ENDS: number = 4 / 27;
