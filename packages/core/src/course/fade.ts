/** Rise of a ground from flat: g = c³(10 − 15c + 6c²), c = s/length; no step in height, slope or curvature. */
export interface Gain {
  readonly gain: number;
  /** dg/ds [1/m] */
  readonly slope: number;
}

/** @param length – over which it rises [m]; 0: at once */
export function fadeIn(s: number, length: number): Gain {
  if (length <= 0 || s >= length) return { gain: 1, slope: 0 };
  const c = s / length;
  return { gain: c * c * c * (10 + c * (6 * c - 15)), slope: (30 * c * c * (1 - c) * (1 - c)) / length };
}

/** Lets the first samples of a ground that begins at distance zero rise from flat, in place. */
export function fadeSamples(samples: Float64Array, step: number, length: number): Float64Array {
  for (let i = 0; 2 * i < samples.length && i * step < length; i += 1) {
    const { gain, slope } = fadeIn(i * step, length);
    samples[2 * i + 1] = 0 + gain * samples[2 * i + 1] + slope * samples[2 * i];
    // Not minus zero, where a ground below zero begins.
    samples[2 * i] = 0 + gain * samples[2 * i];
  }
  return samples;
}
