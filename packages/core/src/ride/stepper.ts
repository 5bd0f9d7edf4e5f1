import * as at from './layout.ts';
import type { i32, Memory } from './memory.ts';
import { largestOfFour, leanOnThree, leanRow } from './rows.ts';

/**
 * One explicit Runge–Kutta step of third order with an embedded second-order one; the last stage is the first of the
 * next step, so a step costs three evaluations. Between the parts below somebody has to evaluate the state that was made:
 *
 *     halfWay, evaluate, later, evaluate, end, evaluate, localError
 *
 * @source Bogacki and Shampine, Appl. Math. Lett. 2 (1989) 321
 */

/** Weights of the third-order result, by stage. They add to one. */
export const B1: number = 2 / 9;
export const B2: number = 1 / 3;
export const B3: number = 4 / 9;

/** Third-order result minus the embedded second-order one, by stage. They add to zero. */
export const E1: number = -5 / 72;
export const E2: number = 1 / 12;
export const E3: number = 1 / 9;
export const E4: number = -1 / 8;

/** Makes the second stage from the start of a step. */
export function halfWay(m: Memory, from: i32, step: number): void {
  lean(m, at.HALF_WAY, from, 0.5 * step, from);
}

/** Makes the third stage, from the start and the second. */
export function later(m: Memory, from: i32, step: number): void {
  lean(m, at.LATER, from, 0.75 * step, at.HALF_WAY);
}

function lean(m: Memory, to: i32, from: i32, by: number, slope: i32): void {
  leanRow(m, to, from, by, slope + at.RATE, at.MOTION_SIZE);
  // Running sums feed nothing back: inside a step nobody asks for them.
  if (m[at.HAS_INNER] !== 0) {
    leanRow(m, to + at.INNER, from + at.INNER, by, slope + at.INNER_RATE, at.INNER_SIZE);
  }
  m[to + at.TIME] = m[from + at.TIME] + by;
}

/** Makes the end of the step. */
export function end(m: Memory, from: i32, to: i32, step: number): void {
  endRow(m, from, to, step, at.POSITION, at.MOTION_SIZE);
  endRow(m, from, to, step, at.SUMS, at.SUMS_SIZE);
  m[to + at.TIME] = m[from + at.TIME] + step;
}

function endRow(m: Memory, from: i32, to: i32, step: number, row: i32, size: i32): void {
  const rate = row + at.RATE;
  leanOnThree(
    m,
    to + row,
    from + row,
    step,
    B1,
    from + rate,
    B2,
    at.HALF_WAY + rate,
    B3,
    at.LATER + rate,
    size,
  );
}

/** Largest local error ÷ accepted error; not a number when the result is none. */
export function localError(m: Memory, from: i32, to: i32, step: number): number {
  const worst = rowError(m, from, to, at.POSITION, at.PER_ERROR, at.MOTION_SIZE);
  if (m[at.HAS_INNER] === 0) return step * worst;
  return step * Math.max(worst, rowError(m, from, to, at.INNER, at.PER_INNER_ERROR, at.INNER_SIZE));
}

function rowError(m: Memory, from: i32, to: i32, row: i32, weight: i32, size: i32): number {
  const rate = row + at.RATE;
  return largestOfFour(
    m,
    E1,
    from + rate,
    E2,
    at.HALF_WAY + rate,
    E3,
    at.LATER + rate,
    E4,
    to + rate,
    weight,
    size,
  );
}
