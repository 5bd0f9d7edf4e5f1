import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heightAt, slopeAt } from '../../src/course/sampled.ts';
import { sampleCourse } from '../../src/course/track.ts';
import { SIDES } from '../../src/finding/place.ts';
import { slopeOf } from '../numerics/quadrature.ts';
import { anyGround, mirrored } from './any-course.ts';

const RUNS = { seed: 31, numRuns: 250 };
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('ground of any kind', () => {
  it('is the same ground whenever it is asked for', () => {
    fc.assert(
      fc.property(anyGround, (shape) => {
        const [one, other] = [sampleCourse(shape), sampleCourse(structuredClone(shape))];
        for (const which of SIDES) {
          const { samples, ...rest } = one[which];
          const { samples: others, ...alike } = other[which];
          expect(alike).toEqual(rest);
          expect(others.length).toBe(samples.length);
          // Number by number: a deep comparison of long arrays takes minutes.
          expect(samples.every((value, i) => value === others[i])).toBe(true);
        }
      }),
      { ...RUNS, numRuns: 60 },
    );
  });

  it('is made of numbers, and level at zero until it begins', () => {
    fc.assert(
      fc.property(anyGround, (shape) => {
        const track = sampleCourse(shape);
        expect(track.shortestFeature).toBeGreaterThan(0);
        for (const which of SIDES) {
          const { samples, step } = track[which];
          expect(samples.every(Number.isFinite)).toBe(true);
          expect(step).toBeGreaterThan(0);
          expect([heightAt(track[which], -1), heightAt(track[which], 0), slopeAt(track[which], -1)]).toEqual([
            0, 0, 0,
          ]);
        }
      }),
      RUNS,
    );
  });

  it('goes on level after its end, for ever', () => {
    fc.assert(
      fc.property(anyGround, share, (shape, part) => {
        const track = sampleCourse(shape);
        for (const which of SIDES) {
          const beyond = track.end + 1e-6 + 10 * part;
          expect(heightAt(track[which], beyond)).toBe(heightAt(track[which], track.end + 100));
          expect(slopeAt(track[which], beyond)).toBe(0);
        }
      }),
      RUNS,
    );
  });

  it('has the slope that its heights show', () => {
    fc.assert(
      fc.property(anyGround, share, (shape, part) => {
        const track = sampleCourse(shape);
        const s = (1.3 * part - 0.1) * track.end;
        for (const which of SIDES) {
          const side = track[which];
          const h = 1e-3 * side.step;
          const inPiece = (s - side.origin) / side.step;
          fc.pre(Math.abs(inPiece - Math.round(inPiece)) > 3e-3);
          const shown = slopeOf((at) => heightAt(side, at), s, h);
          expect(Math.abs(slopeAt(side, s) - shown)).toBeLessThan(1e-12 / h + 1e-11);
        }
      }),
      RUNS,
    );
  });

  it('never jumps, and keeps to the slope that stands beside each height', () => {
    fc.assert(
      fc.property(anyGround, (shape) => {
        // A measured ground has no law that its few points would follow.
        fc.pre(shape.kind !== 'profile');
        const track = sampleCourse(shape);
        for (const which of SIDES) {
          const { samples, step } = track[which];
          // A piece rises as the mean of its end slopes says, but for the change of slope within it, and for a share of
          // (2π/22)²/12, 1/150, of the steepest slope, where the shortest wave of a road turns from hollow to crest.
          const steepest = samples.reduce(
            (most, value, i) => (i % 2 ? Math.max(most, Math.abs(value)) : most),
            0,
          );
          let worst = 0;
          for (let i = 0; i + 3 < samples.length; i += 2) {
            const rise = samples[i + 2]! - samples[i]!;
            const mean = (step * (samples[i + 1]! + samples[i + 3]!)) / 2;
            const turn = step * Math.abs(samples[i + 3]! - samples[i + 1]!);
            worst = Math.max(worst, Math.abs(rise - mean) - turn - (step * steepest) / 150);
          }
          expect(worst).toBeLessThan(1e-12);
        }
      }),
      RUNS,
    );
  });

  it('tells every place where its slope jumps, so that the stepper can land there', () => {
    fc.assert(
      fc.property(anyGround, (shape) => {
        const track = sampleCourse(shape);
        for (const which of SIDES) {
          const side = track[which];
          const last = side.origin + side.step * (side.samples.length / 2 - 1);
          for (const end of [side.origin, last]) {
            const jump = Math.abs(slopeAt(side, end - 1e-9) - slopeAt(side, end + 1e-9));
            if (jump > 1e-6) expect(side.breaks.some((at) => Math.abs(at - end) < 1e-9)).toBe(true);
          }
        }
      }),
      RUNS,
    );
  });

  it('lists those places in order', () => {
    fc.assert(
      fc.property(anyGround, (shape) => {
        const track = sampleCourse(shape);
        for (const which of SIDES) {
          const { breaks } = track[which];
          expect([...breaks].sort((a, b) => a - b)).toEqual([...breaks]);
        }
      }),
      RUNS,
    );
  });

  it('is swapped side for side when its description is', () => {
    fc.assert(
      fc.property(anyGround, share, (shape, part) => {
        const one = sampleCourse(shape);
        const other = sampleCourse(mirrored(shape));
        const s = part * one.end;
        expect(heightAt(other.left, s)).toBeCloseTo(heightAt(one.right, s), 11);
        expect(heightAt(other.right, s)).toBeCloseTo(heightAt(one.left, s), 11);
        expect(slopeAt(other.left, s)).toBeCloseTo(slopeAt(one.right, s), 9);
        expect(slopeAt(other.right, s)).toBeCloseTo(slopeAt(one.left, s), 9);
      }),
      RUNS,
    );
  });
});
