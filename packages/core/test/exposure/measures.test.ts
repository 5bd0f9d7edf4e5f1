import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { absorbedPower } from '../../src/exposure/absorbed-power.ts';
import { rootMeanSquare, vibrationDose } from '../../src/exposure/dose.ts';
import {
  COMFORT_BANDS,
  comfortBands,
  dailyExposure,
  guidanceZone,
  placeInZone,
  shockTriggers,
  timeToDose,
  timeToExposure,
} from '../../src/exposure/limits.ts';
import { highest, largestSize, lowPassedPeak } from '../../src/exposure/peak.ts';
import { maximumTransient, runningRms } from '../../src/exposure/running.ts';
import { dynamicResponseIndex } from '../../src/exposure/shock-response.ts';
import { added, bump, sampled, swing } from './signals.ts';

const RUNS = { seed: 32, numRuns: 100 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const RATE = 500;

describe('averages', () => {
  it('of a steady value are that value', () => {
    const steady = new Float64Array(1001).fill(-2);
    expect(rootMeanSquare(steady)).toBeCloseTo(2, 12);
    expect(vibrationDose(steady, 1000)).toBeCloseTo(2, 12);
    expect(vibrationDose(steady, 1000 / 16)).toBeCloseTo(4, 12);
  });

  it('obey r.m.s. ≤ dose per fourth root of time ≤ peak', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -30, max: 30 }), { minLength: 8, maxLength: 300 }), (values) => {
        const record = Float64Array.from(values);
        const duration = (record.length - 1) / RATE;
        const dose = vibrationDose(record, RATE) / duration ** 0.25;
        expect(rootMeanSquare(record)).toBeLessThanOrEqual(dose * (1 + 1e-12));
        expect(dose).toBeLessThanOrEqual(largestSize(record) * (1 + 1e-12));
      }),
      RUNS,
    );
  });

  it('of doses add up by their fourth powers', () => {
    const [one, other] = [sampled(RATE, 3, swing(2, 4)), sampled(RATE, 3, bump(9, 1, 0.4))];
    const joined = Float64Array.from([...one, ...new Float64Array(20), ...other]);
    const parts = vibrationDose(one, RATE) ** 4 + vibrationDose(other, RATE) ** 4;
    expect(vibrationDose(joined, RATE) ** 4 / parts).toBeCloseTo(1, 2);
  });
});

describe('the running r.m.s.', () => {
  it('of a steady value rises as the window fills, and stays', () => {
    const steady = new Float64Array(4 * RATE + 1).fill(3);
    const even = runningRms(steady, RATE, 'linear');
    expect(even[RATE / 4]).toBeCloseTo(1.5, 12);
    expect(even[RATE]).toBeCloseTo(3, 12);
    expect(even[4 * RATE]).toBeCloseTo(3, 12);
    const fading = runningRms(steady, RATE, 'exponential');
    expect(fading[2 * RATE]).toBeCloseTo(3 * Math.sqrt(1 - Math.exp(-2)), 12);
  });

  it('forgets a hit: at once after a second with the even window, by 1/e a second with the fading one', () => {
    const hit = sampled(RATE, 6, bump(10, 0.5, 0.1));
    const even = runningRms(hit, RATE, 'linear');
    expect(even[RATE]).toBeGreaterThan(1);
    expect(even[2 * RATE]).toBeCloseTo(0, 6);
    const fading = runningRms(hit, RATE, 'exponential');
    expect(fading[3 * RATE] ** 2 / fading[2 * RATE] ** 2).toBeCloseTo(Math.exp(-1), 10);
  });

  it('does not need a whole number of samples in its window', () => {
    const record = (rate: number) => sampled(rate, 5, (t) => 1 + 0.2 * Math.sin(3 * t));
    const fine = maximumTransient(record(4000), 4000, 'linear');
    expect(Math.abs(maximumTransient(record(333.3), 333.3, 'linear') / fine - 1)).toBeLessThan(1e-5);
  });

  it('is exact where the square goes in straight lines, however coarse the samples', () => {
    // a² = t: the even window holds t − 1/2 on average, the fading one t − 1 + e^−t.
    for (const rate of [2.5, 4, 7.3]) {
      const record = sampled(rate, 6, (t) => Math.sqrt(t));
      const even = runningRms(record, rate, 'linear');
      const fading = runningRms(record, rate, 'exponential');
      for (let n = Math.ceil(rate); n < record.length; n += 1) {
        const t = n / rate;
        expect(even[n] ** 2).toBeCloseTo(t - 0.5, 10);
        expect(fading[n] ** 2).toBeCloseTo(t - 1 + Math.exp(-t), 10);
      }
    }
  });

  it('is never larger than the largest value', () => {
    fc.assert(
      fc.property(fc.array(between(-30, 30), { minLength: 8, maxLength: 400 }), (values) => {
        const record = Float64Array.from(values);
        const size = Math.max(...record.map(Math.abs));
        for (const window of ['linear', 'exponential'] as const)
          expect(maximumTransient(record, 100, window)).toBeLessThanOrEqual(size * (1 + 1e-12));
      }),
      RUNS,
    );
  });
});

