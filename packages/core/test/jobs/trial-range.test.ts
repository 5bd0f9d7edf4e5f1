import { describe, expect, it } from 'vitest';
import { coverageOf, TRIALS_FOR_COVERAGE, TrialRange } from '../../src/jobs/trial-range.ts';
import { randomStream } from '../../src/numerics/random.ts';

const rangeOf = (values: readonly number[]) => {
  const range = new TrialRange(values.length);
  for (const value of values) range.take(value);
  return range.ends();
};

describe('the range of the trials', () => {
  it('is from the least to the most of 39, and drops one at each end from 79 on', () => {
    const upTo = (n: number) => Array.from({ length: n }, (_, i) => (i * 11) % n);
    expect(rangeOf(upTo(39))).toEqual({ low: 0, high: 38 });
    expect(rangeOf(upTo(78))).toEqual({ low: 0, high: 77 });
    expect(rangeOf(upTo(79))).toEqual({ low: 1, high: 77 });
    expect(rangeOf(upTo(119))).toEqual({ low: 2, high: 116 });
  });

  it('orders what is never broken like any other speed', () => {
    expect(rangeOf([9, Number.POSITIVE_INFINITY, 8])).toEqual({ low: 8, high: Number.POSITIVE_INFINITY });
    expect(rangeOf([Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY])?.low).toBe(Number.POSITIVE_INFINITY);
  });

  it('says nothing as soon as one trial has no figure', () => {
    expect(rangeOf([1, Number.NaN, 3])).toBeNull();
  });

  // The share between the r-th smallest and r-th largest of n is a beta variable of mean (n + 1 − 2r)/(n + 1) whatever
  // the distribution (Wilks 1941). Here it is counted: uniform numbers, whose share is the length of the range.
  it.each([
    [10, 9 / 11],
    [39, 0.95],
    [79, 0.95],
    [100, 97 / 101],
  ])('covers of %i trials the share it says, on average', (trials, expected) => {
    expect(coverageOf(trials)).toBeCloseTo(expected, 12);
    const random = randomStream(20, trials);
    const repeats = 4000;
    let sum = 0;
    let squares = 0;
    for (let k = 0; k < repeats; k += 1) {
      const ends = rangeOf(Array.from({ length: trials }, () => random.below(2 ** 30) / 2 ** 30));
      const share = (ends?.high ?? 0) - (ends?.low ?? 0);
      sum += share;
      squares += share * share;
    }
    const mean = sum / repeats;
    const standardError = Math.sqrt((squares / repeats - mean * mean) / repeats);
    expect(Math.abs(mean - expected)).toBeLessThan(4 * standardError);
    expect(standardError).toBeLessThan(0.003);
  });

  it('needs 39 trials for 95 in 100', () => {
    expect(coverageOf(TRIALS_FOR_COVERAGE)).toBeCloseTo(0.95, 12);
    expect(coverageOf(TRIALS_FOR_COVERAGE - 1)).toBeLessThan(0.95);
    expect(coverageOf(1)).toBe(0);
  });
});
