import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frictionForce } from '../../src/elements/stop-friction.ts';
import { HIT_SPEED, MOST_HYSTERESIS, stopLoss } from '../../src/elements/stop-loss.ts';
import { cubicValue, monotoneCubic } from '../../src/numerics/monotone-cubic.ts';
import { integrate } from '../numerics/quadrature.ts';
import { anyStop } from './any-table.ts';

const RUNS = { seed: 24, numRuns: 60 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const START = { travel: 0, force: 0 };

describe('a stop with a press loop', () => {
  it('pressed slowly is the press curve again, and gives back what the loop says', () => {
    fc.assert(
      fc.property(anyStop, between(0.02, MOST_HYSTERESIS), between(0.5, 1), ({ x, y }, hysteresis, part) => {
        const usableCrush = part * x[x.length - 1];
        const { crush, force, friction } = stopLoss(x, y, { usableCrush, hysteresis, dynamicFactor: null });
        if (friction === null) throw new Error('a loop was given');
        const elastic = monotoneCubic(crush, force);
        x.forEach((c, i) => {
          const pressed = cubicValue(elastic, c) * (1 + frictionForce(c, START, friction));
          expect(Math.abs(pressed - y[i])).toBeLessThan(1e-9 * (1 + y[i]));
        });
        const corners = [...x.filter((c) => c < usableCrush), usableCrush];
        const over = (f: (c: number) => number) =>
          corners.reduce((sum, c, i) => (i === 0 ? 0 : sum + integrate(f, corners[i - 1], c, 60)), 0);
        const top = { travel: usableCrush, force: frictionForce(usableCrush, START, friction) };
        const put = over((c) => cubicValue(elastic, c) * (1 + frictionForce(c, START, friction)));
        const back = over((c) => cubicValue(elastic, c) * (1 + frictionForce(c, top, friction)));
        expect(1 - back / put).toBeCloseTo(hysteresis, 2);
        expect(friction.limit).toBeLessThan(1);
        for (const c of corners) expect(1 + frictionForce(c, top, friction)).toBeGreaterThan(0);
      }),
      RUNS,
    );
  });

  it('with a fine table loses exactly the share asked for', () => {
    const crush = Array.from({ length: 81 }, (_, i) => i * 0.0005);
    const force = crush.map((c) => 9000 * (c / 0.04) ** 2.2);
    for (const hysteresis of [0.15, 0.3, 0.4]) {
      const loss = stopLoss(crush, force, { usableCrush: 0.04, hysteresis, dynamicFactor: null });
      const friction = loss.friction!;
      const elastic = monotoneCubic(loss.crush, loss.force);
      const top = { travel: 0.04, force: frictionForce(0.04, START, friction) };
      const work = (from: { travel: number; force: number }) =>
        integrate((c) => cubicValue(elastic, c) * (1 + frictionForce(c, from, friction)), 0, 0.04, 400);
      expect(1 - work(top) / work(START)).toBeCloseTo(hysteresis, 4);
    }
  });

  it('with a turn that takes no travel follows 2φ ÷ (1 + φ)', () => {
    // A flat loop: closing 1 + φ, opening 1 − φ, so that the share lost is 2φ/(1 + φ); the turn only takes from it.
    const { friction } = stopLoss([0, 0.1], [0, 1e4], {
      usableCrush: 0.1,
      hysteresis: 0.3,
      dynamicFactor: null,
    });
    const flat = 0.3 / (2 - 0.3);
    expect(friction!.limit).toBeGreaterThan(flat);
    expect(friction!.limit).toBeLessThan(1.5 * flat);
  });

  it('keeps its elastic part rising on a plateau', () => {
    const x = [0, 0.01, 0.02, 0.03];
    const y = [0, 1000, 1000.5, 1001];
    const { force } = stopLoss(x, y, { usableCrush: 0.03, hysteresis: MOST_HYSTERESIS, dynamicFactor: null });
    force.slice(1).forEach((f, i) => {
      expect(f).toBeGreaterThan(force[i]);
    });
  });

  it('without a loop and a factor is the press curve alone', () => {
    const x = [0, 0.03];
    const y = [0, 9000];
    expect(stopLoss(x, y, { usableCrush: 0.03, hysteresis: null, dynamicFactor: null })).toEqual({
      crush: x,
      force: y,
      friction: null,
      maxwell: null,
    });
  });
});

describe('a stop that is harder when hit', () => {
  it('takes so much more work at one metre a second as its factor says', () => {
    fc.assert(
      fc.property(anyStop, between(1.05, 2.5), ({ x, y }, dynamicFactor) => {
        const usableCrush = x[x.length - 1];
        const { maxwell } = stopLoss(x, y, { usableCrush, hysteresis: null, dynamicFactor });
        const { rate, damping } = maxwell!;
        // Closing at a constant speed from rest, the branch gives c·v·(1 − exp(−k·x ÷ (c·v))).
        const viscous = damping * HIT_SPEED;
        const extra = integrate((c) => viscous * -Math.expm1((-rate * c) / viscous), 0, usableCrush, 20);
        const curve = monotoneCubic(x, y);
        const slow = x.reduce(
          (sum, c, i) => (i === 0 ? 0 : sum + integrate((at) => cubicValue(curve, at), x[i - 1], c)),
          0,
        );
        expect(extra / slow).toBeCloseTo(dynamicFactor - 1, 9);
      }),
      RUNS,
    );
  });
});
