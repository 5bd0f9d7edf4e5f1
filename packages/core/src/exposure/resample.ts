/** Samples of the slower rate on each side that a new sample is made of. */
const REACH = 32;
/** Kaiser's window: 80 dB down in the stop band. */
const SHARPNESS = 8;
/** Edge of the pass band, as a share of half the new rate: the stop band begins at half the new rate. */
const EDGE = 0.92;

/**
 * A record at a lower rate, without what the lower rate cannot hold: a windowed sinc, zero phase.
 *
 * @param rate – of the record [Hz], at least `newRate`
 * @returns samples from the first instant to the last that the record covers; the record itself at the same rate
 * @validity flat to 0.1 dB up to 84 % of half the new rate, 80 dB down from half the new rate on
 * @source Kaiser's window design, any text on signals
 */
export function resampled(history: Float64Array, rate: number, newRate: number): Float64Array {
  if (rate === newRate) return history;
  if (!(rate > newRate)) throw new Error('resampled: only to a lower rate');
  const count = Math.floor(((history.length - 1) / rate) * newRate + 1e-9) + 1;
  const reach = (REACH * rate) / newRate;
  const finely = (FINENESS * newRate) / rate;
  kernel ??= makeKernel();
  const made = new Float64Array(count);
  for (let k = 0; k < count; k += 1) {
    const centre = (k * rate) / newRate;
    const from = Math.max(0, Math.ceil(centre - reach));
    const to = Math.min(history.length - 1, Math.floor(centre + reach));
    let total = 0;
    let weights = 0;
    for (let n = from; n <= to; n += 1) {
      const place = Math.abs(n - centre) * finely;
      const at = Math.min(place | 0, kernel.length - 2);
      const weight = kernel[at] + (place - at) * (kernel[at + 1] - kernel[at]);
      total += weight * history[n];
      weights += weight;
    }
    // Divided by what the weights add up to, so that a steady value stays itself near both ends.
    made[k] = total / weights;
  }
  return made;
}

/** Entries of the kernel for each sample of the slower rate; straight lines between them are right to 4e-7. */
const FINENESS = 1024;
// The kernel is the same whatever the rates are. Made when it is first asked for.
let kernel: Float64Array | null = null;

const makeKernel = (): Float64Array =>
  Float64Array.from({ length: REACH * FINENESS + 1 }, (_, k) => {
    const place = k / FINENESS;
    return sinc(EDGE * place) * kaiser(place / REACH);
  });

const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));

const kaiser = (place: number): number =>
  bessel0(SHARPNESS * Math.sqrt(Math.max(0, 1 - place * place))) / bessel0(SHARPNESS);

/** Modified Bessel function of order 0, by its series. */
function bessel0(x: number): number {
  let term = 1;
  let total = 1;
  for (let k = 1; term > 1e-17 * total; k += 1) {
    term *= (x / (2 * k)) ** 2;
    total += term;
  }
  return total;
}
