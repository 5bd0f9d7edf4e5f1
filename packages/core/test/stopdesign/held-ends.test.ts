import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heldFactor } from '../../src/stopdesign/held-ends.ts';
import { between } from './any-material.ts';

describe('a round body with held ends', () => {
  it('is between one with free sides and one that cannot widen at all', () => {
    fc.assert(
      fc.property(between(0, 0.45), between(0.01, 0.1), between(0.005, 0.3), (poisson, radius, height) => {
        const confined = (1 - poisson) / ((1 + poisson) * (1 - 2 * poisson));
        const both = heldFactor(poisson, radius, height, 2);
        const one = heldFactor(poisson, radius, height, 1);
        expect(heldFactor(poisson, radius, height, 0)).toBe(1);
        expect(one).toBeGreaterThanOrEqual(1 - 1e-12);
        expect(both).toBeGreaterThanOrEqual(one - 1e-12);
        expect(both).toBeLessThanOrEqual(confined + 1e-12);
      }),
    );
  });

  it('comes to both limits', () => {
    expect(heldFactor(0.3, 0.03, 30, 2)).toBeCloseTo(1, 5);
    expect(heldFactor(0.3, 0.03, 3e-6, 2)).toBeCloseTo(0.7 / (1.3 * 0.4), 3);
  });
});
