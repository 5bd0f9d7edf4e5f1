import fc from 'fast-check';
import { expect, test } from 'vitest';
import { symmetricEigen } from '../../src/numerics/symmetric-eigen.ts';

test('a chain of springs has the frequencies of the textbook: 2 − 2·cos(kπ/(n+1))', () => {
  const n = 5;
  const chain = Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (_, j) => (i === j ? 2 : Math.abs(i - j) === 1 ? -1 : 0)),
  );
  const { values } = symmetricEigen(chain);
  values.forEach((value, k) => {
    expect(value).toBeCloseTo(2 - 2 * Math.cos(((k + 1) * Math.PI) / (n + 1)), 13);
  });
});

test('values rise, vectors are square to each other, and the matrix comes back', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 16, maxLength: 16 }),
      (entries) => {
        const at = (i: number, j: number) => entries[4 * Math.min(i, j) + Math.max(i, j)];
        const matrix = [0, 1, 2, 3].map((i) => [0, 1, 2, 3].map((j) => at(i, j)));
        const { values, vectors } = symmetricEigen(matrix);
        expect([...values].sort((a, b) => a - b)).toEqual(values);
        for (let i = 0; i < 4; i += 1)
          for (let j = 0; j < 4; j += 1) {
            const product = vectors[i].reduce((sum, entry, k) => sum + entry * vectors[j][k], 0);
            expect(product).toBeCloseTo(i === j ? 1 : 0, 12);
            const back = values.reduce((sum, value, k) => sum + value * vectors[k][i] * vectors[k][j], 0);
            expect(back).toBeCloseTo(matrix[i][j], 12);
          }
      },
    ),
    { seed: 4, numRuns: 100 },
  );
});
