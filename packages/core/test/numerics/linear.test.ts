import { describe, expect, test } from 'vitest';
import { eigenvalues } from '../../src/numerics/linear.ts';

describe('eigenvalues', () => {
  test('of a companion matrix are the roots of its polynomial: (s + 1)(s + 2)(s + 5)', () => {
    const found = eigenvalues([
      [0, 1, 0],
      [0, 0, 1],
      [-10, -17, -8],
    ]);
    for (const [k, root] of [-1, -2, -5].entries()) {
      expect(found[k].re).toBeCloseTo(root, 12);
      expect(found[k].im).toBeCloseTo(0, 12);
    }
  });

  test('come in conjugate pairs: a turn by 90°', () => {
    expect(
      eigenvalues([
        [0, -1],
        [1, 0],
      ]),
    ).toEqual([
      { re: expect.closeTo(0, 14), im: expect.closeTo(-1, 14) },
      { re: expect.closeTo(0, 14), im: expect.closeTo(1, 14) },
    ]);
  });

  test('what is not finite is our own mistake', () => {
    expect(() => eigenvalues([[Number.NaN]])).toThrow('square matrix of finite entries');
  });
});
