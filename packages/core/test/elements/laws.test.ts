import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coilEnergy, coilForce } from '../../src/elements/coil.ts';
import { droopEnergy, droopPull } from '../../src/elements/droop-limit.ts';
import { shockForce } from '../../src/elements/shock.ts';
import { stopEnergy, stopForce } from '../../src/elements/stop.ts';
import { tyreEnergy, tyreForce, tyreSwitch } from '../../src/elements/tyre.ts';
import { monotoneCubic } from '../../src/numerics/monotone-cubic.ts';
import { piecewiseLinear } from '../../src/numerics/piecewise-linear.ts';
import { integrate } from '../numerics/quadrature.ts';
import { anyShock, anyStop } from './any-table.ts';

const RUNS = { seed: 20, numRuns: 400 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const speed = between(-12, 12);
const rate = between(5e3, 8e4);

describe('a coil', () => {
  it('follows Hooke from its load at ride', () => {
    expect(coilForce(4000, 30_000, 0)).toBe(4000);
    expect(coilForce(4000, 30_000, 0.05)).toBeCloseTo(5500, 9);
    expect(coilForce(4000, 30_000, -4000 / 30_000)).toBeCloseTo(0, 9);
  });

  it('holds the work that pressing it from loose takes', () => {
    fc.assert(
      fc.property(between(500, 9000), rate, between(0, 0.2), (preload, stiffness, bump) => {
        const loose = -preload / stiffness;
        const work = integrate((x) => coilForce(preload, stiffness, x), loose, bump);
        const held = coilEnergy(stiffness, coilForce(preload, stiffness, bump));
        expect(Math.abs(held - work)).toBeLessThan(1e-12 * (1 + work));
      }),
      RUNS,
    );
  });

  it('that is loose holds nothing', () => {
    expect(coilEnergy(30_000, 0)).toBe(0);
  });
});

describe('a shock', () => {
  it('only ever takes energy out, beyond its table too', () => {
    fc.assert(
      fc.property(anyShock, speed, ({ x, y }, v) => {
        expect(shockForce(piecewiseLinear(x, y), v) * v).toBeGreaterThanOrEqual(-1e-9);
      }),
      RUNS,
    );
  });

  it('gives the force of its table at the speeds of its table', () => {
    fc.assert(
      fc.property(anyShock, ({ x, y }) => {
        const table = piecewiseLinear(x, y);
        x.forEach((v, i) => {
          expect(Math.abs(shockForce(table, v) - y[i])).toBeLessThan(1e-9);
        });
      }),
      RUNS,
    );
  });
});

const metalRate = between(1e6, 5e7);
const lossFactor = between(0, 0.6);

describe('a bump stop with metal behind it', () => {
  it('never pulls, at any crush and speed', () => {
    fc.assert(
      fc.property(
        anyStop,
        lossFactor,
        metalRate,
        between(0, 0.2),
        between(0, 0.01),
        speed,
        ({ x, y }, a, k, c, m, v) => {
          expect(stopForce(monotoneCubic(x, y), a, k, c, m, v)).toBeGreaterThanOrEqual(0);
        },
      ),
      RUNS,
    );
  });

  it('is harder than its press curve while closing, softer while opening, and so never gives energy', () => {
    fc.assert(
      fc.property(
        anyStop,
        lossFactor,
        metalRate,
        between(0, 0.2),
        between(0, 0.01),
        speed,
        ({ x, y }, a, k, c, m, v) => {
          const curve = monotoneCubic(x, y);
          const pressed = stopForce(curve, 0, k, c, m, 0);
          const loss = (stopForce(curve, a, k, c, m, v) - pressed) * v;
          expect(loss).toBeGreaterThanOrEqual(-1e-9 * pressed);
        },
      ),
      RUNS,
    );
  });

  it('holds the work that pressing it slowly takes, metal included', () => {
    fc.assert(
      fc.property(anyStop, metalRate, between(0, 1.2), between(0.3, 1), ({ x, y }, k, part, metalPart) => {
        const curve = monotoneCubic(x, y);
        const length = x[x.length - 1];
        const crush = part * length;
        const metalAt = metalPart * length;
        const force = (c: number) => stopForce(curve, 0.4, k, c, Math.max(0, c - metalAt), 0);
        // Corners of the law end a piece, so that five Gauss points are exact in each.
        const corners = [...x, metalAt, crush].filter((c) => c <= crush).sort((a, b) => a - b);
        let work = 0;
        for (let i = 1; i < corners.length; i += 1) work += integrate(force, corners[i - 1], corners[i]);
        const held = stopEnergy(curve, k, crush, Math.max(0, crush - metalAt));
        expect(Math.abs(held - work)).toBeLessThan(1e-11 * (1 + work));
      }),
      RUNS,
    );
  });

  it('loses two thirds of a·k·C³·ω in one half-sine press of a straight stop', () => {
    // ∮ F dc with F = k·c·(1 + a·v), c = C·sin ωt: the elastic part gives nothing, the rest ∫ a·k·c·v² dt in closed form.
    const [k, a, depth, omega] = [2e5, 0.2, 0.03, 40];
    const straight = monotoneCubic([0, 1], [0, k]);
    const lost = integrate(
      (t) => {
        const v = depth * omega * Math.cos(omega * t);
        return stopForce(straight, a, 0, depth * Math.sin(omega * t), 0, v) * v;
      },
      0,
      Math.PI / omega,
      20,
    );
    expect(a * depth * omega).toBeLessThan(1);
    expect(lost).toBeCloseTo((2 / 3) * a * k * depth ** 3 * omega, 9);
  });

  it('acts by its metal alone where metal stands before it', () => {
    const curve = monotoneCubic([0, 0.05], [0, 9000]);
    expect(stopForce(curve, 0.2, 2e7, 0, 0.001, 1)).toBeCloseTo(1.2 * 2e4, 9);
    expect(stopEnergy(curve, 2e7, 0, 0.001)).toBeCloseTo(10, 12);
  });

  it('lets go when it opens faster than one over its rate factor', () => {
    const curve = monotoneCubic([0, 0.05], [0, 9000]);
    expect(stopForce(curve, 0.25, 0, 0.04, 0, -4)).toBe(0);
    expect(stopForce(curve, 0.25, 0, 0.04, 0, -9)).toBe(0);
    expect(stopForce(curve, 0.25, 0, 0.04, 0, -2)).toBeCloseTo(3600, 9);
  });
});

describe('a droop limit', () => {
  it('never pushes, and never gives energy', () => {
    fc.assert(
      fc.property(between(1e5, 1e6), lossFactor, between(0, 0.05), speed, (k, a, stretch, v) => {
        const pull = droopPull(k, a, stretch, v);
        expect(pull).toBeGreaterThanOrEqual(0);
        // The force on the body is −pull, the elastic one −k·stretch: what it takes out is the difference times v.
        expect((k * stretch - pull) * v).toBeGreaterThanOrEqual(-1e-9 * k * stretch);
      }),
      RUNS,
    );
  });

  it('holds the work that stretching it slowly takes', () => {
    fc.assert(
      fc.property(between(1e5, 1e6), lossFactor, between(0, 0.05), (k, a, stretch) => {
        const work = integrate((e) => droopPull(k, a, e, 0), 0, stretch);
        expect(Math.abs(droopEnergy(k, stretch) - work)).toBeLessThan(1e-12 * (1 + work));
      }),
      RUNS,
    );
  });

  it('pulls harder while opening than while closing', () => {
    expect(droopPull(5e5, 0.2, 0.01, -1)).toBeCloseTo(6000, 9);
    expect(droopPull(5e5, 0.2, 0.01, 1)).toBeCloseTo(4000, 9);
    expect(droopPull(5e5, 0.2, 0.01, 6)).toBe(0);
  });
});

describe('a tyre', () => {
  const elastic = between(-4e4, 9e4);
  const damping = between(0, 2000);

  it('carries force exactly where both its elastic part and the sum push', () => {
    fc.assert(
      fc.property(elastic, damping, speed, (e, c, closing) => {
        const carries = tyreSwitch(e, c, closing) > 0;
        expect(carries).toBe(e > 0 && e + c * closing > 0);
        if (carries) expect(tyreForce(e, c, closing)).toBeGreaterThan(0);
      }),
      RUNS,
    );
  });

  it('never gives energy by its damping', () => {
    fc.assert(
      fc.property(elastic, damping, speed, (e, c, closing) => {
        expect((tyreForce(e, c, closing) - e) * closing).toBeGreaterThanOrEqual(
          -1e-12 * Math.abs(e * closing),
        );
      }),
      RUNS,
    );
  });

  it('holds the work that pressing it slowly takes, and nothing in the air', () => {
    fc.assert(
      fc.property(between(1e5, 4e5), between(0, 0.1), (k, pressed) => {
        const work = integrate((d) => tyreForce(k * d, 400, 0), 0, pressed);
        expect(Math.abs(tyreEnergy(k, k * pressed) - work)).toBeLessThan(1e-12 * (1 + work));
        expect(tyreEnergy(k, -k * pressed)).toBe(0);
      }),
      RUNS,
    );
  });
});
