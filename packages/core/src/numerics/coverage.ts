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
  const bins = fillBins(samples, low, high);
  const nominal = samples[0];
  const below = orderedValue(samples, bins, low, high, TAIL * trials - 0.5);
  const above = orderedValue(samples, bins, low, high, (1 - TAIL) * trials - 0.5);
  return Math.max(above - nominal, nominal - below, 0);
}

/** Probability outside ± 2 standard deviations, on one side. */
const TAIL = 0.022750131948179;
const BINS = 512;
// Scratch for the one function that uses it, so that no call allocates; it holds nothing between calls.
const counts = new Int32Array(BINS);

function fillBins(samples: Float64Array, low: number, high: number): Int32Array {
  counts.fill(0);
  const scale = BINS / (high - low);
  for (let i = 1; i < samples.length; i += 1) {
    const bin = ((samples[i] - low) * scale) | 0;
    counts[bin < BINS ? bin : BINS - 1] += 1;
  }
  return counts;
}

/** Value at a rank (0-based, fractional: straight line between neighbours), found inside one bin or two. */
function orderedValue(
  samples: Float64Array,
  bins: Int32Array,
  low: number,
  high: number,
  rank: number,
): number {
  const lower = Math.max(0, Math.floor(rank));
  const first = valueAtRank(samples, bins, low, high, lower);
  const share = rank - lower;
  if (share <= 0) return first;
  return first + share * (valueAtRank(samples, bins, low, high, lower + 1) - first);
}

function valueAtRank(
  samples: Float64Array,
  bins: Int32Array,
  low: number,
  high: number,
  rank: number,
): number {
  let bin = 0;
  let before = 0;
  while (bin < BINS - 1 && before + bins[bin] <= rank) {
    before += bins[bin];
    bin += 1;
  }
  const scale = BINS / (high - low);
  const inside: number[] = [];
  for (let i = 1; i < samples.length; i += 1) {
    const at = ((samples[i] - low) * scale) | 0;
    if ((at < BINS ? at : BINS - 1) === bin) inside.push(samples[i]);
  }
  inside.sort((a, b) => a - b);
  return inside[Math.min(rank - before, inside.length - 1)];
}
