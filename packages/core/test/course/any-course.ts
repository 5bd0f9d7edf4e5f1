import fc from 'fast-check';
import type { CourseShape, Wave } from '../../src/rig/course-spec.ts';

/** Courses that somebody could drive, by kind. Invented: no expectation rests on the numbers. */

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const phase = between(0, 2 * Math.PI);

type Shape<Kind extends CourseShape['kind']> = Extract<CourseShape, { readonly kind: Kind }>;

export const anyWhoops: fc.Arbitrary<Shape<'whoops'>> = fc.record({
  kind: fc.constant('whoops' as const),
  height: between(0.05, 0.6),
  spacing: between(1, 9),
  count: fc.integer({ min: 1, max: 12 }),
  start: between(0, 5),
  rightPhase: fc.oneof(fc.constant(0), phase),
});

export const anyLedge: fc.Arbitrary<Shape<'ledge'>> = fc.record({
  kind: fc.constant('ledge' as const),
  side: fc.constantFrom('left' as const, 'right' as const, 'both' as const),
  height: between(-0.25, 0.25),
  length: between(0.15, 1.5),
  start: between(0, 5),
});

const anyWave: fc.Arbitrary<Wave> = fc.record({
  n: between(0.02, 0.8),
  common: between(0, 0.04),
  commonPhase: phase,
  own: between(0, 0.02),
  leftPhase: phase,
  rightPhase: phase,
});

export const anyWaves: fc.Arbitrary<Shape<'waves'>> = fc.record({
  kind: fc.constant('waves' as const),
  waves: fc.array(anyWave, { minLength: 1, maxLength: 5 }),
  fadeIn: between(1, 10),
  length: between(15, 40),
});

export const anyCourse: fc.Arbitrary<CourseShape> = fc.oneof(anyWhoops, anyLedge, anyWaves);

/** The same course as seen by a rig whose left and right are swapped. */
export function mirrored(shape: CourseShape): CourseShape {
  switch (shape.kind) {
    case 'whoops':
      return {
        ...shape,
        start: shape.start + (shape.rightPhase * shape.spacing) / (2 * Math.PI),
        rightPhase: -shape.rightPhase,
      };
    case 'ledge':
      return shape.side === 'both' ? shape : { ...shape, side: shape.side === 'left' ? 'right' : 'left' };
    case 'waves':
      return {
        ...shape,
        waves: shape.waves.map((wave) => ({
          ...wave,
          leftPhase: wave.rightPhase,
          rightPhase: wave.leftPhase,
        })),
      };
    default:
      return shape;
  }
}
