import { describe, expect, it } from 'vitest';
import { xTimesK1 } from '../../src/numerics/bessel.ts';

// Against SciPy: validation/checks/roads/bessel-coherence.json.

describe('x·K1(x)', () => {
  it('is one at zero and nothing far out', () => {
    expect([xTimesK1(0), xTimesK1(1000)]).toEqual([1, 0]);
  });

  it.each([
    // Abramowitz and Stegun, Handbook of Mathematical Functions, table 9.8: K1(1) and K1(2), from memory.
    [1, 0.6019072301972346],
    [2, 2 * 0.13986588181652243],
  ])('is tabulated at %s', (x, expected) => expect(xTimesK1(x)).toBeCloseTo(expected, 14));

  it('falls without a step where its ways of reckoning meet', () => {
    for (const x of [1e-8, 700])
      expect(Math.abs(xTimesK1(x * 1.0001) - xTimesK1(x * 0.9999))).toBeLessThan(3e-15);
  });
});
