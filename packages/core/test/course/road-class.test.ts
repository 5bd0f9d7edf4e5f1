import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trackCoherence } from '../../src/course/road-class.ts';
import { heightAt } from '../../src/course/sampled.ts';
import { sampleCourse } from '../../src/course/track.ts';
import type { CourseShape } from '../../src/rig/course-spec.ts';
import { ROAD_CLASSES } from '../../src/rig/road-class.ts';
import { anyRoad } from './any-course.ts';

// Spectrum, coherence and root mean square against ISO 8608 and SciPy: validation/checks/roads.

type Road = Extract<CourseShape, { readonly kind: 'road-class' }>;
const road = (change: Partial<Road> = {}): Road => ({
  kind: 'road-class',
  roughness: ROAD_CLASSES.D,
  length: 1024,
  // As good as none: the road is then whole waves, end to end.
  fadeIn: 1e-9,
  trackWidth: 1.5,
  seed: 1,
  mirrored: false,
  ...change,
});

const heights = (shape: Road, side: 'left' | 'right' = 'left'): Float64Array =>
  sampleCourse(shape)[side].samples.filter((_, i) => i % 2 === 0);
const slopes = (shape: Road): Float64Array => sampleCourse(shape).left.samples.filter((_, i) => i % 2 === 1);
const mean = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const square = (values: Float64Array): number => mean(values.map((value) => value * value));

describe('a road of a class', () => {
  it('has no height and no slope on average, over its whole length', () => {
    const whole = (values: Float64Array) => values.slice(0, -1);
    expect(Math.abs(mean(whole(heights(road())).slice(1)))).toBeLessThan(1e-6);
    expect(Math.abs(mean(whole(slopes(road())).slice(1)))).toBeLessThan(1e-4);
  });

  it('is rougher by two from class to class, and otherwise the same road of a seed', () => {
    const classes = Object.values(ROAD_CLASSES);
    const first = heights(road({ roughness: classes[0] }));
    classes.forEach((roughness, k) => {
      heights(road({ roughness })).forEach((height, i) => {
        if (i % 5000 === 0) expect(height / 2 ** k).toBeCloseTo(first[i]!, 10);
      });
    });
  });

  it('has the mean square slope of its spectrum: (2πn0)²·Gd(n0) over the band', () => {
    const expected = (0.2 * Math.PI) ** 2 * ROAD_CLASSES.D * (2.83 - 0.011);
    expect(square(slopes(road())) / expected).toBeCloseTo(1, 3);
  });

  it('has the same roughness on both sides, whatever the seed', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), (seed) => {
        const left = square(heights(road({ seed })));
        expect(square(heights(road({ seed }), 'right')) / left).toBeCloseTo(1, 4);
      }),
      { seed: 33, numRuns: 5 },
    );
  });

  it('has nearly normal heights: a kurtosis of three', () => {
    // The longest waves count for most of the height, and of those there are few: slopes tell better.
    const values = slopes(road({ length: 8192 }));
    const fourth = mean(values.map((value) => value ** 4));
    expect(Math.abs(fourth / square(values) ** 2 - 3)).toBeLessThan(0.1);
  });

  it('begins alike in any length up to the same kilometre', () => {
    const short = heights(road({ length: 100 }));
    const long = heights(road({ length: 900 }));
    expect(short.every((height, i) => height === long[i])).toBe(true);
  });

  it('rises from flat where it begins', () => {
    fc.assert(
      fc.property(anyRoad, (shape) => {
        const { left, right } = sampleCourse(shape);
        for (const side of [left, right]) {
          expect([side.samples[0], side.samples[1]]).toEqual([0, 0]);
          const bound = 40 * Math.sqrt(shape.roughness);
          expect(Math.abs(heightAt(side, 0.02 * shape.fadeIn))).toBeLessThan(1e-4 * bound);
        }
      }),
      { seed: 34, numRuns: 30 },
    );
  });

  it('of ten kilometres is there in a second', () => {
    const before = performance.now();
    const track = sampleCourse(road({ length: 10_000 }));
    const took = performance.now() - before;
    expect(track.left.samples.length).toBe(2 * (640_000 + 1));
    // Half a second on an idle machine; a road worked out sine by sine takes minutes.
    expect(took).toBeLessThan(5000);
  });
});

describe('the two tracks of a road', () => {
  it('are one on no width at all', () => {
    const [left, right] = [heights(road({ trackWidth: 0 })), heights(road({ trackWidth: 0 }), 'right')];
    expect(Math.max(...left.map((height, i) => Math.abs(height - right[i]!)).slice(0, 60_000))).toBeLessThan(
      1e-14,
    );
  });

  it('grow apart with their distance and with the shortness of the waves', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.011, max: 2.5, noNaN: true }),
        fc.double({ min: 0.1, max: 3, noNaN: true }),
        (n, width) => {
          const alike = trackCoherence(n, width);
          expect(alike).toBeGreaterThanOrEqual(0);
          expect(alike).toBeLessThan(1);
          expect(trackCoherence(1.1 * n, width)).toBeLessThanOrEqual(alike);
          expect(trackCoherence(n, 1.1 * width)).toBeLessThanOrEqual(alike);
          expect(trackCoherence(2 * n, width / 2)).toBeCloseTo(alike, 12);
        },
      ),
      { seed: 35, numRuns: 200 },
    );
  });

  it('far apart are two roads', () => {
    const shape = road({ trackWidth: 500, length: 8192 });
    const [left, right] = [heights(shape), heights(shape, 'right')];
    const together = mean(left.map((height, i) => height * right[i]!));
    // The longest waves carry the height: some ninety of them count.
    expect(Math.abs(together / square(left))).toBeLessThan(0.4);
  });
});
