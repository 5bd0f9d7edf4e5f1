import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { doubleJointHalves } from '../../src/linkage/double-joint.ts';
import {
  angleOfAcceleration,
  equivalentAngle,
  peakAcceleration,
  speedRatio,
  unevenness,
} from '../../src/linkage/universal-joint.ts';

const degrees = (value: number) => (value * Math.PI) / 180;
const bend = fc.double({ min: 0, max: 1.2, noNaN: true });
const turn = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
const run = { seed: 7, numRuns: 500 };

describe('one universal joint', () => {
  test('a straight joint runs evenly', () => {
    expect(speedRatio(0, 0.7)).toBe(1);
    expect(unevenness(0)).toBe(0);
    expect(peakAcceleration(0)).toBe(0);
    expect(equivalentAngle([{ angle: 0, turn: 0 }])).toBe(0);
  });

  test('at 30° the output runs between cos 30° and its inverse', () => {
    // Printed on two public pages on the joint: 0.866025 and 1.154701.
    expect(speedRatio(degrees(30), Math.PI / 2)).toBeCloseTo(0.866025, 6);
    expect(speedRatio(degrees(30), 0)).toBeCloseTo(1.154701, 6);
    expect(unevenness(degrees(30))).toBeCloseTo(1.154701 - 0.866025, 5);
  });

  test('its mean speed is that of the input, whatever the bend', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.9, noNaN: true }), (angle) => {
        const count = 720;
        let sum = 0;
        for (let k = 0; k < count; k += 1) sum += speedRatio(angle, (2 * Math.PI * k) / count);
        expect(sum / count).toBeCloseTo(1, 10);
      }),
      run,
    );
  });

  test('no moment of a turn is faster than its peak acceleration says, and one comes near', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1.2, noNaN: true }), (angle) => {
        let largest = 0;
        for (let k = 0; k < 4000; k += 1) {
          const at = (Math.PI * k) / 4000;
          const rise = (speedRatio(angle, at + 1e-6) - speedRatio(angle, at - 1e-6)) / 2e-6;
          largest = Math.max(largest, Math.abs(rise));
        }
        expect(largest).toBeLessThanOrEqual(peakAcceleration(angle) * (1 + 1e-6));
        expect(largest).toBeGreaterThan(peakAcceleration(angle) * (1 - 1e-4));
      }),
      { seed: 7, numRuns: 30 },
    );
  });

  test('the angle of a bound gives back the bound', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1, noNaN: true }), (bound) => {
        expect(peakAcceleration(angleOfAcceleration(bound)) / bound).toBeCloseTo(1, 9);
      }),
      run,
    );
  });
});

describe('joints in a row', () => {
  test('two equal bends in one plane, yokes in line, run evenly: parallel or broken-back', () => {
    fc.assert(
      fc.property(bend, (angle) => {
        for (const plane of [0, Math.PI, -Math.PI])
          expect(
            equivalentAngle([
              { angle, turn: 0 },
              { angle, turn: plane },
            ]),
          ).toBeLessThan(1e-7);
      }),
      run,
    );
  });

  test('two equal bends with yokes a quarter turn off add up: cos β = cos² of one', () => {
    fc.assert(
      fc.property(bend, (angle) => {
        const both = equivalentAngle([
          { angle, turn: 0 },
          { angle, turn: Math.PI / 2 },
        ]);
        expect(Math.cos(both)).toBeCloseTo(Math.cos(angle) ** 2, 12);
      }),
      run,
    );
  });

  test('unequal bends in one plane leave cos β = the quotient of their cosines', () => {
    fc.assert(
      fc.property(bend, bend, (one, other) => {
        const left = equivalentAngle([
          { angle: one, turn: 0 },
          { angle: other, turn: Math.PI },
        ]);
        const [more, less] = [Math.max(one, other), Math.min(one, other)];
        expect(Math.cos(left)).toBeCloseTo(Math.cos(more) / Math.cos(less), 12);
      }),
      run,
    );
  });

  test('small bends add as squares with twice their turn', () => {
    fc.assert(
      fc.property(turn, turn, (second, third) => {
        const [a, b, c] = [0.003, 0.004, 0.002];
        // Signs go in turn; the turn of a joint counts from the one before.
        const sum = [0, 1].map((part) => {
          const of = part === 0 ? Math.cos : Math.sin;
          return a * a * of(0) - b * b * of(2 * second) + c * c * of(2 * (second + third));
        });
        const all = equivalentAngle([
          { angle: a, turn: 0 },
          { angle: b, turn: second },
          { angle: c, turn: third },
        ]);
        expect(Math.abs(all ** 2 - Math.hypot(...sum))).toBeLessThan(1e-9);
      }),
      run,
    );
  });

  test('read from the other end, a row runs as unevenly', () => {
    fc.assert(
      fc.property(bend, bend, bend, turn, turn, (a, b, c, ab, bc) => {
        const there = equivalentAngle([
          { angle: a, turn: 0 },
          { angle: b, turn: ab },
          { angle: c, turn: bc },
        ]);
        const back = equivalentAngle([
          { angle: c, turn: 0 },
          { angle: b, turn: bc },
          { angle: a, turn: ab },
        ]);
        expect(there).toBeCloseTo(back, 7);
      }),
      run,
    );
  });

  test('a double joint shares its bend whole, evenly at the angle that it is made for', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.7, noNaN: true }), (angle) => {
        const [one, other] = doubleJointHalves(angle);
        expect(one + other).toBeCloseTo(angle, 12);
        // Half way: the halves differ by the third order only, β³/8 and a little more.
        expect(Math.abs(one - other)).toBeLessThan(angle ** 3 / 7 + 1e-12);
        const [first, second] = doubleJointHalves(angle, angle);
        expect(first).toBeCloseTo(second, 12);
      }),
      run,
    );
  });
});
