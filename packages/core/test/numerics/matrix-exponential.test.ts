import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { matrixExponential } from '../../src/numerics/matrix-exponential.ts';

describe('the exponential of a matrix', () => {
  it('of a turn is the turned frame, however far', () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 40, noNaN: true }), (angle) => {
        const [[a, b], [c, d]] = matrixExponential([
          [0, -angle],
          [angle, 0],
        ]) as [[number, number], [number, number]];
        for (const [ours, theirs] of [
          [a, Math.cos(angle)],
          [b, -Math.sin(angle)],
          [c, Math.sin(angle)],
          [d, Math.cos(angle)],
        ] as const)
          expect(Math.abs(ours - theirs)).toBeLessThan(1e-13);
      }),
      { seed: 51, numRuns: 100 },
    );
  });

  it('of a diagonal is the exponential of each', () => {
    const found = matrixExponential([
      [-3, 0, 0],
      [0, 0, 0],
      [0, 0, 2.5],
    ]);
    expect(found[0]![0]).toBeCloseTo(Math.exp(-3), 13);
    expect(found[1]![1]).toBe(1);
    expect(found[2]![2]! / Math.exp(2.5)).toBeCloseTo(1, 13);
    expect(found[0]![2]).toBe(0);
  });

  it('of nothing is one', () => {
    expect(matrixExponential([[0]])).toEqual([[1]]);
  });

  it('of what only feeds forward is a polynomial', () => {
    expect(
      matrixExponential([
        [0, 4, 0],
        [0, 0, 4],
        [0, 0, 0],
      ]),
    ).toEqual([
      [1, 4, 8],
      [0, 1, 4],
      [0, 0, 1],
    ]);
  });
});
