import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heightAt, type SampledSide, slopeAt, type Track } from '../../src/course/sampled.ts';
import { sampleCourse } from '../../src/course/track.ts';
import { SIDES } from '../../src/finding/place.ts';
import type { CourseShape } from '../../src/rig/course-spec.ts';
import { slopeOf } from '../numerics/quadrature.ts';
import { anyCourse, anyLedge, anyWaves, anyWhoops } from './any-course.ts';
import { groundAt } from './ground-formulas.ts';

// Against NumPy's evaluation of the same formulas: validation/checks/course.

const RUNS = { seed: 20, numRuns: 150 };
const share = fc.double({ min: 0, max: 1, noNaN: true });

/** Largest fourth derivative of a side [1/m³]: what a cubic leaves out. */
function fourthDerivative(shape: CourseShape): number {
  switch (shape.kind) {
    case 'whoops':
      return (shape.height / 2) * ((2 * Math.PI) / shape.spacing) ** 4;
    case 'ledge':
      return (Math.abs(shape.height) / 2) * (Math.PI / shape.length) ** 4;
    case 'waves':
      // Where the fade is done; while it rises see its own test.
      return shape.waves.reduce((sum, w) => sum + (w.common + w.own) * (2 * Math.PI * w.n) ** 4, 0);
    default:
      return 0;
  }
}

/**
 * Error of the cubic with exact values and slopes at both ends of a piece of length h: at most h⁴/384 of the fourth
 * derivative in height and √3·h³/216 in slope (Birkhoff and Priver, J. Math. and Phys. 46 (1967) 440, from memory).
 */
const heightBound = (side: SampledSide, shape: CourseShape): number =>
  1.0001 * (side.step ** 4 / 384) * fourthDerivative(shape) + 1e-13;
const slopeBound = (side: SampledSide, shape: CourseShape): number =>
  1.0001 * ((Math.sqrt(3) * side.step ** 3) / 216) * fourthDerivative(shape) + 1e-12;

function expectGround(shape: CourseShape, track: Track, s: number): void {
  for (const which of SIDES) {
    const exact = groundAt(shape, which, s);
    const side = track[which];
    expect(Math.abs(heightAt(side, s) - exact.height)).toBeLessThanOrEqual(heightBound(side, shape));
    expect(Math.abs(slopeAt(side, s) - exact.slope)).toBeLessThanOrEqual(slopeBound(side, shape));
  }
}

describe('the formulas that the ground is held against', () => {
  it('have the slope that their own heights show', () => {
    fc.assert(
      fc.property(anyCourse, share, (shape, part) => {
        const track = sampleCourse(shape);
        const s = part * track.end;
        for (const which of SIDES) {
          // A difference across a place where the law changes would see its corner.
          fc.pre(track[which].breaks.every((at) => Math.abs(at - s) > 1e-3));
          const shown = slopeOf((at) => groundAt(shape, which, at).height, s, 1e-4);
          expect(Math.abs(groundAt(shape, which, s).slope - shown)).toBeLessThan(1e-8);
        }
      }),
      RUNS,
    );
  });
});

describe('whoops', () => {
  it('have the height and slope of their formula, on both sides, before, on and after them', () => {
    fc.assert(
      fc.property(anyWhoops, share, (shape, part) => {
        const track = sampleCourse(shape);
        expectGround(shape, track, (1.3 * part - 0.1) * track.end);
      }),
      RUNS,
    );
  });

  it('reach the right side later by their phase', () => {
    const track = sampleCourse({
      kind: 'whoops',
      height: 0.3,
      spacing: 4,
      count: 6,
      start: 3,
      rightPhase: Math.PI / 2,
    });
    for (const s of [2.9, 3.2, 6.1, 14.37, 26.5, 29]) {
      expect(heightAt(track.right, s + 1)).toBeCloseTo(heightAt(track.left, s), 12);
    }
    // A quarter turn behind: at the first crest of the left the right stands half way up.
    expect(heightAt(track.left, 5)).toBeCloseTo(0.3, 12);
    expect(heightAt(track.right, 5)).toBeCloseTo(0.15, 12);
  });

  it('are alike on both sides without a phase', () => {
    fc.assert(
      fc.property(anyWhoops, share, (shape, part) => {
        const track = sampleCourse({ ...shape, rightPhase: 0 });
        const s = part * track.end;
        expect(heightAt(track.right, s)).toBe(heightAt(track.left, s));
      }),
      RUNS,
    );
  });

  it('lie trough to crest by their height', () => {
    const track = sampleCourse({
      kind: 'whoops',
      height: 0.3,
      spacing: 4,
      count: 2,
      start: 0,
      rightPhase: 0,
    });
    const heights = Array.from({ length: 801 }, (_, i) => heightAt(track.left, i / 100));
    expect(Math.max(...heights)).toBeCloseTo(0.3, 12);
    expect(Math.min(...heights)).toBeCloseTo(0, 12);
  });
});

