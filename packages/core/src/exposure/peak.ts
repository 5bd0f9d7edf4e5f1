import { filtered } from './filter.ts';
import { lowPass, type TransferFunction } from './transfer.ts';

/**
 * Highest value of the curve through the samples: the top of the parabola through the highest sample and its
 * neighbours, so that it does not depend on where the samples fell.
 *
 * @param samples – evenly sampled, at least one
 */
export function highest(samples: Float64Array): number {
  let top = 0;
  for (let n = 1; n < samples.length; n += 1) if (samples[n] > samples[top]) top = n;
  if (top === 0 || top === samples.length - 1) return samples[top];
  const [before, value, after] = [samples[top - 1], samples[top], samples[top + 1]];
  const bend = before - 2 * value + after;
  return bend < 0 ? value - (before - after) ** 2 / (8 * bend) : value;
}

/** Largest size of the curve through the samples, up or down. */
export const largestSize = (samples: Float64Array): number =>
  Math.max(highest(samples), highest(samples.map((value) => -value)));

/**
 * Largest acceleration after a low-pass of 30 Hz with four poles (Butterworth): what a seat passes on, without the
 * ringing of panels. The measure that goes with the 2.5 g of ride tests over half-rounds.
 *
 * @param history – acceleration [m/s²], evenly sampled, at least six samples
 * @param rate – samples a second [Hz]
 * @returns [m/s²] ≥ 0
 * @source the filter as read in an open source library; its use with 2.5 g from memory
 */
export const lowPassedPeak = (history: Float64Array, rate: number): number =>
  largestSize(filtered(history, rate, FOUR_POLES));

const FOUR_POLES: TransferFunction = {
  gain: 1,
  sections: [1, 3].map((k) => lowPass(30, 1 / (2 * Math.cos((k * Math.PI) / 8)))),
};
