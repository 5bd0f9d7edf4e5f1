import { shuffled } from './shuffle.ts';

/** Which part of a study a candidate belongs to: spread without a pattern, so that each part sees every option. */
export function partOf(index: number, parts: number, seed: number): number {
  const low = index >>> 0;
  const high = Math.floor(index / 0x1_0000_0000);
  return mixed(low ^ mixed(high ^ mixed(seed))) % parts;
}

/** All candidates of one part: the parts hold each candidate once, and their sizes differ by one at most. */
export function sliceOf(count: number, part: number, parts: number, seed: number): number[] {
  return shuffled(count, seed, SLICES)
    .filter((_, place) => place % parts === part)
    .sort((a, b) => a - b);
}

/** Random streams of their own, so that nothing here moves with another use of the seed. */
const SLICES = 0x51ce;

/** The finaliser of MurmurHash3 (public domain). */
function mixed(value: number): number {
  let bits = value | 0;
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
  return (bits ^ (bits >>> 16)) >>> 0;
}