describe('a ledge', () => {
  it('has the height and slope of its formula on its side, and none on the other', () => {
    fc.assert(
      fc.property(anyLedge, share, (shape, part) => {
        const track = sampleCourse(shape);
        expectGround(shape, track, (1.3 * part - 0.1) * track.end);
      }),
      RUNS,
    );
  });

  it('stays at its height for ever', () => {
    const track = sampleCourse({ kind: 'ledge', side: 'left', height: -0.2, length: 0.4, start: 5 });
    expect([5.4, 6, 100].map((s) => heightAt(track.left, s))).toEqual([-0.2, -0.2, -0.2]);
    expect([5.4, 6, 100].map((s) => heightAt(track.right, s))).toEqual([0, 0, 0]);
    expect(slopeAt(track.left, 100)).toBe(0);
  });
});

describe('a road of waves', () => {
  it('has the height and slope of its formula once it has faded in', () => {
    fc.assert(
      fc.property(anyWaves, share, (shape, part) => {
        const track = sampleCourse(shape);
        // The piece over the end of the fade excepted: its third derivative jumps there, see below.
        const from = shape.fadeIn + track.left.step;
        const s = from + 0.9999 * part * (shape.length - from);
        expectGround(shape, track, s);
      }),
      RUNS,
    );
  });

  it('keeps to its formula while it fades in, within 1e-5 of its largest height', () => {
    fc.assert(
      fc.property(anyWaves, share, (shape, part) => {
        const track = sampleCourse(shape);
        const size = shape.waves.reduce((sum, wave) => sum + wave.common + wave.own, 0);
        const s = part * (shape.fadeIn + track.left.step);
        for (const which of SIDES) {
          const exact = groundAt(shape, which, s);
          expect(Math.abs(heightAt(track[which], s) - exact.height)).toBeLessThanOrEqual(1e-5 * size + 1e-15);
        }
      }),
      RUNS,
    );
  });

  it('starts from flat without a step in height or slope', () => {
    fc.assert(
      fc.property(anyWaves, (shape) => {
        const { left, right } = sampleCourse(shape);
        for (const side of [left, right]) {
          expect([heightAt(side, -1), heightAt(side, 0), slopeAt(side, 0)]).toEqual([0, 0, 0]);
          expect(Math.abs(slopeAt(side, 1e-3 * shape.fadeIn))).toBeLessThan(1e-3);
        }
      }),
      RUNS,
    );
  });
});

describe('any ground', () => {
  it('is exact where it changes its law, for a sample stands there', () => {
    fc.assert(
      fc.property(anyCourse, (shape) => {
        const track = sampleCourse(shape);
        for (const which of SIDES) {
          for (const s of track[which].breaks) {
            if (shape.kind === 'waves' && s === shape.fadeIn) continue;
            expect(Math.abs(heightAt(track[which], s) - groundAt(shape, which, s).height)).toBeLessThan(
              1e-12,
            );
          }
        }
      }),
      RUNS,
    );
  });

  it('of a flat course or a drop is level; a drop tells from how high', () => {
    for (const shape of [
      { kind: 'flat', length: 30 },
      { kind: 'drop', height: 0.4 },
    ] as const) {
      const track = sampleCourse(shape);
      for (const s of [-3, 0, 0.4, 17, 99]) {
        expect([heightAt(track.left, s), slopeAt(track.left, s)]).toEqual([0, 0]);
        expect([heightAt(track.right, s), slopeAt(track.right, s)]).toEqual([0, 0]);
      }
      expect(track.initialLift).toBe(shape.kind === 'drop' ? 0.4 : 0);
    }
  });
});
