import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type FrictionBranch,
  frictionAmplitude,
  frictionForce,
  frictionLoopEnergy,
  frictionRate,
  type Reversal,
} from '../../src/elements/stop-friction.ts';
import { integrate, slopeOf } from '../numerics/quadrature.ts';

const RUNS = { seed: 21, numRuns: 300 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const branch = fc.record({ limit: between(0.05, 900), halfTravel: between(1e-4, 0.01) });
const START: Reversal = { travel: 0, force: 0 };

/** Moves through the given turning points; the work done on the branch and where it ended. */
function press(of: FrictionBranch, turns: readonly number[]): { work: number; reversal: Reversal } {
  let reversal = START;
  let work = 0;
  for (const turn of turns) {
    work += integrate((x) => frictionForce(x, reversal, of), reversal.travel, turn, 40);
    reversal = { travel: turn, force: frictionForce(turn, reversal, of) };
  }
  return { work, reversal };
}

describe('the friction branch of a stop', () => {
  it('starts from each reversal at the same slope and never passes its limit', () => {
    fc.assert(
      fc.property(branch, between(-0.999, 0.999), between(-50, 50), (of, share, steps) => {
        const reversal = { travel: 0.01, force: share * of.limit };
        const travel = 0.01 + steps * of.halfTravel;
        expect(Math.abs(frictionForce(travel, reversal, of))).toBeLessThanOrEqual(of.limit * (1 + 1e-12));
        expect(frictionForce(0.01, reversal, of)).toBe(reversal.force);
        expect(frictionRate(0.01, reversal, of)).toBe(of.limit / of.halfTravel);
      }),
      RUNS,
    );
  });

  it('has half its limit after its half travel, pressed from rest', () => {
    expect(frictionForce(0.002, START, { limit: 300, halfTravel: 0.002 })).toBeCloseTo(150, 10);
  });

  it('at its limit turns back, and stays there when it goes on', () => {
    const of = { limit: 300, halfTravel: 0.002 };
    const atLimit = { travel: 0.03, force: 300 };
    expect(frictionForce(0.031, atLimit, of)).toBe(300);
    expect(frictionForce(0.029, atLimit, of)).toBeLessThan(300);
    expect(frictionRate(0.029, atLimit, of)).toBeGreaterThan(0);
  });

  it('has the rate that its force has', () => {
    fc.assert(
      fc.property(branch, between(-0.95, 0.95), between(0.1, 8), fc.boolean(), (of, share, far, closing) => {
        const reversal = { travel: 0, force: share * of.limit };
        const travel = (closing ? 1 : -1) * far * of.halfTravel;
        const slope = slopeOf((x) => frictionForce(x, reversal, of), travel, 1e-3 * of.halfTravel);
        const unit = of.limit / of.halfTravel;
        expect(Math.abs(frictionRate(travel, reversal, of) - slope) / unit).toBeLessThan(1e-8);
      }),
      RUNS,
    );
  });

  it('settles into the loop of the closed form, of its force and its energy', () => {
    fc.assert(
      fc.property(branch, between(0.3, 6), (of, depth) => {
        const amplitude = depth * of.halfTravel;
        const swings = Array.from({ length: 401 }, (_, k) => (k % 2 === 0 ? amplitude : -amplitude));
        const { reversal } = press(of, swings);
        expect(reversal.force / frictionAmplitude(amplitude, of)).toBeCloseTo(1, 6);
        const before = press(of, swings.slice(0, -2)).work;
        const loop = press(of, swings).work - before;
        expect(loop / frictionLoopEnergy(amplitude, of)).toBeCloseTo(1, 6);
      }),
      { seed: 22, numRuns: 20 },
    );
  });

  it('loses in every single press and release', () => {
    fc.assert(
      fc.property(branch, between(0.01, 30), between(0, 1), (of, depth, back) => {
        const top = depth * of.halfTravel;
        expect(press(of, [top, back * top]).work).toBeGreaterThanOrEqual(0);
      }),
      RUNS,
    );
  });

  it('gives back at most 4·ln 2 − 5/2 of limit·halfTravel when it was pressed in many small strokes', () => {
    const of = { limit: 1, halfTravel: 1 };
    const turns: number[] = [];
    let at = START;
    while (at.force < 0.99) {
      const room = 1 - at.force;
      for (const step of [0.01 * room, -0.005 * room]) {
        const turn = at.travel + step;
        turns.push(turn);
        at = { travel: turn, force: frictionForce(turn, at, of) };
      }
    }
    const { travel } = at;
    const { work, reversal } = press(of, turns);
    const back = travel - reversal.force * (1 + reversal.force);
    const given = -press(of, [...turns, back]).work;
    expect(work).toBeGreaterThan(0.4);
    expect(press(of, [...turns, back]).reversal.force).toBeCloseTo(0, 9);
    expect(given).toBeLessThan(4 * Math.LN2 - 2.5);
    expect(given).toBeGreaterThan(0.2);
  });
});
