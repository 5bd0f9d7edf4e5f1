import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { antiRollEnergy, antiRollMoment, barRateAtAxle } from '../../src/elements/anti-roll-bar.ts';
import { droopPull, strapRate } from '../../src/elements/droop-limit.ts';
import { asSolidAxle } from '../../src/elements/independent-axle.ts';
import { integrate } from '../numerics/quadrature.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('an anti-roll bar', () => {
  it('holds the work that twisting it takes and stands still when both sides move alike', () => {
    expect(antiRollEnergy(2e4, 0.1)).toBeCloseTo(
      integrate((tilt) => antiRollMoment(2e4, tilt), 0, 0.1),
      10,
    );
    expect(antiRollMoment(2e4, 0)).toBe(0);
  });

  it('at its links does the same work as at the axle', () => {
    fc.assert(
      fc.property(
        between(1e3, 1e5),
        between(0.4, 1.2),
        between(0.3, 1),
        between(-0.2, 0.2),
        (k, b, r, tilt) => {
          const apart = r * b * tilt;
          const work = (k * apart ** 2) / 2;
          const rate = barRateAtAxle({ linkRate: k, linkSpread: b, linkRatio: r });
          expect(antiRollEnergy(rate, tilt)).toBeCloseTo(work, 9);
        },
      ),
      { seed: 29, numRuns: 100 },
    );
  });
});

describe('a limit strap', () => {
  it('pulls its full load at its full stretch', () => {
    const rate = strapRate(13e3, 0.06, 0.45);
    expect(droopPull(rate, 0, 0.06 * 0.45, 0)).toBeCloseTo(13e3, 9);
  });
});

describe('an independent pair of wheels', () => {
  it('moves as a solid axle of its mass with roll inertia m·w²: the same energy, the same travel at every element', () => {
    fc.assert(
      fc.property(
        between(80, 400),
        between(1.2, 1.9),
        between(-3, 3),
        between(-3, 3),
        (mass, track, v1, v2) => {
          const { rollInertia, spread } = asSolidAxle({ mass, track });
          const heave = (v1 + v2) / 2;
          const roll = (v1 - v2) / track;
          const wheels = ((mass / 2) * (v1 ** 2 + v2 ** 2)) / 2;
          expect((mass * heave ** 2 + rollInertia * roll ** 2) / 2).toBeCloseTo(wheels, 9);
          expect(heave + (spread / 2) * roll).toBeCloseTo(v1, 12);
          expect(heave - (spread / 2) * roll).toBeCloseTo(v2, 12);
        },
      ),
      { seed: 30, numRuns: 200 },
    );
  });
});
