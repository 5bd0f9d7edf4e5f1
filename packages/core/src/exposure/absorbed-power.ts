import { meanSquare } from './dose.ts';
import { filtered } from './filter.ts';
import { responseAt, type TransferFunction } from './transfer.ts';

/** One foot [m]: the model was fitted to ft/s². */
const FOOT = 0.3048;

/**
 * H(s) = 14.5·s·(s + 44) ÷ [(s + 63)(s² + 24·s + 750)], ft/s² to √W. An empirical fit; all its numbers are devices.
 *
 * @source Pradko and Lee 1966–68 in a form of third order, found back from the bilinear coefficients of an open
 * source library (read)
 */
const VERTICAL_SEATED: TransferFunction = {
  gain: 14.5 / FOOT,
  sections: [
    { numerator: [0, 44, 1], denominator: [750, 24, 1] },
    { numerator: [1, 0, 0], denominator: [63, 1, 0] },
  ],
};

/**
 * How far two published forms of the model lie apart, as a share of the power: below 17 % up to 6.3 Hz, 25 % at 8 Hz.
 * @source third-order form against the polynomial form (from memory), both worked out
 */
export const ABSORBED_POWER_SPREAD = 0.25;

/**
 * Power that a seated body takes up from vertical motion of its seat: the time average of y², y = H·a.
 *
 * @param history – vertical acceleration of the seat [m/s²], evenly sampled, at least six samples
 * @param rate – samples a second [Hz]
 * @returns [W] ≥ 0
 * @validity seated, upright, on a hard seat; 1 to 20 Hz; two forms of the model differ by `ABSORBED_POWER_SPREAD`
 */
export const absorbedPower = (history: Float64Array, rate: number): number =>
  meanSquare(filtered(history, rate, VERTICAL_SEATED));

/** Power for each (m/s²)² of r.m.s. at one frequency [W/(m/s²)²]. */
export const absorbedPowerPerSquare = (frequency: number): number =>
  responseAt(VERTICAL_SEATED, frequency).gain ** 2;
