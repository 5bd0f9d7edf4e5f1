import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heightAt, type SampledSide } from '../../src/course/sampled.ts';
import { sampleCourse } from '../../src/course/track.ts';
import { SIDES } from '../../src/finding/place.ts';
import type { CourseShape } from '../../src/rig/course-spec.ts';
import { anyIrregularWhoops, anyRocks } from './any-course.ts';

const RUNS = { seed: 32, numRuns: 100 };

/** Largest height between each two of the places where the ground changes its law, beside their distance. */
function things(side: SampledSide): { length: number; height: number }[] {
  return side.breaks.slice(1).map((to, i) => {
    const from = side.breaks[i]!;
    return { length: to - from, height: heightAt(side, (from + to) / 2) };
  });
}

const WHOOPS: CourseShape = {
  kind: 'irregular-whoops',
  height: 0.3,
  spacing: 5,
  heightScatter: 0.3,
  spacingScatter: 0.2,
  count: 1000,
  start: 5,
  rightPhase: 0,
  seed: 1,
};

const ROCKS: CourseShape = {
  kind: 'rocks',
  height: 0.2,
  rockLength: 0.6,
  spacing: 1.5,
  length: 3000,
  start: 5,
  seed: 1,
  mirrored: false,
};

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

describe('irregular whoops', () => {
  it('each lie within their bands of height and spacing', () => {
    fc.assert(
      fc.property(anyIrregularWhoops, (shape) => {
        const whoops = things(sampleCourse(shape).left);
        expect(whoops).toHaveLength(shape.count);
        for (const { length, height } of whoops) {
          // Lengths are rounded to 1/64 of the spacing.
          expect(Math.abs(length / shape.spacing - 1)).toBeLessThanOrEqual(
            shape.spacingScatter + 0.5 / 64 + 1e-9,
          );
          expect(Math.abs(height / shape.height - 1)).toBeLessThanOrEqual(shape.heightScatter + 1e-5);
        }
      }),
      RUNS,
    );
  });

  it('fill those bands evenly: mean in the middle, deviation half the width ÷ √3', () => {
    const whoops = things(sampleCourse(WHOOPS).left);
    for (const [values, middle, half] of [
      [whoops.map(({ height }) => height), 0.3, 0.09],
      [whoops.map(({ length }) => length), 5, 1],
    ] as const) {
      const deviation = half / Math.sqrt(3);
      // Four standard errors of a mean and of a deviation of a thousand draws.
      expect(Math.abs(mean(values) - middle)).toBeLessThan((4 * deviation) / Math.sqrt(1000));
      const found = Math.sqrt(mean(values.map((value) => (value - middle) ** 2)));
      expect(Math.abs(found / deviation - 1)).toBeLessThan((4 * Math.sqrt(0.2)) / Math.sqrt(1000));
    }
  });

  it('without scatter are whoops', () => {
    const even = { height: 0.3, spacing: 5, count: 6, start: 2, rightPhase: 1 };
    const one = sampleCourse({
      kind: 'irregular-whoops',
      ...even,
      heightScatter: 0,
      spacingScatter: 0,
      seed: 9,
    });
    const other = sampleCourse({ kind: 'whoops', ...even });
    for (let s = 0; s < 36; s += 0.37) {
      expect(heightAt(one.left, s)).toBeCloseTo(heightAt(other.left, s), 12);
      expect(heightAt(one.right, s)).toBeCloseTo(heightAt(other.right, s), 12);
    }
  });

  it('keep their heights when only their spacings are scattered otherwise', () => {
    const heights = (spacingScatter: number) =>
      things(sampleCourse({ ...WHOOPS, count: 20, spacingScatter } as CourseShape).left).map(
        ({ height }) => height,
      );
    const others = heights(0.4);
    heights(0.1).forEach((height, i) => {
      expect(height).toBeCloseTo(others[i]!, 5);
    });
  });
});

describe('bedded rocks', () => {
  it('each lie within their bounds, and do not overlap', () => {
    fc.assert(
      fc.property(anyRocks, (shape) => {
        const track = sampleCourse(shape);
        for (const which of SIDES) {
          const all = things(track[which]);
          for (const { length, height } of all) {
            expect(height).toBeLessThanOrEqual(shape.height * (1 + 1e-6));
            if (height > 1e-9) {
              expect(height).toBeGreaterThanOrEqual((shape.height / 3) * (1 - 1e-3));
              expect(length).toBeGreaterThan((0.5 - 1 / 64) * shape.rockLength);
              expect(length).toBeLessThan((1 + 1 / 64) * shape.rockLength);
            }
          }
        }
      }),
      RUNS,
    );
  });

  it('stand a spacing apart on average, over level ground', () => {
    const track = sampleCourse(ROCKS);
    for (const which of SIDES) {
      const count = things(track[which]).filter(({ height }) => height > 1e-9).length;
      // Spacing of 1.5 m scatters by √((2.1²)/12 + 0.3²/12) = 0.61 m: four standard errors of the mean of 2000.
      expect(Math.abs(3000 / count - 1.5)).toBeLessThan((4 * 0.61) / Math.sqrt(2000) + 0.002);
      expect(track[which].samples.every((value, i) => i % 2 === 1 || value > -1e-12)).toBe(true);
    }
  });

  it('on the left have nothing to do with those on the right', () => {
    const { left, right } = sampleCourse(ROCKS);
    const places = Array.from({ length: 20_000 }, (_, i) => 5 + i * 0.149);
    const [a, b] = [left, right].map((side) => {
      const heights = places.map((s) => heightAt(side, s));
      const middle = mean(heights);
      return heights.map((height) => height - middle);
    });
    const together = mean(a!.map((height, i) => height * b![i]!));
    const size = Math.sqrt(mean(a!.map((x) => x * x)) * mean(b!.map((x) => x * x)));
    // Some two thousand rocks: a correlation of four standard errors is 0.09.
    expect(Math.abs(together / size)).toBeLessThan(0.09);
  });
});

describe('a seed', () => {
  it('makes other ground of the same kind', () => {
    for (const shape of [WHOOPS, ROCKS]) {
      const heights = (seed: number) =>
        sampleCourse({ ...shape, seed } as CourseShape).left.samples.slice(0, 2000);
      expect(heights(2)).not.toEqual(heights(1));
      expect(heights(2)).toEqual(heights(2));
    }
  });
});
