import fc from 'fast-check';
import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { nonNegativeLeastSquares } from '../../src/numerics/nonnegative.ts';

const number = fc.double({ min: -5, max: 5, noNaN: true });

describe('least squares that stay at zero or above', () => {
  it('leave no residual along what is above zero, and none that asks for more of what is zero', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(number, { minLength: 4, maxLength: 4 }), { minLength: 7, maxLength: 7 }),
        fc.array(number, { minLength: 7, maxLength: 7 }),
        (values, right) => {
          // Far from singular, or the answer is not one.
          const rows = new Matrix(values.map((row, i) => row.map((v, j) => v + (i === j ? 12 : 0))));
          const x = nonNegativeLeastSquares(rows, Float64Array.from(right));
          for (let j = 0; j < 4; j += 1) {
            let pull = 0;
            for (let i = 0; i < 7; i += 1) {
              let rest = right[i];
              for (let k = 0; k < 4; k += 1) rest -= rows.get(i, k) * x[k];
              pull += rows.get(i, j) * rest;
            }
            expect(x[j]).toBeGreaterThanOrEqual(0);
            if (x[j] > 0) expect(Math.abs(pull)).toBeLessThan(1e-8);
            else expect(pull).toBeLessThan(1e-8);
          }
        },
      ),
    );
  });
});
