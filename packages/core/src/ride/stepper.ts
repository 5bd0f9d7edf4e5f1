import * as at from './layout.ts';
import type { i32, Memory } from './memory.ts';
import { largestOfFive, leanOnFour, leanOnThree, leanOnTwo, leanRow } from './rows.ts';

/**
 * One explicit Runge–Kutta step of fourth order, Kutta's rule of three eighths. Its end is evaluated for the next step
 * anyway, and with that a third-order result is embedded in it, so a step costs four evaluations. Between the parts below
 * somebody has to evaluate the state that was made:
 *
 *     placeStages, second, evaluate, third, evaluate, fourth, evaluate, end, evaluate, localError
 *
 * @source Kutta, Z. Math. Phys. 46 (1901) 435 (from memory); the embedded result is worked out in docs/theory/ride.md
 */

/** How a stage leans on those before it. */
export const A21: number = 1 / 3;
export const A31: number = -1 / 3;
export const A32: number = 1;
export const A41: number = 1;
export const A42: number = -1;
export const A43: number = 1;

/** Weights of the fourth-order result, by stage. They add to one. */
export const B1: number = 1 / 8;
export const B2: number = 3 / 8;
export const B3: number = 3 / 8;
export const B4: number = 1 / 8;

/** Fourth-order result minus the embedded third-order one, by stage, the end the fifth. They add to zero. */
export const E1: number = -1 / 40;
export const E2: number = 3 / 40;
export const E3: number = -3 / 40;
export const E4: number = -3 / 40;
export const E5: number = 1 / 10;

/** Places the stages and the end in time. */
export function placeStages(m: Memory, from: i32, to: i32, step: number): void {
  const start = m[from + at.TIME];
  m[at.SECOND + at.TIME] = start + step / 3;
  m[at.THIRD + at.TIME] = start + (2 * step) / 3;
  m[at.FOURTH + at.TIME] = start + step;
  m[to + at.TIME] = start + step;
}

/** Makes the second stage from the start of a step, a third into it. */
export function second(m: Memory, from: i32, step: number): void {
  leanRow(m, at.SECOND, from, A21 * step, from + at.RATE, at.MOTION_SIZE);
  // Running sums feed nothing back: inside a step nobody asks for them.
  if (m[at.HAS_INNER] !== 0) {
    const rate = at.INNER_RATE;
    leanRow(m, at.SECOND + at.INNER, from + at.INNER, A21 * step, from + rate, at.INNER_SIZE);
  }
}

/** Makes the third stage, two thirds into it. */
export function third(m: Memory, from: i32, step: number): void {
  thirdRow(m, from, step, at.POSITION, at.RATE, at.MOTION_SIZE);
  if (m[at.HAS_INNER] !== 0) thirdRow(m, from, step, at.INNER, at.INNER_RATE, at.INNER_SIZE);
}

/** @inline */
function thirdRow(m: Memory, from: i32, step: number, row: i32, rate: i32, size: i32): void {
  leanOnTwo(m, at.THIRD + row, from + row, step, A31, from + rate, A32, at.SECOND + rate, size);
}

/** Makes the fourth stage, at the end of it. */
export function fourth(m: Memory, from: i32, step: number): void {
  fourthRow(m, from, step, at.POSITION, at.RATE, at.MOTION_SIZE);
  if (m[at.HAS_INNER] !== 0) fourthRow(m, from, step, at.INNER, at.INNER_RATE, at.INNER_SIZE);
}

/** @inline */
function fourthRow(m: Memory, from: i32, step: number, row: i32, rate: i32, size: i32): void {
  leanOnThree(
    m,
    at.FOURTH + row,
    from + row,
    step,
    A41,
    from + rate,
    A42,
    at.SECOND + rate,
    A43,
    at.THIRD + rate,
    size,
  );
}

/** Makes the end of the step. */
export function end(m: Memory, from: i32, to: i32, step: number): void {
  endRow(m, from, to, step, at.POSITION, at.MOTION_SIZE);
  endRow(m, from, to, step, at.SUMS, m[at.HAS_INNER] !== 0 ? at.SUMS_SIZE : at.PLAIN_SUMS_SIZE);
}

/** @inline */
function endRow(m: Memory, from: i32, to: i32, step: number, row: i32, size: i32): void {
  const rate = row + at.RATE;
  leanOnFour(
    m,
    to + row,
    from + row,
    step,
    B1,
    from + rate,
    B2,
    at.SECOND + rate,
    B3,
    at.THIRD + rate,
    B4,
    at.FOURTH + rate,
    size,
  );
}

/** Largest local error ÷ accepted error; not a number when the result is none. */
export function localError(m: Memory, from: i32, to: i32, step: number): number {
  const worst = rowError(m, from, to, at.POSITION, at.PER_ERROR, at.MOTION_SIZE);
  if (m[at.HAS_INNER] === 0) return step * worst;
  return step * Math.max(worst, rowError(m, from, to, at.INNER, at.PER_INNER_ERROR, at.INNER_SIZE));
}

/** @inline */
function rowError(m: Memory, from: i32, to: i32, row: i32, weight: i32, size: i32): number {
  const rate = row + at.RATE;
  return largestOfFive(
    m,
    E1,
    from + rate,
    E2,
    at.SECOND + rate,
    E3,
    at.THIRD + rate,
    E4,
    at.FOURTH + rate,
    E5,
    to + rate,
    weight,
    size,
  );
}
