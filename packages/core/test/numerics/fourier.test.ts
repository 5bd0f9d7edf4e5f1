import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fourierSum } from '../../src/numerics/fourier.ts';

const number = fc.double({ min: -1, max: 1, noNaN: true });

describe('a Fourier sum', () => {
  it('is the sum that it stands for', () => {
    fc.assert(
      fc.property(
        fc
          .constantFrom(1, 2, 4, 8, 32)
          .chain((n) =>
            fc.tuple(
              fc.array(number, { minLength: n, maxLength: n }),
              fc.array(number, { minLength: n, maxLength: n }),
            ),
          ),
        ([real, imaginary]) => {
          const n = real.length;
          const re = Float64Array.from(real);
          const im = Float64Array.from(imaginary);
          fourierSum(re, im);
          for (let m = 0; m < n; m += 1) {
            let x = 0;
            let y = 0;
            for (let k = 0; k < n; k += 1) {
              const angle = (2 * Math.PI * k * m) / n;
              x += real[k]! * Math.cos(angle) - imaginary[k]! * Math.sin(angle);
              y += real[k]! * Math.sin(angle) + imaginary[k]! * Math.cos(angle);
            }
            expect(Math.abs(re[m]! - x)).toBeLessThan(1e-13 * n);
            expect(Math.abs(im[m]! - y)).toBeLessThan(1e-13 * n);
          }
        },
      ),
      { seed: 50, numRuns: 60 },
    );
  });

  it('of one wave is that wave, however many places', () => {
    const n = 2 ** 15;
    const re = new Float64Array(n);
    const im = new Float64Array(n);
    re[37] = 1;
    fourierSum(re, im);
    for (let m = 0; m < n; m += 101) {
      expect(re[m]).toBeCloseTo(Math.cos((2 * Math.PI * 37 * m) / n), 12);
      expect(im[m]).toBeCloseTo(Math.sin((2 * Math.PI * 37 * m) / n), 12);
    }
  });

  it('refuses a length that is no power of two, as a mistake of ours', () => {
    expect(() => fourierSum(new Float64Array(6), new Float64Array(6))).toThrow(/power/);
    expect(() => fourierSum(new Float64Array(8), new Float64Array(4))).toThrow(/power/);
    expect(() => fourierSum(new Float64Array(0), new Float64Array(0))).toThrow(/power/);
  });
});
