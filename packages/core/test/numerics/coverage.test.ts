import { describe, expect, test } from 'vitest';
import { coverageHalfWidth } from '../../src/numerics/coverage.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { NormalTable } from '../../src/numerics/sampling.ts';

const TRIALS = 2048;
const SEEDS = 80;

type Scores = (dimension: number) => Float64Array;

/** Half-widths of one formula over normals, sampled from many seeds: their mean and their scatter, over the exact one. */
function overSeeds(
  exact: number,
  nominal: number,
  formula: (z: Scores, i: number) => number,
  dimensions: number,
  trials = TRIALS,
) {
  const found = Array.from({ length: SEEDS }, (_, seed) => {
    const table = new NormalTable(trials, seed);
    const columns = Array.from({ length: dimensions }, (_, k) => table.column(k));
    const samples = Float64Array.from({ length: trials + 1 }, (_, i) =>
      i === 0 ? nominal : formula((k) => columns[k], i - 1),
    );
    return coverageHalfWidth(samples) / exact - 1;
  });
  const bias = found.reduce((sum, each) => sum + each, 0) / SEEDS;
  const scatter = Math.sqrt(found.reduce((sum, each) => sum + (each - bias) ** 2, 0) / (SEEDS - 1));
  return { bias, scatter };
}

describe('coverage half-width', () => {
  test.each([
    [16, 1.5],
    [256, 0.001],
    [2048, 1.5],
  ])('of one reading alone, in %s trials, is the tolerance that was typed (k = 2)', (trials, deviation) => {
    const scores = new NormalTable(trials, 1).column(0);
    const half = coverageHalfWidth(Float64Array.of(10, ...scores.map((z) => 10 + deviation * z)));
    expect(Math.abs(half / (2 * deviation) - 1)).toBeLessThan(1e-9);
  });

  /**
   * GUM, JCGM 100:2008, 5.1.2: half-widths of independent readings add as squares. The mean of 80 seeds may be off by
   * what a hundredth of the shown half-width is; a larger side taken from sampled tails was off by 2.5 %.
   */
  test.each([
    ['two equal readings', [1, 1]],
    ['five of a travel column', [3.26, 2.79, 2, 1.5, 4]],
    ['twelve', [1, 2, 3, 1, 2, 3, 1, 2, 3, 1, 2, 3]],
  ])('of a sum of %s has no bias', (_name, halves) => {
    const exact = Math.hypot(...halves);
    const { bias, scatter } = overSeeds(
      exact,
      0,
      (z, i) => halves.reduce((sum, half, k) => sum + (half / 2) * z(k)[i], 0),
      halves.length,
    );
    expect(Math.abs(bias)).toBeLessThan(0.005);
    expect(scatter).toBeLessThan(0.01);
  });

  /** Few trials while somebody types: the same, with the scatter of fewer. */
  test('of a sum in 256 trials has no bias either', () => {
    const { bias, scatter } = overSeeds(
      Math.hypot(3, 4, 5),
      7,
      (z, i) => 7 + 1.5 * z(0)[i] + 2 * z(1)[i] + 2.5 * z(2)[i],
      3,
      256,
    );
    expect(Math.abs(bias)).toBeLessThan(0.01);
    expect(scatter).toBeLessThan(0.03);
  });

  /**
   * The smaller of two normal travels: distribution 1 − (1 − F₁)(1 − F₂), exact half-width about the nominal by SciPy
   * (validation/checks/uncertainty/smallest-of-two.json). The lower side is the larger one.
   */
  test('of the smaller of two travels is that of the larger side, without bias', () => {
    const { bias, scatter } = overSeeds(
      0.004669594708103686,
      0.108,
      (z, i) => Math.min(0.108 + 0.002 * z(0)[i], 0.11 + 0.003 * z(1)[i]),
      2,
    );
    expect(Math.abs(bias)).toBeLessThan(0.01);
    expect(scatter).toBeLessThan(0.02);
  });

  /** Exponential: the upper 2.275 % lie beyond −ln 0.02275 = 3.783 (closed form). */
  test('of a very skewed quantity is the distance to its long tail', () => {
    const waiting = Array.from({ length: TRIALS }, (_, i) => -Math.log((i + 0.5) / TRIALS));
    expect(Math.abs(coverageHalfWidth(Float64Array.of(1, ...waiting)) - 2.783)).toBeLessThan(0.01);
  });

  test.each([1.2, 2, 3])('of a split normal, %s times as wide below, is its wide side', (times) => {
    const scores = new NormalTable(TRIALS, 1).column(0);
    const split = coverageHalfWidth(Float64Array.of(0, ...scores.map((z) => (z > 0 ? z : times * z))));
    // A mild split is told by four moments, worth 0.1 %, and loses to its offset's own scatter another 0.2 %.
    expect(Math.abs(split / (2 * times) - 1)).toBeLessThan(0.005);
  });

  test('far from normal, agrees with sorting', () => {
    const random = randomStream(5);
    for (let run = 0; run < 40; run += 1) {
      const samples = Float64Array.from({ length: 301 }, () => random.below(run < 20 ? 9 : 1e6) ** 5);
      const sorted = samples.slice(1).sort();
      const at = (rank: number) => {
        const low = Math.floor(rank);
        return sorted[low] + (rank - low) * (sorted[low + 1] - sorted[low]);
      };
      const tail = 0.022750131948179;
      const expected = Math.max(
        at((1 - tail) * 300 - 0.5) - samples[0],
        samples[0] - at(tail * 300 - 0.5),
        0,
      );
      expect(coverageHalfWidth(samples) / expected).toBeCloseTo(1, 9);
    }
  });

  test('goes with the unit of what is sampled, and not with where its zero lies', () => {
    const table = new NormalTable(TRIALS, 3);
    const sum = Float64Array.from({ length: TRIALS + 1 }, (_, i) =>
      i === 0 ? 0 : table.column(0)[i - 1] + Math.min(0, table.column(1)[i - 1]),
    );
    const half = coverageHalfWidth(sum);
    expect(coverageHalfWidth(sum.map((x) => 25.4 * x)) / half).toBeCloseTo(25.4, 9);
    expect(coverageHalfWidth(sum.map((x) => -x)) / half).toBeCloseTo(1, 9);
    expect(coverageHalfWidth(sum.map((x) => x + 1000)) / half).toBeCloseTo(1, 6);
  });

  test('an exact quantity has none', () => {
    expect(coverageHalfWidth(new Float64Array(50).fill(3))).toBe(0);
    expect(coverageHalfWidth(new Float64Array(50).fill(0.1))).toBe(0);
  });

  test('what is not a number in one trial is not known', () => {
    const samples = Float64Array.from({ length: 65 }, (_, i) => i);
    samples[7] = Number.NaN;
    expect(coverageHalfWidth(samples)).toBeNaN();
  });
});
