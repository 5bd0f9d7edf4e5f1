import type { i32, Memory } from './memory.ts';

/**
 * Arithmetic on whole rows of the memory, of even length. The compiled kernel has its own, two numbers at a time, to the
 * same last bit: `scripts/kernel/prelude.as`.
 */

/** to = from + by·slope. */
export function leanRow(m: Memory, to: i32, from: i32, by: number, slope: i32, size: i32): void {
  for (let i = 0; i < size; i += 1) m[to + i] = m[from + i] + by * m[slope + i];
}

/** to = from + by·(a·p + b·q + c·r). */
export function leanOnThree(
  m: Memory,
  to: i32,
  from: i32,
  by: number,
  a: number,
  p: i32,
  b: number,
  q: i32,
  c: number,
  r: i32,
  size: i32,
): void {
  for (let i = 0; i < size; i += 1) {
    m[to + i] = m[from + i] + by * (a * m[p + i] + b * m[q + i] + c * m[r + i]);
  }
}

/** Largest |a·p + b·q + c·r + d·s|·weight of a row; not a number when one of them is none or not finite. */
export function largestOfFour(
  m: Memory,
  a: number,
  p: i32,
  b: number,
  q: i32,
  c: number,
  r: i32,
  d: number,
  s: i32,
  weight: i32,
  size: i32,
): number {
  let largest: number = 0;
  for (let i = 0; i < size; i += 1) {
    const sum = a * m[p + i] + b * m[q + i] + c * m[r + i] + d * m[s + i];
    const weighed = Math.abs(sum) * m[weight + i];
    if (!(weighed < Infinity)) return Number.NaN;
    if (weighed > largest) largest = weighed;
  }
  return largest;
}
