import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  maxwellEnergy,
  maxwellFlow,
  maxwellForce,
  maxwellLoopEnergy,
  maxwellLoss,
  maxwellModuli,
  restingCrush,
} from '../../src/elements/maxwell.ts';
import { cubicValue, monotoneCubic } from '../../src/numerics/monotone-cubic.ts';
import { integrate } from '../numerics/quadrature.ts';
import { anyStop } from './any-table.ts';

const RUNS = { seed: 23, numRuns: 300 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const branch = fc.record({ rate: between(1e3, 1e6), damping: between(50, 2e4) });

describe('the viscous branch of a stop', () => {
  it('accounts for all power: what goes in is held or lost', () => {
    fc.assert(
      fc.property(branch, between(-0.05, 0.05), between(-0.05, 0.05), between(-5, 5), (of, x, u, v) => {
        const flow = maxwellFlow(of, x, u);
        const held = of.rate * (x - u) * (v - flow);
        const put = maxwellForce(of, x, u) * v;
        const lost = maxwellLoss(of, x, u);
        expect(Math.abs(put - held - lost)).toBeLessThan(1e-12 * (1 + Math.abs(put) + lost));
        expect(lost).toBeGreaterThanOrEqual(0);
        expect(maxwellEnergy(of, x, u)).toBeGreaterThanOrEqual(0);
      }),
      RUNS,
    );
  });

  it('held still, lets its force go by the time damping ÷ rate', () => {
    const of = { rate: 2e5, damping: 4e3 };
    // u′ = (x − u)/τ, τ = 0.02 s: the force falls as exp(−t/τ). Stepped by the midpoint rule.
    let inner = 0;
    const step = 1e-5;
    for (let k = 0; k < 2000; k += 1)
      inner += step * maxwellFlow(of, 0.01, inner + (step / 2) * maxwellFlow(of, 0.01, inner));
    expect(maxwellForce(of, 0.01, inner)).toBeCloseTo(2000 / Math.E, 3);
  });

  it('loses over a steady sine what its closed form says', () => {
    fc.assert(
      fc.property(branch, between(0.001, 0.03), between(3, 300), (of, amplitude, angular) => {
        const { storage, loss } = maxwellModuli(of, angular);
        // The steady answer to x = X·sin ωt is F = X·(k′ sin ωt + k″ cos ωt); its own state satisfies the law.
        const force = (t: number) =>
          amplitude * (storage * Math.sin(angular * t) + loss * Math.cos(angular * t));
        const place = (t: number) => amplitude * Math.sin(angular * t);
        for (const t of [0.1 / angular, 1.7 / angular, 4 / angular]) {
          const inner = place(t) - force(t) / of.rate;
          const speed =
            amplitude *
            angular *
            (Math.cos(angular * t) -
              (storage * Math.cos(angular * t) - loss * Math.sin(angular * t)) / of.rate);
          expect(Math.abs(maxwellFlow(of, place(t), inner) - speed) / (amplitude * angular)).toBeLessThan(
            1e-9,
          );
        }
        const work = integrate(
          (t) => force(t) * amplitude * angular * Math.cos(angular * t),
          0,
          (2 * Math.PI) / angular,
          12,
        );
        expect(work / maxwellLoopEnergy(of, amplitude, angular)).toBeCloseTo(1, 8);
      }),
      RUNS,
    );
  });
});

describe('a stop that let go before it had recovered', () => {
  it('stands where curve and held-back spring balance, short of the inner place', () => {
    fc.assert(
      fc.property(anyStop, branch, between(0.5, 1.5), between(1e-5, 0.1), ({ x, y }, of, gain, inner) => {
        const curve = monotoneCubic(x, y);
        const crush = restingCrush(curve, gain, of, inner);
        expect(crush).toBeGreaterThanOrEqual(0);
        expect(crush).toBeLessThanOrEqual(inner);
        const pull = of.rate * (inner - crush);
        const push = gain * cubicValue(curve, crush);
        expect(Math.abs(push - pull)).toBeLessThan(1e-9 * (push + of.rate * inner));
      }),
      RUNS,
    );
  });

  it('stands at full length when it has recovered', () => {
    expect(restingCrush(monotoneCubic([0, 1], [0, 1e5]), 1, { rate: 1e5, damping: 1e3 }, 0)).toBe(0);
    expect(restingCrush(monotoneCubic([0, 1], [0, 1e5]), 1, { rate: 1e5, damping: 1e3 }, 0.02)).toBeCloseTo(
      0.01,
      14,
    );
  });
});
