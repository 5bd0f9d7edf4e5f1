import { describe, expect, it } from 'vitest';
import { sampleCourse } from '../../src/course/track.ts';
import { CORNERS } from '../../src/finding/place.ts';
import type { RideRun } from '../../src/ride/result.ts';
import { DEFAULT_TOLERANCE, runRide } from '../../src/ride/run.ts';
import type { CourseShape } from '../../src/rig/course-spec.ts';
import { mustFinish } from './energy.ts';
import { unevenRig } from './invented-rigs.ts';

// Error against accepted error over whole reference rides: docs/theory/ride.md.

const RIDES: readonly (readonly [string, CourseShape, { speed: number; duration: number }])[] = [
  ['a drop into metal', { kind: 'drop', height: 0.5 }, { speed: 1, duration: 1 }],
  [
    'a ledge under the left',
    { kind: 'ledge', side: 'left', height: 0.14, length: 0.4, start: 0.5 },
    { speed: 7, duration: 1.2 },
  ],
];

const FIGURES: readonly (readonly [string, (run: RideRun) => readonly number[]])[] = [
  ['peak crush', (run) => CORNERS.map((corner) => run.corners[corner].peakCrush)],
  ['peak stop force', (run) => CORNERS.map((corner) => run.corners[corner].peakStopForce)],
  ['peak body acceleration', (run) => [run.body.peakAcceleration]],
  ['r.m.s. of body acceleration', (run) => [run.body.rmsAcceleration]],
];

describe.each(RIDES)('over %s', (_name, shape, options) => {
  const drive = (tolerance: number): RideRun =>
    mustFinish(runRide(unevenRig, sampleCourse(shape), { ...options, tolerance }), tolerance);
  const reference = drive(1e-8);
  const accepted = [1e-2, 1e-3, 1e-4, 1e-5, 1e-6];
  const runs = accepted.map(drive);

  it.each(FIGURES)('the %s converges as less error is accepted', (_figure, of) => {
    const right = of(reference);
    const size = Math.max(...right);
    const errors = runs.map((run) =>
      Math.max(...of(run).map((value, k) => Math.abs(value - right[k]) / size)),
    );
    // Four decades of accepted error take away at least three: the error is about in proportion, not stuck.
    expect(errors[4]).toBeLessThan(1e-3 * errors[0] + 1e-7);
    expect(errors[4]).toBeLessThan(2e-5);
  });

  it('the energy books close the better', () => {
    const open = runs.map((run) => run.energy.relativeResidual);
    expect(open[4]).toBeLessThan(1e-2 * open[0]);
  });

  it('the usual accepted error keeps peak crush to 0.1 % and the r.m.s. to 0.1 %', () => {
    const usual = drive(DEFAULT_TOLERANCE);
    for (const corner of CORNERS) {
      const right = reference.corners[corner].peakCrush;
      if (right > 1e-3) expect(Math.abs(usual.corners[corner].peakCrush / right - 1)).toBeLessThan(1e-3);
    }
    expect(Math.abs(usual.body.rmsAcceleration / reference.body.rmsAcceleration - 1)).toBeLessThan(1e-3);
  });

  it('contacts are the same however much error is accepted', () => {
    for (const run of runs.slice(2)) {
      for (const corner of CORNERS)
        expect(run.corners[corner].contacts).toEqual(reference.corners[corner].contacts);
    }
  });
});
