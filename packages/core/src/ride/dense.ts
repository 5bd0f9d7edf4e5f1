import { hermiteSlope, hermiteValue } from '../numerics/hermite.ts';
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
  let low: number = 0;
  let high: number = 1;
  for (let k = 0; k < 30; k += 1) {
    const middle = (low + high) / 2;
    if (hermiteSlope(y0, m0, y1, m1, step, middle) > 0) low = middle;
    else high = middle;
  }
  return hermiteValue(y0, m0, y1, m1, step, (low + high) / 2);
}
