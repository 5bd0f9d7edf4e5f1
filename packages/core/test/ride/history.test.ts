import { describe, expect, it } from 'vitest';
import { sampleCourse } from '../../src/course/track.ts';
import { CORNERS, type Side } from '../../src/finding/place.ts';
import { runRide } from '../../src/ride/run.ts';
import type { CourseShape } from '../../src/rig/course-spec.ts';
import { groundAt } from '../course/ground-formulas.ts';
import { mustFinish } from './energy.ts';
import { unevenRig } from './invented-rigs.ts';

const SHAPE: CourseShape = {
  kind: 'whoops',
  height: 0.26,
  spacing: 4.5,
  count: 3,
  start: 1,
  rightPhase: 0.6,
};
const SPEED = 9;
const RATE = 2000;
const run = mustFinish(
  runRide(unevenRig, sampleCourse(SHAPE), { speed: SPEED, duration: 2, historyRate: RATE }),
);
const history = run.history!;
const samples = Array.from({ length: history.count }, (_, k) => k);

describe('the history of a run', () => {
  it('has a sample at every tick from the start to the end', () => {
    expect(history.rate).toBe(RATE);
    expect(history.count).toBe(2 * RATE + 1);
    expect(history.coordinates).toHaveLength(7 * history.count);
    for (const corners of [
      history.crush,
      history.clearance,
      history.stopForce,
      history.travel,
      history.ground,
    ])
      expect(corners).toHaveLength(4 * history.count);
    expect(history.bodyAcceleration).toHaveLength(history.count);
  });

  it('is left out when nobody asks for it, and changes nothing of the run', () => {
    const without = runRide(unevenRig, sampleCourse(SHAPE), { speed: SPEED, duration: 2 });
    expect(without.history).toBeNull();
    expect(without).toEqual({ ...run, history: null });
  });

  it('shows the ground of the course, a wheelbase later under the rear axle', () => {
    const wheelbase = unevenRig.sprung.toFrontAxle + unevenRig.sprung.toRearAxle;
    for (const k of samples) {
      CORNERS.forEach((corner, c) => {
        const side: Side = corner.endsWith('Left') ? 'left' : 'right';
        const behind = corner.startsWith('rear') ? wheelbase : 0;
        const { height } = groundAt(SHAPE, side, (SPEED * k) / RATE - behind);
        expect(Math.abs(history.ground[4 * k + c] - height)).toBeLessThan(1e-7);
      });
    }
  });

  it('shows travel as it follows from its coordinates', () => {
    for (const k of samples) {
      const [zs, pitch, roll, zf, rf, zr, rr] = history.coordinates.slice(7 * k, 7 * k + 7);
      const front = unevenRig.axles.front.stop.halfStation;
      const rear = unevenRig.axles.rear.stop.halfStation;
      const { toFrontAxle: a, toRearAxle: b } = unevenRig.sprung;
      const travels = [
        zf + front * rf - (zs - a * pitch + front * roll),
        zf - front * rf - (zs - a * pitch - front * roll),
        zr + rear * rr - (zs + b * pitch + rear * roll),
        zr - rear * rr - (zs + b * pitch - rear * roll),
      ];
      travels.forEach((travel, c) => {
        expect(Math.abs(history.travel[4 * k + c] - travel)).toBeLessThan(1e-14);
      });
    }
  });

  it('shows crush and clearance as they follow from travel', () => {
    CORNERS.forEach((corner, c) => {
      const { stop, metal } = unevenRig.axles[corner.startsWith('front') ? 'front' : 'rear'];
      const side: Side = corner.endsWith('Left') ? 'left' : 'right';
      for (const k of samples) {
        const travel = history.travel[4 * k + c];
        const crush = Math.max(0, stop.ratio * travel - stop.gap[side]);
        const clearance = (stop.gap[side] + metal.atCrush[side]) / stop.ratio - travel;
        expect(history.crush[4 * k + c]).toBeCloseTo(crush, 14);
        expect(history.clearance[4 * k + c]).toBeCloseTo(clearance, 14);
        expect(history.stopForce[4 * k + c] > 0).toBe(history.crush[4 * k + c] > 0);
      }
    });
  });

  it('never goes beyond the peaks of the run, and comes near them', () => {
    const largest = (of: Float64Array, c: number, every: number): number =>
      samples.reduce((most, k) => Math.max(most, Math.abs(of[every * k + c])), 0);
    CORNERS.forEach((corner, c) => {
      const { peakCrush, peakStopForce, clearance } = run.corners[corner];
      for (const [seen, peak] of [
        [largest(history.crush, c, 4), peakCrush],
        [largest(history.stopForce, c, 4), peakStopForce],
        [largest(history.bodyAcceleration, 0, 1), run.body.peakAcceleration],
      ]) {
        // Peaks inside a step are read off parabolas through five places in it: good to a thousandth.
        expect(seen).toBeLessThan(peak * 1.001);
        expect(seen).toBeGreaterThan(peak * 0.95);
      }
      const least = samples.reduce((low, k) => Math.min(low, history.clearance[4 * k + c]), Infinity);
      expect(least).toBeGreaterThan(clearance - 1e-9);
      expect(least).toBeLessThan(clearance + 1e-4);
    });
  });

  it('has the r.m.s. that the run tells', () => {
    const square = history.bodyAcceleration.reduce((sum, a) => sum + a * a, 0) / history.count;
    expect(Math.sqrt(square) / run.body.rmsAcceleration).toBeCloseTo(1, 2);
  });

  it('ends where the run does', () => {
    const last = history.coordinates.slice(-7);
    expect(last[0]).toBeCloseTo(run.body.heaveAtEnd, 9);
    expect(last[1]).toBeCloseTo(run.body.pitchAtEnd, 9);
  });
});
