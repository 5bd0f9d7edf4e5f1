import { type RandomStream, randomStream } from '../numerics/random.ts';

/** Evenly between 0 and 1, both ends hardly ever. */
export const evenly = (stream: RandomStream): number => (stream.below(2 ** 32) + 0.5) / 2 ** 32;

/** Evenly between two bounds. */
export const between = (stream: RandomStream, low: number, high: number): number =>
  low + (high - low) * evenly(stream);

/** What is drawn of a seed must not depend on what else is drawn of it: one stream for each purpose. */
export const streamFor = (
  seed: number,
  purpose: 'spacing' | 'height' | 'left' | 'right' | 'road',
): RandomStream => randomStream(seed, PURPOSES.indexOf(purpose));

const PURPOSES = ['spacing', 'height', 'left', 'right', 'road'];
