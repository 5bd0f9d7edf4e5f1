import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CoveredShare } from '../../src/choose/covered.ts';
import { hypervolume } from '../../src/choose/hypervolume.ts';

const clouds = fc.integer({ min: 1, max: 4 }).chain((width) =>
  fc.array(fc.array(fc.integer({ min: 0, max: 5 }), { minLength: width, maxLength: width }), {
    minLength: 1,
    maxLength: 14,
  }),
);

/** On whole numbers the volume is the number of unit cells whose low corner some point is nowhere worse than. */
function cells(points: readonly (readonly number[])[], side: number): number {
  const width = points[0].length;
  let count = 0;
  for (let cell = 0; cell < side ** width; cell += 1) {
    const low = Array.from({ length: width }, (_, k) => Math.floor(cell / side ** k) % side);
    if (points.some((point) => point.every((value, k) => value <= low[k]))) count += 1;
  }
  return count;
}

describe('volume that a front covers', () => {
  test('is the number of unit cells it covers, when all values are whole', () => {
    fc.assert(
      fc.property(clouds, (points) => {
        expect(
          hypervolume(
            points,
            points[0].map(() => 5),
          ),
        ).toBe(cells(points, 5));
      }),
      { seed: 6, numRuns: 200 },
    );
  });

  test('counts nothing beyond the corner', () => {
    expect(hypervolume([[2, 0]], [1, 1])).toBe(0);
    expect(hypervolume([], [1, 1])).toBe(0);
  });

  test('by points agrees with the exact one within what so many points can tell', () => {
    const front = [
      [0.1, 0.7, 0.5],
      [0.4, 0.2, 0.6],
      [0.8, 0.6, 0.1],
    ];
    const covered = new CoveredShare([0, 0, 0], [1, 1, 1], 8192, 3);
    for (const point of front) covered.add(point);
    // Standard error of a plain sample of this size: sqrt(0.25/8192) = 0.0055; a Latin hypercube is better.
    expect(Math.abs(covered.share - hypervolume(front, [1, 1, 1]))).toBeLessThan(0.011);
  });
});
