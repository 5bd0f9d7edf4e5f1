import { describe, expect, it } from 'vitest';
import { drivingTimes } from '../../src/exposure/driving-times.ts';
import type { Figure } from '../../src/finding/figure.ts';

const acceleration = (value: number, tolerance: number | null): Figure => {
  return { dimension: 'acceleration', value, tolerance };
};
const dose = (value: number, tolerance: number | null): Figure => {
  return { dimension: 'vibrationDose', value, tolerance };
};
const HOUR = 3600;

describe('the driving time to a value of a day', () => {
  it('is eight hours at the value itself, and a quarter of that at twice as much (Directive 2002/44/EC, annex B)', () => {
    expect(drivingTimes({ rms: acceleration(0.5, 0), dose: null }, 60).toAction.byAcceleration?.value).toBe(
      8 * HOUR,
    );
    expect(drivingTimes({ rms: acceleration(1, 0), dose: null }, 60).toAction.byAcceleration?.value).toBe(
      2 * HOUR,
    );
    expect(drivingTimes({ rms: acceleration(1.15, 0), dose: null }, 60).toLimit.byAcceleration?.value).toBe(
      8 * HOUR,
    );
  });

  it('is a sixteenth by dose where the dose is twice as large: it counts the fourth power', () => {
    const [one, twice] = [9.1, 18.2].map((value) => drivingTimes({ rms: null, dose: dose(value, 0) }, 60));
    expect(one.toAction.byDose?.value).toBeCloseTo(60, 9);
    expect(twice.toAction.byDose?.value).toBeCloseTo(60 / 16, 9);
  });

  it('lies between the times of both ends of what is known', () => {
    const { toAction } = drivingTimes({ rms: acceleration(1, 0.5), dose: dose(9.1, 9.1) }, 60);
    // (0.5 ÷ 1.5)²·8 h and (0.5 ÷ 0.5)²·8 h.
    expect(toAction.byAcceleration?.ends?.low).toBeCloseTo((8 * HOUR) / 9, 6);
    expect(toAction.byAcceleration?.ends?.high).toBeCloseTo(8 * HOUR, 6);
    // The dose may be nothing at all: then there is no end to it.
    expect(toAction.byDose?.ends).toEqual({ low: 60 / 16, high: Number.POSITIVE_INFINITY });
  });

  it('has no ends where the tolerance is unknown, and is unknown where the measure is', () => {
    const { toAction, toLimit } = drivingTimes({ rms: acceleration(1, null), dose: null }, 60);
    expect(toAction.byAcceleration?.ends).toBeNull();
    expect([toAction.byDose, toLimit.byDose]).toEqual([null, null]);
  });
});
