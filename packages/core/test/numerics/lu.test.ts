import fc from 'fast-check';
import { det, lusolve } from 'mathjs';
import { expect, test } from 'vitest';
import { factorise, substitute } from '../../src/numerics/lu.ts';

test('determinant and answer agree with a general mathematics library', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 30, maxLength: 30 }),
      (entries) => {
        const n = 5;
        // Kept away from singular: both would be right to differ there.
        const rows = Array.from({ length: n }, (_, i) =>
          Array.from({ length: n }, (_, j) => entries[i * n + j] + (i === (j + 2) % n ? 4 : 0)),
        );
        const side = entries.slice(25);
        const factors = Float64Array.from(rows.flat());
        const swaps = new Int32Array(n);
        expect(factorise(factors, n, swaps) / det(rows)).toBeCloseTo(1, 10);
        const answer = Float64Array.from(side);
        substitute(factors, n, swaps, answer);
        const theirs = (lusolve(rows, side) as number[][]).flat();
        theirs.forEach((entry, i) => {
          expect(answer[i]).toBeCloseTo(entry, 10);
        });
      },
    ),
    { seed: 4, numRuns: 100 },
  );
});

test('a matrix with two equal rows has no determinant', () => {
  expect(factorise(Float64Array.of(1, 2, 3, 1, 2, 3, 0, 1, 5), 3, new Int32Array(3))).toBe(0);
});
