import { describe, expect, it } from 'vitest';
import { resampled } from '../../src/exposure/resample.ts';
import {
  accelerationDose,
  horizontalSpinalResponse,
  perDay,
  SPINAL_RATE,
  spinalEdition,
  spinalResponse,
  verticalSpinalResponse,
  workingLifeFactor,
} from '../../src/exposure/spinal.ts';
import { bump, sampled, swing } from './signals.ts';

describe('the edition of ISO 2631-5', () => {
  it('2004 is taken', () => expect(spinalEdition(' 2004 ')).toEqual({ ok: true, value: '2004' }));

  it('2018 is refused, and why is said', () => {
    const answer = spinalEdition('2018', 'spinal-edition');
    expect(answer).toMatchObject({
      ok: false,
      problems: [{ code: 'ask-option', where: { key: 'spinal-edition' }, found: '2018' }],
    });
    expect(answer.ok ? '' : answer.problems[0].accepted).toMatch(/2004.*2018.*not public/);
  });
});

describe('the level model', () => {
  it('is a mass on a spring, sampled: 2.125 Hz and ζ = 0.22', () => {
    // Two poles e^(−ζω/160 ± iω√(1−ζ²)/160): their sum and product are the coefficients of the recursion.
    const [w, zeta] = [2 * Math.PI * 2.125, 0.22];
    const size = Math.exp((-zeta * w) / SPINAL_RATE);
    const turn = (w * Math.sqrt(1 - zeta * zeta)) / SPINAL_RATE;
    expect(2 * size * Math.cos(turn)).toBeCloseTo(1.957115, 6);
    expect(size * size).toBeCloseTo(0.963949, 6);
  });

  it('carries a steady value through', () => {
    const steady = horizontalSpinalResponse(new Float64Array(4000).fill(2));
    expect(steady[3999] / 2).toBeCloseTo(1, 3);
  });
});

describe('the dose', () => {
  it('takes one peak between two crossings, and the last one too', () => {
    const response = Float64Array.of(0, 1, 3, 2, -1, -4, -2, 1, 2, 2);
    expect(accelerationDose(response, 'both') ** 6).toBeCloseTo(3 ** 6 + 4 ** 6 + 2 ** 6, 8);
    expect(accelerationDose(response, 'upward') ** 6).toBeCloseTo(3 ** 6 + 2 ** 6, 8);
    expect(accelerationDose(Float64Array.of(1, 0, 2, -1), 'both') ** 6).toBeCloseTo(2 ** 6 + 1, 8);
  });

  it('of nothing is nothing, although the vertical model rests a little below zero', () => {
    const rest = verticalSpinalResponse(new Float64Array(400));
    expect(rest[399]).toBeCloseTo(-0.021589, 5);
    expect(accelerationDose(rest, 'upward')).toBe(0);
  });

  it('grows with the sixth root of time', () => expect(perDay(2, 10, 640)).toBeCloseTo(4, 12));
});

describe('the response of a record', () => {
  const vertical = sampled(800, 5, bump(25, 2, 0.12));

  it('is that at 160 samples a second, at whatever rate it was taken', () => {
    const slow = spinalResponse({ vertical: sampled(160, 5, bump(25, 2, 0.12)) }, 160, null);
    const fast = spinalResponse({ vertical }, 800, null);
    expect(Math.abs(fast.vertical / slow.vertical - 1)).toBeLessThan(2e-3);
    expect(fast).toMatchObject({ edition: '2004', singleSource: true, foreAndAft: null, stressPerDay: null });
  });

  it('adds what the level directions bring, and a day', () => {
    const alone = spinalResponse({ vertical }, 800, 600);
    const sideways = sampled(800, 5, swing(6, 2));
    const both = spinalResponse({ vertical, sideways, foreAndAft: sideways }, 800, 600);
    expect(both.stress).toBeGreaterThan(alone.stress);
    expect(both.sideways).toBe(both.foreAndAft);
    expect(alone.stressPerDay).toBeCloseTo(alone.stress * (600 / 5) ** (1 / 6), 6);
  });

  it('R agrees with the companions that the standard is said to print, to its rounding', () => {
    // S = 0.5 ↔ R = 0.8 and 0.8 ↔ 1.2 MPa; from memory.
    const life = { startAge: 20, daysPerYear: 240, years: 45 };
    expect(workingLifeFactor(0.5e6, life)).toBeCloseTo(0.8, 1);
    expect(workingLifeFactor(0.8e6, life)).toBeCloseTo(1.2, 1);
  });
});

describe('a slower record', () => {
  const tone = (frequency: number) => sampled(1000, 6, (t) => Math.sin(2 * Math.PI * frequency * t));

  it('keeps what it can hold to 0.1 dB', () => {
    for (const frequency of [0.7, 11, 40, 67]) {
      const made = resampled(tone(frequency), 1000, 160);
      expect(made.length).toBe(961);
      for (let k = 64; k < 896; k += 1)
        expect(Math.abs(made[k] - Math.sin((2 * Math.PI * frequency * k) / 160))).toBeLessThan(0.0115);
    }
  });

  it('has lost what it cannot hold', () => {
    for (const frequency of [81, 120, 159, 300])
      for (const value of resampled(tone(frequency), 1000, 160).subarray(64, 896))
        expect(Math.abs(value)).toBeLessThan(1e-3);
  });

  it('keeps a steady value up to both ends, and is itself at its own rate', () => {
    const steady = new Float64Array(777).fill(1.5);
    for (const value of resampled(steady, 512, 160)) expect(value).toBeCloseTo(1.5, 12);
    expect(resampled(steady, 160, 160)).toBe(steady);
    expect(() => resampled(steady, 100, 160)).toThrow();
  });
});
