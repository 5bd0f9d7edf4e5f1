import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hermiteSlope, hermiteValue } from '../../src/numerics/hermite.ts';

const RUNS = { seed: 20, numRuns: 300 };
const coefficient = fc.double({ min: -5, max: 5, noNaN: true });
const cubic = fc.tuple(coefficient, coefficient, coefficient, coefficient);
const length = fc.double({ min: 1e-3, max: 4, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });

type Cubic = readonly [number, number, number, number];
const value = ([a, b, c, d]: Cubic, x: number): number => a + x * (b + x * (c + x * d));
const slope = ([, b, c, d]: Cubic, x: number): number => b + x * (2 * c + 3 * x * d);

describe('the cubic through two ends with their slopes', () => {
  it('is any cubic itself, at every place between the ends', () => {
    fc.assert(
      fc.property(cubic, length, share, (p, h, theta) => {
        const ends = [value(p, 0), slope(p, 0), value(p, h), slope(p, h), h] as const;
        const size = 1e-13 * (5 * (1 + h + h ** 2 + h ** 3));
        expect(Math.abs(hermiteValue(...ends, theta) - value(p, theta * h))).toBeLessThan(8 * size);
      }),
      RUNS,
    );
  });

  it('has the slope of that cubic', () => {
    fc.assert(
      fc.property(cubic, length, share, (p, h, theta) => {
        const ends = [value(p, 0), slope(p, 0), value(p, h), slope(p, h), h] as const;
        const size = (1e-13 * 5 * (1 + h + h ** 2 + h ** 3)) / Math.min(1, h);
        expect(Math.abs(hermiteSlope(...ends, theta) - slope(p, theta * h))).toBeLessThan(8 * size);
      }),
      RUNS,
    );
  });

  it('meets both ends and both slopes', () => {
    const ends = [0.3, -2, 1.1, 7, 0.25] as const;
    expect([hermiteValue(...ends, 0), hermiteValue(...ends, 1)]).toEqual([0.3, 1.1]);
    expect(hermiteSlope(...ends, 0)).toBeCloseTo(-2, 12);
    expect(hermiteSlope(...ends, 1)).toBeCloseTo(7, 12);
  });
});
