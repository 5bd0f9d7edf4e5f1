import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ATMOSPHERE,
  type GasChamber,
  gasEnergy,
  gasForce,
  gasRate,
  gasStopCurve,
  NOSE_SHARE,
  oilForce,
  pressureAt,
  rodArea,
} from '../../src/elements/gas-chamber.ts';
import { shockChamber, shockGasAt } from '../../src/elements/shock-gas.ts';
import { cubicValue, monotoneCubic } from '../../src/numerics/monotone-cubic.ts';
import { integrate, slopeOf } from '../numerics/quadrature.ts';

const RUNS = { seed: 25, numRuns: 200 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const chamber: fc.Arbitrary<GasChamber> = fc.record({
  area: between(2e-4, 3e-3),
  pressure: between(2e5, 2e6),
  column: between(0.06, 0.3),
  index: fc.oneof(fc.constant(1), between(1, 1.4)),
});

describe('gas behind a rod', () => {
  it('pushes with its charge over the rod before it moves', () => {
    fc.assert(
      fc.property(chamber, (gas) => {
        expect(gasForce(gas, 0) / (gas.area * gas.pressure)).toBeCloseTo(1, 12);
      }),
      RUNS,
    );
  });

  it('has the rate that its force has, and holds the work that pressing it takes', () => {
    fc.assert(
      fc.property(chamber, between(0, 0.9), (gas, share) => {
        const stroke = share * gas.column;
        const slope = slopeOf((x) => gasForce(gas, x), stroke, 1e-4 * (gas.column - stroke));
        expect(gasRate(gas, stroke) / slope).toBeCloseTo(1, 8);
        const work = integrate((x) => gasForce(gas, x), 0, stroke, 60);
        expect(Math.abs(gasEnergy(gas, stroke) - work)).toBeLessThan(1e-8 * (1 + work));
      }),
      RUNS,
    );
  });

  it('holds the same work by an index of one as by one next to it', () => {
    const gas = { area: 1e-3, pressure: 1e6, column: 0.1, index: 1 };
    expect(gasEnergy({ ...gas, index: 1 + 1e-9 }, 0.07) / gasEnergy(gas, 0.07)).toBeCloseTo(1, 8);
  });

  it('as a curve keeps to its law within a thousandth beyond the nose, and rises from zero', () => {
    fc.assert(
      fc.property(chamber, between(0.3, 0.92), (gas, share) => {
        const stroke = share * gas.column;
        const { crush, force } = gasStopCurve(gas, stroke);
        expect([crush[0], force[0]]).toEqual([0, 0]);
        expect(crush.at(-1)).toBe(stroke);
        crush.slice(1).forEach((c, i) => {
          expect(c).toBeGreaterThan(crush[i]);
          expect(force[i + 1]).toBeGreaterThan(force[i]);
        });
        const curve = monotoneCubic(crush, force);
        for (let k = 0; k <= 200; k += 1) {
          const x = stroke * (NOSE_SHARE + ((1 - NOSE_SHARE) * k) / 200);
          expect(Math.abs(cubicValue(curve, x) / gasForce(gas, x) - 1)).toBeLessThan(1e-3);
        }
      }),
      RUNS,
    );
  });

  it('warmed at the same volume gains as absolute temperature does', () => {
    expect((pressureAt(1e6, 20, 100) + ATMOSPHERE) / (1e6 + ATMOSPHERE)).toBeCloseTo(1.2729, 4);
    expect(pressureAt(1e6, 35, 35)).toBeCloseTo(1e6, 6);
  });

  it('with oil resists closing by the square of its speed and nothing else', () => {
    expect(oilForce(4000, 1.5)).toBe(9000);
    expect(oilForce(4000, -1.5)).toBe(0);
    fc.assert(
      fc.property(between(0, 1e5), between(-9, 9), (factor, speed) => {
        expect(oilForce(factor, speed) * speed).toBeGreaterThanOrEqual(0);
      }),
      RUNS,
    );
  });
});

describe('gas in a shock', () => {
  const readings = { pressure: 1.4e6, rodDiameter: 0.022, rise: 0.35, stroke: 0.25 };

  it('gains over the whole stroke what its rise says', () => {
    const gas = shockChamber(readings);
    expect(gasForce(gas, readings.stroke) / gasForce(gas, 0)).toBeCloseTo(1.35, 12);
    expect(gas.column).toBeGreaterThan(readings.stroke);
    expect(gas.area).toBe(rodArea(0.022));
  });

  it('is more where the rig sits than fully open, and small beside a coil', () => {
    const at = shockGasAt(readings, 0.12);
    expect(at.force).toBeGreaterThan(readings.pressure * rodArea(0.022));
    expect(at.rate).toBeGreaterThan(300);
    expect(at.rate).toBeLessThan(1500);
  });
});
