import { describe, expect, test } from 'vitest';
import { normalQuantile } from '../../src/numerics/normal-quantile.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { NormalTable, normalTrials } from '../../src/numerics/sampling.ts';

const COUNT = 2048;
const mean = (column: ArrayLike<number>) => Array.from(column).reduce((sum, x) => sum + x, 0) / column.length;

describe('normal quantile', () => {
  // Python 3.11 statistics.NormalDist().inv_cdf, computed; the first two are in every table (e.g. Abramowitz and Stegun 26.5).
  test.each([
    [0.975, 1.9599639845400536],
    [0.995, 2.575829303548901],
    [0.3, -0.5244005127080407],
    [1e-5, -4.2648907939228256],
    [1e-20, -9.262340089798405],
  ])('below %s of a standard normal lies %s', (probability, expected) => {
    expect(Math.abs(normalQuantile(probability) - expected)).toBeLessThan(
      4e-15 * Math.max(1, Math.abs(expected)),
    );
  });
});

describe('normals for the trials', () => {
  const table = new NormalTable(COUNT, 7);

  test('every dimension holds the same evenly spread scores, each once', () => {
    const first = Float64Array.from(table.column(0)).sort();
    for (let i = 0; i < COUNT; i += 1) expect(first[i]).toBe(normalQuantile((i + 0.5) / COUNT));
    for (const dimension of [1, 17, 80])
      expect(Float64Array.from(table.column(dimension)).sort()).toEqual(first);
  });

  test('no two of eighty dimensions move together: correlation below 0.005', () => {
    let worst = 0;
    for (let a = 0; a < 80; a += 1)
      for (let b = 0; b < a; b += 1) {
        const [x, y] = [table.column(a), table.column(b)];
        let along = 0;
        for (let i = 0; i < COUNT; i += 1) along += x[i] * y[i];
        worst = Math.max(worst, Math.abs(along / COUNT));
      }
    expect(worst).toBeLessThan(0.005);
  });

  test('a dimension does not depend on how many follow, and a seed gives one table', () => {
    const again = new NormalTable(COUNT, 7);
    expect(again.column(3)).toEqual(table.column(3));
    expect(new NormalTable(COUNT, 8).column(3)).not.toEqual(table.column(3));
  });

  test('trial by trial: row t, dimension d', () => {
    const rows = normalTrials(64, 5, 3);
    const columns = new NormalTable(64, 3);
    expect(rows).toHaveLength(64 * 5);
    for (const [t, d] of [
      [0, 0],
      [10, 4],
      [63, 2],
    ])
      expect(rows[t * 5 + d]).toBe(columns.column(d)[t]);
  });

  /** JCGM 101:2008, 9.2.2: Y = X1 + X2 + X3 + X4, each standard normal: y = 0, u(y) = 2.0, 95 % interval ±3.92. */
  test('the additive model of JCGM 101, 9.2.2, comes out', () => {
    const sum = new Float64Array(COUNT);
    for (const dimension of [2, 30, 31, 77])
      for (let i = 0; i < COUNT; i += 1) sum[i] += table.column(dimension)[i];
    expect(Math.abs(mean(sum))).toBeLessThan(1e-12);
    const deviation = Math.sqrt(mean(sum.map((x) => x * x)));
    // The scores stop at the middles of the outermost strata, which costs 0.03 % of a deviation.
    expect(Math.abs(deviation - 2)).toBeLessThan(0.002);
    sum.sort();
    // Sampling error of this quantile is 3 % of its size at most at 2048 trials (order statistics); seed fixed.
    expect(Math.abs(sum[Math.round(0.025 * COUNT)] + 3.92)).toBeLessThan(0.12);
    expect(Math.abs(sum[Math.round(0.975 * COUNT)] - 3.92)).toBeLessThan(0.12);
  });
});

describe('random numbers', () => {
  test('all below the bound, all about equally often', () => {
    const random = randomStream(11, 4);
    const counts = new Array<number>(10).fill(0);
    for (let i = 0; i < 10_000; i += 1) counts[random.below(10)] += 1;
    const chi2 = counts.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0);
    // 99.9 % point of chi-squared with 9 degrees of freedom: 27.88 (any table).
    expect(chi2).toBeLessThan(27.88);
  });

  test('a seed repeats itself, another branch does not', () => {
    const draws = (branch: number) => {
      const random = randomStream(1, branch);
      return Array.from({ length: 8 }, () => random.below(1000));
    };
    expect(draws(0)).toEqual(draws(0));
    expect(draws(0)).not.toEqual(draws(1));
  });
});
