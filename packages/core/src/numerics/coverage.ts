/**
 * Half-width of the coverage interval of a sampled quantity, about its nominal value: the larger of both sides.
 *
 * The interval is the probabilistically symmetric one that holds 95.45 % of the trials, the coverage of ± 2 standard
 * deviations of a normal. So one reading alone comes back with the tolerance that was typed (k = 2).
 *
 * @param samples – nominal value at index 0, then one value a trial
 * @returns half-width, ≥ 0, in the unit of the samples
 * @source JCGM 101:2008, 7.7 (interval from the ordered values); k = 2: JCGM 100:2008, table G.1
 */
export function coverageHalfWidth(samples: Float64Array): number {
  const trials = samples.length - 1;
  if (trials < 2) return 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 1; i <= trials; i += 1) {
    const x = samples[i];
    if (x < low) low = x;
    if (x > high) high = x;
  }
  if (!(high > low)) return high === low ? Math.abs(high - samples[0]) : Number.NaN;
  counts.fill(0);
  const scale = BINS / (high - low);
  for (let i = 1; i <= trials; i += 1) counts[binOf(samples[i], low, scale)] += 1;
  const below = TAIL * trials - 0.5;
  const above = (1 - TAIL) * trials - 0.5;
  const lowEnd = binsOfRank(Math.max(0, Math.floor(below)));
  const highEnd = binsOfRank(Math.floor(above));
  const atLow: number[] = [];
  const atHigh: number[] = [];
  for (let i = 1; i <= trials; i += 1) {
    const bin = binOf(samples[i], low, scale);
    if (bin >= lowEnd.first && bin <= lowEnd.last) atLow.push(samples[i]);
    if (bin >= highEnd.first && bin <= highEnd.last) atHigh.push(samples[i]);
  }
  const nominal = samples[0];
  return Math.max(
    valueAt(atHigh, above - highEnd.before) - nominal,
    nominal - valueAt(atLow, below - lowEnd.before),
    0,
  );
}

/** Probability outside ± 2 standard deviations, on one side. */
const TAIL = 0.022750131948179;
const BINS = 512;
// Scratch for the one function that uses it, so that no call allocates; it holds nothing between calls.
const counts = new Int32Array(BINS);

function binOf(sample: number, low: number, scale: number): number {
  const bin = ((sample - low) * scale) | 0;
  return bin < BINS ? bin : BINS - 1;
}

/** Bins that hold the value of a rank (0-based) and the next one above, and how many values lie before them. */
function binsOfRank(rank: number): {
  readonly first: number;
  readonly last: number;
  readonly before: number;
} {
  let first = 0;
  let before = 0;
  while (before + counts[first] <= rank) {
    before += counts[first];
    first += 1;
  }
  let last = first;
  let within = before + counts[first];
  while (within <= rank + 1 && last < BINS - 1) {
    last += 1;
    within += counts[last];
  }
  return { first, last, before };
}

/** Value at a fractional rank among the values of its bins: a straight line between neighbours. */
function valueAt(values: number[], rank: number): number {
  values.sort((a, b) => a - b);
  const lower = Math.max(0, Math.floor(rank));
  const upper = Math.min(lower + 1, values.length - 1);
  return values[lower] + Math.max(0, rank - lower) * (values[upper] - values[lower]);
}
