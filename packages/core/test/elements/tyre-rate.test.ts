import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contactLength } from '../../src/elements/tyre-contact.ts';
import {
  rateAtPressure,
  rateBySize,
  rateFromPress,
  rateOnLine,
  USUAL_TYRE,
} from '../../src/elements/tyre-rate.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const size = fc.record({ width: between(0.2, 0.38), aspect: between(0.45, 0.9), rim: between(0.35, 0.52) });

describe('the rate of a tyre', () => {
  it('by size lies in the bands of 33 to 37 in tyres at the pressures of the trade', () => {
    // 80 to 160 N/mm at 10 to 15 psi, 170 to 300 N/mm at 24 to 30 psi (common practice, no source), to the 30 % it claims.
    const psi = 6894.757;
    for (const each of [
      { width: 0.315, aspect: 0.75, rim: 0.4064 },
      { width: 0.315, aspect: 0.7, rim: 0.4318 },
      { width: 0.3175, aspect: 0.72, rim: 0.4318 },
    ]) {
      const line = rateBySize(each);
      expect(rateOnLine(line, 12.5 * psi) / 120e3).toBeGreaterThan(0.7);
      expect(rateOnLine(line, 12.5 * psi) / 120e3).toBeLessThan(1.3);
      expect(rateOnLine(line, 27 * psi) / 235e3).toBeGreaterThan(0.7);
      expect(rateOnLine(line, 27 * psi) / 235e3).toBeLessThan(1.3);
    }
  });

  it('grows with inflation, and with nothing in the tyre the carcass still carries', () => {
    fc.assert(
      fc.property(size, between(0, 3e5), (each, pressure) => {
        const line = rateBySize(each);
        expect(rateOnLine(line, pressure + 1e4)).toBeGreaterThan(rateOnLine(line, pressure));
        expect(rateOnLine(line, 0)).toBe(line.carcass);
      }),
      { seed: 27, numRuns: 100 },
    );
  });

  it('taken to another pressure and back is the rate again, and falls less than the pressure does', () => {
    fc.assert(
      fc.property(between(1e5, 4e5), between(4e4, 3e5), between(4e4, 3e5), (rate, from, to) => {
        const there = rateAtPressure(rate, from, to, USUAL_TYRE);
        expect(rateAtPressure(there, to, from, USUAL_TYRE) / rate).toBeCloseTo(1, 12);
        if (to < from) expect(there / rate).toBeGreaterThanOrEqual(to / from);
      }),
      { seed: 28, numRuns: 200 },
    );
  });

  it('out of a straight press is its slope, at any load', () => {
    expect(rateFromPress([0, 0.01, 0.02, 0.03], [0, 2000, 4000, 6000], 4321)).toBeCloseTo(2e5, 6);
    expect(rateFromPress([0, 0.01, 0.02, 0.03], [0, 2000, 4000, 6000], 9000)).toBeCloseTo(2e5, 6);
  });

  it('out of a press that stiffens is more at more load', () => {
    const press = [
      [0, 0.01, 0.02, 0.03, 0.04],
      [0, 1500, 3500, 6000, 9000],
    ] as const;
    expect(rateFromPress(...press, 7000)).toBeGreaterThan(rateFromPress(...press, 2500));
  });
});

describe('the contact of a tyre', () => {
  it('is the chord of its circle: five, four and three', () => {
    expect(contactLength(0.4, 0.1)).toBeCloseTo(0.6, 12);
    expect(contactLength(0.4, 0)).toBe(0);
  });
});
