import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dampingOfPush,
  dampingRatioTable,
  handPushTable,
  measuredTable,
  SEAL_SPEED,
  withSealFriction,
} from '../../src/elements/shock-table.ts';
import { linearValue, piecewiseLinear } from '../../src/numerics/piecewise-linear.ts';
import { anyShock } from './any-table.ts';

const RUNS = { seed: 26, numRuns: 300 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('a bench curve', () => {
  it('rests on its readings to its last rows, and gets its row at rest', () => {
    const table = measuredTable([-1, -0.2, 0.3, 2], [-900, -300, 150, 500]);
    expect(table.speed).toEqual([-1, -0.2, 0, 0.3, 2]);
    expect(table.force).toEqual([-900, -300, 0, 150, 500]);
    expect(table.knownTo).toEqual({ compression: 2, rebound: 1 });
  });
});

describe('a push by hand', () => {
  it('is an estimate through its reading, known to its own speed and no further', () => {
    fc.assert(
      fc.property(between(0.02, 0.5), between(20, 800), between(20, 800), (speed, compression, rebound) => {
        const table = handPushTable(speed, { compression, rebound });
        const curve = piecewiseLinear(table.speed, table.force);
        expect(linearValue(curve, speed)).toBeCloseTo(compression, 9);
        expect(linearValue(curve, -speed)).toBeCloseTo(-rebound, 9);
        expect(table.knownTo).toEqual({ compression: speed, rebound: speed });
        expect(table.speed.at(-1)).toBeGreaterThan(speed);
        table.speed.slice(1).forEach((v, i) => {
          expect(v).toBeGreaterThan(table.speed[i]);
          expect(table.force[i + 1]).toBeGreaterThanOrEqual(table.force[i]);
        });
        expect(linearValue(curve, 0)).toBe(0);
      }),
      RUNS,
    );
  });

  it('taken one way only says nothing about the other', () => {
    const { knownTo, force } = handPushTable(0.1, { compression: 200, rebound: null });
    expect(knownTo).toEqual({ compression: 0.1, rebound: 0 });
    expect(Math.min(...force)).toBeLessThan(0);
  });

  it('carries gas and seals on the scale: pushing adds the gas, pulling is helped by it', () => {
    expect(dampingOfPush({ speed: 0.1, push: 900, pull: 150 }, 500, 40)).toEqual({
      compression: 360,
      rebound: 610,
    });
    expect(dampingOfPush({ speed: 0.1, push: 900, pull: null }, 500, 40).rebound).toBeNull();
  });
});

describe('shares of critical damping', () => {
  it('are known to no speed at all', () => {
    const table = dampingRatioTable(
      { compression: 0.25, rebound: 0.5 },
      { sprungMass: 370, rateAtAxle: 26e3, shockRatio: 1 },
    );
    expect(table.knownTo).toEqual({ compression: 0, rebound: 0 });
  });
});

describe('seal friction', () => {
  it('is added in full beyond its turning speed and in part within, and stays zero at rest', () => {
    fc.assert(
      fc.property(anyShock, between(5, 90), between(-4, 4), ({ x, y }, friction, v) => {
        const bare = measuredTable(x, y);
        const table = withSealFriction(bare, friction);
        const before = linearValue(piecewiseLinear(bare.speed, bare.force), v);
        const after = linearValue(piecewiseLinear(table.speed, table.force), v);
        const step = friction * Math.max(-1, Math.min(1, v / SEAL_SPEED));
        expect(after - before).toBeCloseTo(step, 6);
        expect(after * v).toBeGreaterThanOrEqual(-1e-9);
        expect(linearValue(piecewiseLinear(table.speed, table.force), 0)).toBeCloseTo(0, 12);
        expect(table.knownTo).toEqual(bare.knownTo);
      }),
      RUNS,
    );
  });

  it('of nothing changes nothing', () => {
    const table = measuredTable([-1, 0, 1], [-5, 0, 5]);
    expect(withSealFriction(table, 0)).toBe(table);
  });
});
