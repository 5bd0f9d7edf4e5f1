import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { accelerationFrom, seatAcceleration } from '../../src/exposure/seat.ts';
import { sampled } from './signals.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('the seat', () => {
  const heave = Float64Array.of(1, 2, 3);
  const pitch = Float64Array.of(10, 0, -10);
  const roll = Float64Array.of(0, 5, 0);

  it('ahead of the centre goes down when the nose does, and up with its own side', () => {
    expect([...seatAcceleration({ heave, pitch, roll }, { ahead: 0.3, left: 0.4 })]).toEqual([-2, 4, 6]);
  });

  it('at the centre moves as the body does', () => {
    expect([...seatAcceleration({ heave, pitch }, { ahead: 0 })]).toEqual([1, 2, 3]);
  });

  it('is refused histories of different length', () => {
    expect(() => seatAcceleration({ heave, pitch: pitch.subarray(1) }, { ahead: 1 })).toThrow();
    expect(() => seatAcceleration({ heave, pitch, roll: roll.subarray(1) }, { ahead: 1 })).toThrow();
  });
});

describe('acceleration from positions', () => {
  it('is exact for a curve of fourth order, at both ends too', () => {
    fc.assert(
      fc.property(fc.array(between(-1, 1), { minLength: 5, maxLength: 5 }), ([c0, c1, c2, c3, c4]) => {
        const record = sampled(20, 1, (t) => c0 + t * (c1 + t * (c2 + t * (c3 + t * c4))));
        accelerationFrom(record, 20).forEach((value, n) => {
          const t = n / 20;
          expect(Math.abs(value - (2 * c2 + 6 * c3 * t + 12 * c4 * t * t))).toBeLessThan(1e-10);
        });
      }),
      { seed: 33, numRuns: 60 },
    );
  });

  it('is of fourth order inside, and within 1 % for a sine up to a fifteenth of the rate', () => {
    const error = (rate: number, frequency: number) => {
      const w = 2 * Math.PI * frequency;
      const ours = accelerationFrom(
        sampled(rate, 2, (t) => Math.sin(w * t)),
        rate,
      );
      return Math.max(
        ...ours.subarray(2, -2).map((value, n) => Math.abs(value / (w * w) + Math.sin((w * (n + 2)) / rate))),
      );
    };
    expect(Math.log2(error(200, 5) / error(400, 5))).toBeCloseTo(4, 1);
    expect(error(300, 20)).toBeLessThan(0.01);
  });

  it('is refused fewer than five positions', () => {
    expect(() => accelerationFrom(new Float64Array(4), 100)).toThrow();
  });
});
