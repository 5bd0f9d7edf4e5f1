import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spreadLabels } from '../src/spread.ts';
import { SEED } from './sample/any-travel.ts';

const anyWishes = fc
  .array(
    fc.record({ at: fc.double({ min: 0, max: 100, noNaN: true }), height: fc.integer({ min: 1, max: 9 }) }),
    {
      minLength: 1,
      maxLength: 12,
    },
  )
  .map((wishes) => wishes.sort((a, b) => a.at - b.at));

describe('labels moved apart', () => {
  it('leaves alone what has room', () => {
    const wishes = [
      { at: 10, height: 4 },
      { at: 20, height: 4 },
    ];
    expect(spreadLabels(wishes, 0, 100)).toEqual([10, 20]);
  });

  it('shares the move evenly where two want the same place', () => {
    const wishes = [
      { at: 50, height: 4 },
      { at: 50, height: 8 },
    ];
    // their middles must be 6 apart, and the least squares are even about 50
    expect(spreadLabels(wishes, 0, 100)).toEqual([47, 53]);
  });

  it('pools violators to their mean as isotonic regression does', () => {
    // With heights of zero the task is isotonic regression itself: (1, 3, 2, 4) → (1, 2.5, 2.5, 4) by hand.
    const wishes = [1, 3, 2, 4].map((at) => ({ at, height: 0 }));
    expect(spreadLabels(wishes, 0, 10)).toEqual([1, 2.5, 2.5, 4]);
  });

  it('never overlaps, keeps the order, stays inside, and gives up only when the heights do not fit', () => {
    fc.assert(
      fc.property(anyWishes, fc.integer({ min: 20, max: 100 }), (wishes, top) => {
        const places = spreadLabels(wishes, 0, top);
        const total = wishes.reduce((sum, wish) => sum + wish.height, 0);
        expect(places === null).toBe(total > top);
        places?.forEach((place, k) => {
          const half = wishes[k]!.height / 2;
          expect(place - half).toBeGreaterThanOrEqual(
            (k === 0 ? 0 : places[k - 1]! + wishes[k - 1]!.height / 2) - 1e-9,
          );
          expect(place + half).toBeLessThanOrEqual(top + 1e-9);
        });
      }),
      { seed: SEED, numRuns: 300 },
    );
  });
});
