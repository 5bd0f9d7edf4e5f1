import { type CourseShape, heightAt, type SampledSide, sampleCourse, slopeAt } from '@lastinch/core';
import type { Values } from '../check-file.ts';
import type { Runner } from '../runner.ts';
import { numbers } from './inputs.ts';

const bothSides = (
  shape: unknown,
  at: unknown,
  read: (side: SampledSide, distance: number) => number,
): Values => {
  const { left, right } = sampleCourse(shape as CourseShape);
  return {
    left: numbers(at).map((distance) => read(left, distance)),
    right: numbers(at).map((distance) => read(right, distance)),
  };
};

/** The ground under both sides, as the ride reads it. */
export const course: Runner = {
  height: ({ shape, at }) => bothSides(shape, at, heightAt),
  slope: ({ shape, at }) => bothSides(shape, at, slopeAt),
};