describe('a peak', () => {
  it('of a parabola is its top, wherever the samples fall', () => {
    fc.assert(
      fc.property(between(0.3, 0.7), between(0.1, 9), (top, size) => {
        const record = sampled(23, 1, (t) => size * (1 - (t - top) ** 2));
        expect(Math.abs(highest(record) - size)).toBeLessThan(1e-12 * size);
      }),
      RUNS,
    );
  });

  it('at an end is the sample itself, and elsewhere at most an eighth of a step above it', () => {
    expect(highest(Float64Array.of(5, 1, 2))).toBe(5);
    expect(highest(Float64Array.of(1, 2, 6))).toBe(6);
    expect(highest(Float64Array.of(0, 4, 4, 4, 0))).toBe(4.5);
    expect(highest(Float64Array.of(1, 4, 1))).toBe(4);
    expect(largestSize(Float64Array.of(1, -3, 1))).toBe(3);
  });

  it('after the low-pass hardly knows a hit of a millisecond, and keeps one of a fifth of a second', () => {
    const peak = (length: number) => lowPassedPeak(sampled(8000, 1, bump(100, 0.2, length)), 8000);
    expect(peak(1e-3)).toBeLessThan(6);
    expect(Math.abs(peak(0.2) / 100 - 1)).toBeLessThan(0.06);
  });
});

describe('measures of hits and power', () => {
  it('grow with the motion: index and peak in proportion, power with the square', () => {
    const record = sampled(RATE, 6, added(swing(2, 5), bump(20, 3, 0.15)));
    const double = record.map((value) => 2 * value);
    expect(dynamicResponseIndex(double, RATE) / dynamicResponseIndex(record, RATE)).toBeCloseTo(2, 10);
    expect(lowPassedPeak(double, RATE) / lowPassedPeak(record, RATE)).toBeCloseTo(2, 10);
    expect(absorbedPower(double, RATE) / absorbedPower(record, RATE)).toBeCloseTo(4, 10);
  });

  it('count a push from below and not a pull in the dynamic response index', () => {
    const up = sampled(RATE, 2, bump(40, 0.5, 0.2));
    expect(dynamicResponseIndex(up, RATE)).toBeGreaterThan(4);
    expect(
      dynamicResponseIndex(
        up.map((value) => -value),
        RATE,
      ),
    ).toBeLessThan(2.5);
  });
});

describe('yardsticks', () => {
  it('say the same forwards and backwards', () => {
    fc.assert(
      fc.property(between(0.05, 9), between(0.3, 3), (counted, value) => {
        expect(dailyExposure(counted, timeToExposure(counted, value)) / value).toBeCloseTo(1, 10);
        const time = timeToDose(counted, 20, value);
        expect((counted * (time / 20) ** 0.25) / value).toBeCloseTo(1, 10);
      }),
      RUNS,
    );
  });

  it('never come for a seat that stands still', () => {
    expect(timeToExposure(0, 0.5)).toBe(Infinity);
    expect(timeToDose(0, 10, 9.1)).toBe(Infinity);
  });

  it('leave no comfort value without a band, and overlap as the standard does', () => {
    fc.assert(
      fc.property(between(0, 40), (rms) => {
        expect(comfortBands(rms).length).toBeGreaterThan(0);
      }),
      RUNS,
    );
    expect(comfortBands(0.2)).toEqual(['not']);
    expect(comfortBands(0.55)).toEqual(['little', 'fairly']);
    expect(comfortBands(0.7)).toEqual(['fairly']);
    expect(comfortBands(1.4)).toEqual(['uncomfortable', 'very']);
    expect(comfortBands(12)).toEqual(['extremely']);
    expect(comfortBands(0.7, 0.15)).toEqual(['little', 'fairly', 'uncomfortable']);
    expect(COMFORT_BANDS.every(({ from, to }) => from < to)).toBe(true);
  });

  it('keep both definitions of the guidance zone apart', () => {
    const { equalEnergy, fourthPower } = guidanceZone(60);
    expect(equalEnergy).toEqual({ lower: 3, upper: 6 });
    expect(fourthPower.lower).toBeCloseTo(8.5 / (1.4 * 60 ** 0.25), 12);
    expect([0.4, 0.45, 0.9].map((value) => placeInZone(value, guidanceZone(28_800).equalEnergy))).toEqual([
      'below',
      'within',
      'above',
    ]);
    expect([0.45, 0.5, 0.94].map((value) => placeInZone(value, guidanceZone(28_800).fourthPower))).toEqual([
      'below',
      'within',
      'above',
    ]);
  });

  it('see single hits by any of three signs, and none in a sine', () => {
    const sine = { rms: 1, peak: Math.SQRT2, maximumTransient: 1, dose: 1.10668, duration: 1 };
    expect(shockTriggers(sine)).toEqual([]);
    expect(shockTriggers({ ...sine, peak: 9.1 })).toEqual(['crestFactor']);
    expect(shockTriggers({ ...sine, maximumTransient: 1.6 })).toEqual(['transientShare']);
    expect(shockTriggers({ ...sine, dose: 1.8 })).toEqual(['doseShare']);
    expect(shockTriggers({ ...sine, rms: 0, peak: 0 })).toEqual([]);
  });
});
