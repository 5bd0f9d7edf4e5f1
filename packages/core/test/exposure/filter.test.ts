import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exponentialMoments, FAITHFUL_SHARE, filtered } from '../../src/exposure/filter.ts';
import {
  highPass,
  lowPass,
  modesOf,
  responseAt,
  type TransferFunction,
} from '../../src/exposure/transfer.ts';
import {
  WEIGHTINGS,
  weightedHistory,
  weightingResponse,
  weightingTransfer,
} from '../../src/exposure/weighting.ts';
import { complex, modulus, quotient, sum } from '../../src/numerics/complex.ts';
import { integrate } from '../numerics/quadrature.ts';
import { sampled } from './signals.ts';

const RUNS = { seed: 31, numRuns: 60 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** ẏ + a·y = u. */
const fading = (a: number): TransferFunction => ({
  gain: 1,
  sections: [{ numerator: [1, 0, 0], denominator: [a, 1, 0] }],
});

describe('the modes of a transfer function', () => {
  it.each(WEIGHTINGS)('of %s add up to it', (name) => {
    const transfer = weightingTransfer(name);
    const modes = modesOf(transfer);
    for (const frequency of [0.01, 0.3, 2, 9, 70, 900]) {
      const s = complex(0, 2 * Math.PI * frequency);
      let total = complex(0);
      for (const { pole, residue } of modes)
        for (const side of [1, -1])
          total = sum(
            total,
            quotient(complex(residue.re, side * residue.im), sum(s, complex(-pole.re, -side * pole.im))),
          );
      const { gain } = responseAt(transfer, frequency);
      expect(Math.abs(modulus(total) - gain)).toBeLessThan(1e-12);
    }
  });

  it('are refused where there are none: output without lag, double pole, growing pole', () => {
    expect(() => modesOf({ gain: 1, sections: [highPass(1, 0.7)] })).toThrow(/lag/);
    expect(() => modesOf({ gain: 1, sections: [lowPass(3, 0.7), lowPass(3, 0.7)] })).toThrow(/double/);
    expect(() => modesOf(fading(-2))).toThrow(/unstable/);
  });
});

describe('the weights of a step', () => {
  it('are the integrals that they stand for, on both sides of the switch from series to recursion', () => {
    for (const z of [-1e-6, -0.3, -1.999, -2.001, -9])
      exponentialMoments(complex(z), 6).forEach(({ re, im }, m) => {
        const area = integrate((x) => Math.exp(z * (1 - x)) * x ** m, 0, 1, 40);
        expect(Math.abs(re - area)).toBeLessThan(1e-11);
        expect(im).toBeCloseTo(0, 14);
      });
  });
});

describe('a filtered record', () => {
  it('is exact for a curve of fifth order, from the first sample to the last', () => {
    fc.assert(
      fc.property(
        fc.array(between(-1, 1), { minLength: 6, maxLength: 6 }),
        between(0.2, 40),
        fc.integer({ min: 6, max: 60 }),
        (coefficients, a, count) => {
          const curve = (t: number) => coefficients.reduceRight((total, c) => total * t + c, 0);
          const rate = count - 1;
          const ours = filtered(sampled(rate, 1, curve), rate, fading(a));
          for (const n of [1, Math.floor(count / 2), count - 1]) {
            const t = n / rate;
            const exact = integrate((x) => Math.exp(-a * (t - x)) * curve(x), 0, t, 40);
            expect(Math.abs(ours[n] - exact)).toBeLessThan(1e-9);
          }
        },
      ),
      RUNS,
    );
  });

  it('of two motions is the sum of both, and of a later one comes later', () => {
    const rate = 400;
    const one = sampled(rate, 2, (t) => (t < 0.1 ? 0 : Math.sin(31 * t) * Math.exp(-t)));
    const other = sampled(rate, 2, (t) => (t < 0.2 ? 0 : Math.cos(12 * t) * t));
    const both = weightedHistory(
      one.map((value, n) => 2 * value - other[n]),
      rate,
      'Wk',
    );
    const [first, second] = [weightedHistory(one, rate, 'Wk'), weightedHistory(other, rate, 'Wk')];
    both.forEach((value, n) => {
      expect(Math.abs(value - (2 * first[n] - second[n]))).toBeLessThan(1e-12);
    });
    const late = new Float64Array(one.length);
    late.set(one.subarray(0, -40), 40);
    const shifted = weightedHistory(late, rate, 'Wk');
    for (const n of [60, 200, 700]) expect(Math.abs(shifted[n] - first[n - 40])).toBeLessThan(1e-12);
  });

  it.each([100, 233, 500, 1000, 4000])(
    'at %d samples a second has the gain of the equation to 0.1 dB up to a fifth of that',
    (rate) => {
      for (const name of ['Wk', 'Wd', 'Wb', 'Wj'] as const)
        for (const share of [0.02, 0.1, 0.15, FAITHFUL_SHARE]) {
          const frequency = share * rate;
          const record = sampled(rate, 16, (t) => Math.sin(2 * Math.PI * frequency * t));
          const settled = weightedHistory(record, rate, name).subarray(Math.round(8 * rate));
          const meanSquare = settled.reduce((total, value) => total + value * value, 0) / settled.length;
          const ratio = Math.sqrt(2 * meanSquare) / weightingResponse(name, frequency).gain;
          expect(Math.abs(20 * Math.log10(ratio))).toBeLessThan(0.1);
        }
    },
  );

  it('has the phase of the equation to 0.1°, because each piece of the curve lies in the middle of its samples', () => {
    for (const rate of [100, 500]) {
      const frequency = FAITHFUL_SHARE * rate;
      const { gain, phase } = weightingResponse('Wk', frequency);
      const record = sampled(rate, 16, (t) => Math.sin(2 * Math.PI * frequency * t));
      const ours = weightedHistory(record, rate, 'Wk');
      // A fifth of the rate: every fifth sample stands at the same place of the wave.
      let [along, across] = [0, 0];
      for (let n = 10 * rate; n < 15 * rate; n += 1) {
        along += ours[n] * Math.sin((2 * Math.PI * n) / 5);
        across += ours[n] * Math.cos((2 * Math.PI * n) / 5);
      }
      const turn = Math.atan2(across, along) - phase;
      expect(Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn)))).toBeLessThan((0.1 * Math.PI) / 180);
      expect(Math.abs(Math.hypot(along, across) / (2.5 * rate) / gain - 1)).toBeLessThan(0.0115);
    }
  });

  it('may be written where an older one stood, and leaves its input alone', () => {
    const record = sampled(100, 1, (t) => Math.sin(9 * t));
    const before = record.slice();
    const used = new Float64Array(record.length).fill(7);
    expect(filtered(record, 100, fading(3), used)).toBe(used);
    expect(used).toEqual(filtered(record, 100, fading(3)));
    expect(record).toEqual(before);
  });

  it('is refused for fewer than six samples, a rate that is none, and its own input as output', () => {
    const record = new Float64Array(8);
    expect(() => filtered(record.subarray(0, 5), 100, fading(1))).toThrow();
    for (const rate of [0, -1, Number.NaN, Infinity])
      expect(() => filtered(record, rate, fading(1))).toThrow();
    expect(() => filtered(record, 100, fading(1), record)).toThrow();
  });
});

describe('a weighting', () => {
  // Worked out with SciPy's bounded minimiser from Annex A of ISO 2631-1:1997.
  it.each([
    ['Wk', 6.1711, 1.0545],
    ['Wd', 1.0863, 1.01255],
  ] as const)('%s is largest at %f Hz', (name, frequency, gain) => {
    expect(Math.abs(weightingResponse(name, frequency).gain / gain - 1)).toBeLessThan(1e-4);
    for (const beside of [0.97, 1.03])
      expect(weightingResponse(name, beside * frequency).gain).toBeLessThan(
        weightingResponse(name, frequency).gain,
      );
  });

  it('Wd at 10 Hz is that of the equation, and not the 0.212 that is printed', () => {
    expect(weightingResponse('Wd', 10).gain).toBeCloseTo(0.20171, 5);
  });

  it('lets nothing steady through', () => {
    for (const name of WEIGHTINGS) expect(weightingResponse(name, 0).gain).toBe(0);
  });
});
