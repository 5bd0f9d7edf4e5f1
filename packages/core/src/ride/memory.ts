/**
 * The one memory of the ride kernel: numbers only, at the places of `layout.ts`, the state of a run with the rig, its
 * tables and its ground.
 *
 * The kernel is what a step consists of: every function that is given a `Memory`. It is written in what TypeScript and
 * AssemblyScript have in common, so that the same source runs as it is and is compiled to WebAssembly
 * (`scripts/kernel`): numbers and places, no objects, no closures, nothing made.
 */
export type Memory = Float64Array;

/** A whole number of 32 bits: a place in the memory, a count, contacts as bits. Everything else is a `number`. */
export type i32 = number;

/** Toward zero; within 32 bits, or not a number (0). */
export function whole(x: number): i32 {
  return x | 0;
}

/** A whole number that stands in the memory. */
export function placeAt(m: Memory, i: i32): i32 {
  return m[i] | 0;
}
