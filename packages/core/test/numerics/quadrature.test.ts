import { describe, expect, it } from 'vitest';
import { integrate, slopeOf } from './quadrature.ts';

describe('the quadrature that other tests rest on', () => {
  it('is exact on a polynomial of order nine', () => {
    expect(integrate((x) => 10 * x ** 9 - 3 * x ** 2, -1, 2)).toBeCloseTo(2 ** 10 - 1 - (8 + 1), 9);
  });

  it('meets the integral of a sine over half a turn', () => {
    expect(integrate(Math.sin, 0, Math.PI, 4)).toBeCloseTo(2, 12);
  });

  it('changes sign with its direction', () => {
    expect(integrate(Math.exp, 1, 0, 2)).toBeCloseTo(1 - Math.E, 12);
  });
});

describe('the central difference that other tests rest on', () => {
  it('is exact on a polynomial of order four, up to rounding', () => {
    expect(slopeOf((x) => x ** 4 - x, 0.7, 1e-2)).toBeCloseTo(4 * 0.7 ** 3 - 1, 11);
  });
});
