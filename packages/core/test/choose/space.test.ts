import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { partOf, sliceOf } from '../../src/choose/slice.ts';
import { candidateAt, candidateCount, indexOf, singleSteps } from '../../src/choose/space.ts';
import { axes } from './known-fronts.ts';

describe('candidates', () => {
  test('each has a number, and each number a candidate', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 6 }), (options) => {
        const space = { axes: axes(options), home: options.map(() => 0) };
        const seen = new Set<string>();
        for (let index = 0; index < Math.min(candidateCount(space), 200); index += 1) {
          const candidate = candidateAt(space, index);
          expect(indexOf(space, candidate)).toBe(index);
          candidate.forEach((option, axis) => {
            expect(option).toBeGreaterThanOrEqual(0);
            expect(option).toBeLessThan(options[axis]);
          });
          seen.add(candidate.join());
        }
        expect(seen.size).toBe(Math.min(candidateCount(space), 200));
      }),
      { seed: 6, numRuns: 50 },
    );
  });

  test('single steps change one axis, or leave one unchanged', () => {
    expect(singleSteps([0, 2, 1], [3, 2, 0])).toEqual([
      { axis: 0, alone: [3, 2, 1], allButThis: [0, 2, 0] },
      { axis: 2, alone: [0, 2, 0], allButThis: [3, 2, 1] },
    ]);
  });

  test('parts hold each candidate once, and differ by one in size', () => {
    const slices = Array.from({ length: 7 }, (_, part) => sliceOf(1000, part, 7, 3));
    expect(slices.flat().sort((a, b) => a - b)).toEqual(Array.from({ length: 1000 }, (_, i) => i));
    for (const slice of slices) expect(slice.length).toBeOneOf([142, 143]);
  });

  test('far beyond 2^32 the parts are still drawn evenly', () => {
    const counts = new Array<number>(8).fill(0);
    for (let i = 0; i < 8000; i += 1) counts[partOf(2 ** 50 + i * 4096, 8, 5)] += 1;
    // Five standard deviations of a fair draw: 1000 ± 5·sqrt(8000·(1/8)·(7/8)).
    for (const count of counts) expect(Math.abs(count - 1000)).toBeLessThan(148);
  });
});
