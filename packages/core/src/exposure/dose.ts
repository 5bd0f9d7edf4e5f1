/**
 * Time average of the square, by the trapezoidal rule.
 *
 * @param samples – evenly sampled, at least two
 * @returns in the unit of the samples squared
 */
export function meanSquare(samples: Float64Array): number {
  return meanPower(samples, (value) => value * value);
}

/** Root of the time average of the square: a_w of ISO 2631-1:1997, 6.1, for weighted acceleration [m/s²]. */
export const rootMeanSquare = (samples: Float64Array): number => Math.sqrt(meanSquare(samples));

/**
 * Vibration dose value: VDV = (∫ a_w⁴ dt)^¼. It adds up over time, and single hits count for more than in the r.m.s.
 *
 * @param weighted – weighted acceleration [m/s²], evenly sampled, at least two
 * @param rate – samples a second [Hz]
 * @returns [m/s^1.75] ≥ 0
 * @source ISO 2631-1:1997, 6.3.2 (from memory)
 */
export function vibrationDose(weighted: Float64Array, rate: number): number {
  const duration = (weighted.length - 1) / rate;
  return (meanPower(weighted, (value) => value ** 4) * duration) ** 0.25;
}

/**
 * Dose estimated from the r.m.s.: eVDV = 1.4·a_w·T^¼, for vibration without single hits.
 *
 * @param rms – a_w [m/s²]
 * @param duration – T [s]
 * @returns [m/s^1.75]
 * @source ISO 2631-1:1997, Annex B (from memory)
 */
export const estimatedDose = (rms: number, duration: number): number => 1.4 * rms * duration ** 0.25;

function meanPower(samples: Float64Array, power: (value: number) => number): number {
  const last = samples.length - 1;
  let total = (power(samples[0]) + power(samples[last])) / 2;
  for (let n = 1; n < last; n += 1) total += power(samples[n]);
  return total / last;
}
