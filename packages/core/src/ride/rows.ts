import type { i32, Memory } from './memory.ts';

/**
 * Arithmetic on whole rows of the memory, whose length is a multiple of four. The compiled kernel has its own, two numbers
 * at a time, to the same last bit: `scripts/kernel/prelude.as`.
 */

/** to = from + by·slope. */
export function leanRow(m: Memory, to: i32, from: i32, by: number, slope: i32, size: i32): void {
  for (let i = 0; i < size; i += 1) m[to + i] = m[from + i] + by * m[slope + i];
}

/** to = from + by·(a·p + b·q). */
export function leanOnTwo(
  m: Memory,
  to: i32,
  from: i32,
  by: number,
  a: number,
  p: i32,
  b: number,
  q: i32,
  size: i32,
): void {
  for (let i = 0; i < size; i += 1) m[to + i] = m[from + i] + by * (a * m[p + i] + b * m[q + i]);
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

/** to = from + by·(a·p + b·q + c·r + d·s). */
export function leanOnFour(
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
  d: number,
  s: i32,
  size: i32,
): void {
  for (let i = 0; i < size; i += 1) {
    m[to + i] = m[from + i] + by * (a * m[p + i] + b * m[q + i] + c * m[r + i] + d * m[s + i]);
  }
}

/** Largest |a·p + b·q + c·r + d·s + e·t|·weight of a row; not a number when one of them is none or not finite. */
export function largestOfFive(
  m: Memory,
  a: number,
  p: i32,
  b: number,
  q: i32,
  c: number,
  r: i32,
  d: number,
  s: i32,
  e: number,
  t: i32,
  weight: i32,
  size: i32,
): number {
  let largest: number = 0;
  for (let i = 0; i < size; i += 1) {
    const sum = a * m[p + i] + b * m[q + i] + c * m[r + i] + d * m[s + i] + e * m[t + i];
    const weighed = Math.abs(sum) * m[weight + i];
    if (!(weighed < Infinity)) return Number.NaN;
    if (weighed > largest) largest = weighed;
  }
  return largest;
}
