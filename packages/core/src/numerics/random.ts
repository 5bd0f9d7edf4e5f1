import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** A stream of whole numbers below a bound, the same for the same seed on every machine. */
export interface RandomStream {
  /** Whole number 0 … bound − 1, all equally likely; bound at most 2³². */
  below(bound: number): number;
}

/**
 * Stream of one seed. Streams of different `branch` do not resemble each other, so that each uncertain reading can
 * have its own.
 *
 * @source xoroshiro128+ of Blackman and Vigna (2018), from the library pure-rand; the branch is mixed into the seed
 * by the finaliser of MurmurHash3 (public domain)
 */
export function randomStream(seed: number, branch = 0): RandomStream {
  const generator = xoroshiro128plus(mixed(seed ^ mixed(branch + 0x9e3779b9)));
  return {
    below(bound) {
      // Draws from the unfinished last round are thrown away: the rest is unbiased.
      const limit = 0x1_0000_0000 - (0x1_0000_0000 % bound);
      let draw = generator.next() >>> 0;
      while (draw >= limit) draw = generator.next() >>> 0;
      return draw % bound;
    },
  };
}

/** Spreads the bits of a 32-bit number over all 32. */
function mixed(value: number): number {
  let bits = value | 0;
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
  return (bits ^ (bits >>> 16)) | 0;
}
