import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heightAt, slopeAt } from '../../src/course/sampled.ts';
import { sampleCourse } from '../../src/course/track.ts';
import type { CourseShape } from '../../src/rig/course-spec.ts';
import { anyProfile } from './any-course.ts';

// Against SciPy's monotone cubic: validation/checks/course/profile.json.

type Profile = Extract<CourseShape, { readonly kind: 'profile' }>;
const even = (heights: readonly number[], step: number, change: Partial<Profile> = {}): Profile => ({
  kind: 'profile',
  distance: heights.map((_, i) => 700 + i * step),
  left: heights,
  right: heights.map((height) => -height),
  fadeIn: step,
  mirrored: false,
  ...change,
});

describe('a measured ground', () => {
  it('goes through its even points exactly, once it has faded in', () => {
    const heights = [0, 0.02, 0.05, 0.05, 0.01, -0.03, 0, 0.04, 0.02];
    for (const step of [0.1, 0.25, 1, 10]) {
      const { left, right } = sampleCourse(even(heights, step));
      heights.forEach((height, i) => {
        expect(heightAt(left, i * step)).toBeCloseTo(height, 12);
        expect(heightAt(right, i * step)).toBeCloseTo(-height, 12);
      });
    }
  });

  it('never goes beyond its points', () => {
    fc.assert(
      fc.property(anyProfile, fc.double({ min: 0, max: 1, noNaN: true }), (shape, part) => {
        const track = sampleCourse({ ...shape, mirrored: false });
        const from = shape.distance[0]!;
        const s = shape.fadeIn + part * (track.end - shape.fadeIn);
        const next = shape.distance.findIndex((at) => at - from >= s - 1e-12);
        const [a, b] = [
          shape.left[Math.max(0, next - 1)]!,
          shape.left[next < 0 ? shape.left.length - 1 : next]!,
        ];
        const datum = (shape.left[0]! + shape.right[0]!) / 2;
        const height = heightAt(track.left, s) + datum;
        // A piece that holds a point rounds it by step²/60 of a step in curvature; 0.4 m over 5 cm is the sharpest.
        const rounding = (track.left.step ** 2 / 60) * 2500;
        expect(height).toBeGreaterThanOrEqual(Math.min(a, b) - rounding);
        expect(height).toBeLessThanOrEqual(Math.max(a, b) + rounding);
      }),
      { seed: 36, numRuns: 300 },
    );
  });

  it('of points on a straight line is that line', () => {
    const distance = [3, 3.4, 5, 5.2, 8, 9.9];
    const line = distance.map((at) => 40 + 0.1 * at);
    const track = sampleCourse({
      kind: 'profile',
      distance,
      left: line,
      right: line,
      fadeIn: 0.5,
      mirrored: false,
    });
    for (const s of [0.6, 1.7, 2.05, 4.4, 6.8]) {
      expect(heightAt(track.left, s)).toBeCloseTo(0.1 * s, 12);
      expect(slopeAt(track.left, s)).toBeCloseTo(0.1, 10);
    }
    expect(track.end).toBeCloseTo(6.9, 12);
  });

  it('does not care where its distance and its height are counted from', () => {
    fc.assert(
      fc.property(anyProfile, (shape) => {
        const one = sampleCourse(shape);
        const other = sampleCourse({
          ...shape,
          distance: shape.distance.map((at) => at + 64),
          left: shape.left.map((height) => height + 512),
          right: shape.right.map((height) => height + 512),
        });
        for (const part of [0.1, 0.37, 0.7, 0.93]) {
          const s = part * one.end;
          expect(heightAt(other.left, s)).toBeCloseTo(heightAt(one.left, s), 9);
        }
      }),
      { seed: 37, numRuns: 60 },
    );
  });

  it('keeps the height of one side against the other', () => {
    const track = sampleCourse(even([0.1, 0.1, 0.1, 0.1, 0.1], 2));
    expect(heightAt(track.left, 5) - heightAt(track.right, 5)).toBeCloseTo(0.2, 12);
  });

  it('of points a millimetre apart stays within memory', () => {
    const distance = [0, 0.001, 5000, 10_000];
    const side = sampleCourse({
      kind: 'profile',
      distance,
      left: [0, 0, 1, 2],
      right: [0, 0, 1, 2],
      fadeIn: 10,
      mirrored: false,
    }).left;
    expect(side.samples.length).toBeLessThanOrEqual(2 * (2 ** 20 + 1));
  });
});
