/** A size and phase at one frequency. */
interface Sine {
  readonly size: number;
  readonly frequency: number;
  readonly phase?: number;
}

interface Pulse {
  readonly size: number;
  readonly start: number;
  readonly length: number;
}

/** Samples of a function of time [s], from 0 to the duration. */
export const sampled = (rate: number, duration: number, of: (time: number) => number): Float64Array =>
  Float64Array.from({ length: Math.round(duration * rate) + 1 }, (_, n) => of(n / rate));

export const sineAt = ({ size, frequency, phase = 0 }: Sine, time: number): number =>
  size * Math.sin(2 * Math.PI * frequency * time + phase);

/** Half a sine of a given length that begins at a given time. */
export const halfSineAt = ({ size, start, length }: Pulse, time: number): number => {
  const place = (time - start) / length;
  return place > 0 && place < 1 ? size * Math.sin(Math.PI * place) : 0;
};

/** The same squared in shape: no corner at its ends. */
export const bumpAt = (pulse: Pulse, time: number): number =>
  halfSineAt({ ...pulse, size: 1 }, time) ** 2 * pulse.size;

/** Gain and phase [degrees] of a record against the sine sin(2πft), by least squares over its part from `from` on. */
export function fitted(
  record: Float64Array,
  rate: number,
  frequency: number,
  from: number,
): { readonly gain: number; readonly phase: number } {
  let [ss, sc, cc, rs, rc] = [0, 0, 0, 0, 0];
  for (let n = Math.ceil(from * rate); n < record.length; n += 1) {
    const turn = (2 * Math.PI * frequency * n) / rate;
    const [sine, cosine] = [Math.sin(turn), Math.cos(turn)];
    ss += sine * sine;
    sc += sine * cosine;
    cc += cosine * cosine;
    rs += record[n] * sine;
    rc += record[n] * cosine;
  }
  const size = ss * cc - sc * sc;
  const along = (rs * cc - rc * sc) / size;
  const across = (rc * ss - rs * sc) / size;
  return { gain: Math.hypot(along, across), phase: (Math.atan2(across, along) * 180) / Math.PI };
}
