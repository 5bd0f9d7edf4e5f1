import fc from 'fast-check';
import type { Side } from '../../src/finding/place.ts';
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

const side = fc.constantFrom('left' as const, 'right' as const, 'both' as const);
const seed = fc.integer({ min: 0, max: 2 ** 31 - 1 });
const start = between(0, 5);
const lagWithin = between(0, 1.5);

export const anyIrregularWhoops: fc.Arbitrary<Shape<'irregular-whoops'>> = fc.record({
  kind: fc.constant('irregular-whoops' as const),
  height: between(0.05, 0.5),
  spacing: between(2, 9),
  heightScatter: between(0, 0.9),
  spacingScatter: between(0, 0.5),
  count: fc.integer({ min: 1, max: 20 }),
  start,
  rightPhase: fc.oneof(fc.constant(0), phase),
  seed,
});

const anyDitch: fc.Arbitrary<Shape<'ditch'>> = fc.record({
  kind: fc.constant('ditch' as const),
  side,
  depth: between(0.05, 0.8),
  length: between(1, 5),
  bottom: between(0, 0.8),
  start,
  rightLag: lagWithin,
});

const anyHalfRound: fc.Arbitrary<Shape<'half-round'>> = fc
  .record({
    kind: fc.constant('half-round' as const),
    side,
    height: between(0.05, 0.3),
    length: between(2, 20),
    wheelRadius: between(0.3, 0.5),
    start,
    rightLag: lagWithin,
  })
  .map((shape) => ({ ...shape, length: shape.length * shape.height }));

export const anyRocks: fc.Arbitrary<Shape<'rocks'>> = fc.record({
  kind: fc.constant('rocks' as const),
  height: between(0.03, 0.25),
  rockLength: between(0.3, 0.8),
  spacing: between(0.9, 3),
  length: between(5, 40),
  start,
  seed,
  mirrored: fc.boolean(),
});

const anyWashboard: fc.Arbitrary<Shape<'washboard'>> = fc.record({
  kind: fc.constant('washboard' as const),
  height: between(0.01, 0.08),
  spacing: between(0.3, 1.2),
  length: between(8, 30),
  fadeIn: between(0.5, 3.9),
  start,
  rightPhase: fc.oneof(fc.constant(0), phase),
});

export const anyRoad: fc.Arbitrary<Shape<'road-class'>> = fc.record({
  kind: fc.constant('road-class' as const),
  roughness: between(16e-6, 16384e-6),
  length: between(30, 80),
  fadeIn: between(2, 20),
  trackWidth: between(0, 2),
  seed,
  mirrored: fc.boolean(),
});

const anyRamp: fc.Arbitrary<Shape<'ramp-landing'>> = fc.record({
  kind: fc.constant('ramp-landing' as const),
  height: between(0.2, 1.5),
  length: between(3, 8),
  lip: between(0.1, 0.5),
  deck: between(1, 8),
  landingHeight: fc.oneof(fc.constant(0), between(0.1, 1.5)),
  landingLength: between(4, 10),
  start,
});

const anyCrest: fc.Arbitrary<Shape<'crest'>> = fc
  .record({ grade: between(0.05, 0.5), top: between(1, 8), foot: between(1, 8), flank: between(0, 8), start })
  .map(({ flank, grade, top, foot, start: at }) => ({
    kind: 'crest' as const,
    height: grade * (flank + foot / 2 + top / 4),
    grade,
    top,
    foot,
    start: at,
  }));

export const anyProfile: fc.Arbitrary<Shape<'profile'>> = fc
  .record({
    first: between(-100, 100),
    points: fc.array(fc.tuple(between(0.05, 0.6), between(-0.2, 0.2), between(-0.2, 0.2)), {
      minLength: 3,
      maxLength: 30,
    }),
    fade: between(0.05, 0.25),
    mirrored: fc.boolean(),
  })
  .map(({ first, points, fade, mirrored: swapped }) => {
    let at = first;
    const distance = points.map(([spacing]) => {
      at += spacing;
      return at;
    });
    return {
      kind: 'profile' as const,
      distance,
      left: points.map(([, left]) => left),
      right: points.map(([, , right]) => right),
      fadeIn: fade * (at - distance[0]!),
      mirrored: swapped,
    };
  });

/** Ground of every kind that has any. */
export const anyGround: fc.Arbitrary<CourseShape> = fc.oneof(
  anyWhoops,
  anyIrregularWhoops,
  anyLedge,
  anyDitch,
  anyHalfRound,
  anyRocks,
  anyWashboard,
  anyWaves,
  anyRoad,
  anyRamp,
  anyCrest,
  anyProfile,
);

/** The same course as seen by a rig whose left and right are swapped. */
export function mirrored(shape: CourseShape): CourseShape {
  switch (shape.kind) {
    case 'rocks':
    case 'road-class':
    case 'profile':
      return { ...shape, mirrored: !shape.mirrored };
    case 'ditch':
    case 'half-round':
      return {
        ...shape,
        side: otherSide(shape.side),
        start: shape.start + shape.rightLag,
        rightLag: -shape.rightLag,
      };
    case 'whoops':
    case 'irregular-whoops':
    case 'washboard':
      return {
        ...shape,
        start: shape.start + (shape.rightPhase * shape.spacing) / (2 * Math.PI),
        rightPhase: -shape.rightPhase,
      };
    case 'ledge':
      return { ...shape, side: otherSide(shape.side) };
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

const otherSide = (which: Side | 'both'): Side | 'both' =>
  which === 'both' ? which : which === 'left' ? 'right' : 'left';
