import { describe, expect, it } from 'vitest';
import { enveloped, movingFootprint } from '../../src/course/envelope.ts';
import { flatSide, heightAt, type SampledSide, sampleSide, slopeAt } from '../../src/course/sampled.ts';
import { sampleCourse } from '../../src/course/track.ts';
import { twoCams, usualCams } from '../../src/course/two-cams.ts';
import { integrate, slopeOf } from '../numerics/quadrature.ts';

const between = (from: number, to: number, count: number) =>
  Array.from({ length: count }, (_, k) => from + ((to - from) * (k + 0.37)) / count);

const whoops = sampleCourse({
  kind: 'whoops',
  height: 0.35,
  spacing: 5.2,
  count: 4,
  start: 3,
  rightPhase: 2,
}).left;
const ledge = sampleCourse({ kind: 'ledge', side: 'both', height: 0.18, length: 0.25, start: 6 }).left;

/** A long ramp of even slope between two flats, its edges rounded over 0.2 m. */
const slope = 0.3;
const ramp: SampledSide = sampleSide(
  (s) => {
    const round = (x: number): [number, number] => {
      const u = Math.min(1, Math.max(0, x / 0.2));
      return x >= 0.2 ? [x - 0.1, 1] : [0.2 * u ** 3 * (1 - u / 2), u ** 2 * (3 - 2 * u)];
    };
    const [up, upSlope] = round(s - 2);
    const [down, downSlope] = round(s - 8);
    return { height: slope * (up - down), slope: slope * (upSlope - downSlope) };
  },
  { from: 2, to: 8.2, pieces: 310, breaks: [2, 2.2, 8, 8.2] },
);

describe('ground under a footprint', () => {
  it('is the mean of the ground under it, and its slope is the rise over it', () => {
    for (const side of [whoops, ledge]) {
      const felt = movingFootprint(side, 0.2);
      const last = felt.samples.length / 2 - 1;
      for (let i = 0; i <= last; i += 7) {
        const s = felt.origin + i * felt.step;
        // The ground is a cubic between its samples: their places end the pieces of the integral.
        const knots = [s - 0.1, s + 0.1];
        for (let at = side.origin; at < s + 0.1; at += side.step) if (at > s - 0.1) knots.push(at);
        const from = side.origin + side.step * (side.samples.length / 2 - 1);
        if (from > s - 0.1 && from < s + 0.1) knots.push(from);
        knots.sort((a, b) => a - b);
        let area = 0;
        for (let k = 1; k < knots.length; k += 1)
          area += integrate((x) => heightAt(side, x), knots[k - 1], knots[k]);
        expect(felt.samples[2 * i]).toBeCloseTo(area / 0.2, 12);
        const rise = heightAt(side, s + 0.1) - heightAt(side, s - 0.1);
        expect(felt.samples[2 * i + 1]).toBeCloseTo(rise / 0.2, 12);
      }
    }
  });

  it('between samples has the slope of its own height', () => {
    const felt = movingFootprint(whoops, 0.3);
    for (const s of between(3, 24, 40))
      expect(slopeAt(felt, s)).toBeCloseTo(
        slopeOf((x) => heightAt(felt, x), s, 1e-4),
        6,
      );
  });

  it('leaves flat ground flat and the height behind a ledge whole', () => {
    expect(movingFootprint(flatSide(), 0.2).samples.every((value) => value === 0)).toBe(true);
    const felt = movingFootprint(ledge, 0.2);
    expect(heightAt(felt, 100)).toBeCloseTo(0.18, 14);
    expect(heightAt(felt, 5.9)).toBe(0);
    expect(heightAt(felt, 5.95)).toBeGreaterThan(0);
  });

  it('turns with the ground when the ground is turned over', () => {
    const over = { ...ledge, samples: ledge.samples.map((value) => -value) };
    const [up, down] = [movingFootprint(ledge, 0.25), movingFootprint(over, 0.25)];
    up.samples.forEach((value, i) => {
      expect(down.samples[i]).toBeCloseTo(-value, 15);
    });
  });
});

describe('ground under two cams', () => {
  const cams = usualCams(0.43, 0.25);

  it('leaves flat ground flat, and far behind a ledge feels its whole height', () => {
    expect(Math.max(...twoCams(flatSide(), cams).samples.map(Math.abs))).toBeLessThan(1e-12);
    const felt = twoCams(ledge, cams);
    expect(heightAt(felt, 4)).toBe(0);
    expect(heightAt(felt, 8)).toBeCloseTo(0.18, 12);
  });

  it('feels a ledge before its centre is there, never less than the ground at its place', () => {
    const felt = twoCams(ledge, cams);
    expect(heightAt(ledge, 5.95)).toBe(0);
    expect(heightAt(felt, 5.95)).toBeGreaterThan(0.01);
    const single = twoCams(ledge, { ...cams, spacing: 1e-3 });
    for (const s of between(5, 8, 60))
      expect(heightAt(single, s)).toBeGreaterThanOrEqual(heightAt(ledge, s) - 1e-6);
  });

  it('keeps the slope of a long ramp; a round wheel stands above it by R·(√(1 + m²) − 1)', () => {
    const round = { halfLength: 0.4, halfHeight: 0.4, order: 2, spacing: 0.3 };
    const felt = twoCams(ramp, round);
    for (const s of between(3.5, 7, 12)) {
      expect(slopeAt(felt, s)).toBeCloseTo(slope, 7);
      expect(heightAt(felt, s) - heightAt(ramp, s)).toBeCloseTo(0.4 * (Math.hypot(1, slope) - 1), 8);
    }
  });

  it('swallows a dip that is shorter than the wheel and rides over a bump of the same size', () => {
    const dip = { ...whoopOf(0.1, 0.3), samples: whoopOf(0.1, 0.3).samples.map((value) => -value) };
    const deepest = (side: SampledSide) =>
      Math.max(...between(-1, 2, 200).map((s) => Math.abs(heightAt(side, s))));
    expect(deepest(twoCams(dip, cams))).toBeLessThan(0.03);
    expect(deepest(twoCams(whoopOf(0.1, 0.3), cams))).toBeGreaterThan(0.08);
  });
});

const whoopOf = (height: number, spacing: number): SampledSide =>
  sampleCourse({ kind: 'whoops', height, spacing, count: 1, start: 0, rightPhase: 0 }).left;

describe('a course as a tyre feels it', () => {
  const track = sampleCourse({ kind: 'ledge', side: 'left', height: 0.1, length: 0.2, start: 3 });

  it('is the ground itself for a point', () => {
    expect(enveloped(track, { kind: 'point' })).toBe(track);
  });

  it('ends later by half its reach, and keeps the side that is flat flat', () => {
    const felt = enveloped(track, { kind: 'footprint', length: 0.3 });
    expect(felt.end).toBeCloseTo(track.end + 0.15, 12);
    expect(felt.right.samples.every((value) => value === 0)).toBe(true);
    expect(heightAt(felt.left, 3.1)).toBeCloseTo(0.05, 6);
  });
});
