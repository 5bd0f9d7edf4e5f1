import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sampleCourse } from '../../src/course/track.ts';
import { CORNERS, type Corner } from '../../src/finding/place.ts';
import type { RideRun } from '../../src/ride/result.ts';
import { runRide } from '../../src/ride/run.ts';
import type { CourseShape } from '../../src/rig/course-spec.ts';
import { anyLedge, anyWaves, mirrored } from '../course/any-course.ts';
import { anyModel } from './any-model.ts';
import { assertEnergy, mustFinish } from './energy.ts';
import { inOtherUnits, mirroredRig, unevenRig } from './invented-rigs.ts';

const OTHER_SIDE: Readonly<Record<Corner, Corner>> = {
  frontLeft: 'frontRight',
  frontRight: 'frontLeft',
  rearLeft: 'rearRight',
  rearRight: 'rearLeft',
};

const WHOOPS: CourseShape = {
  kind: 'whoops',
  height: 0.26,
  spacing: 4.5,
  count: 2,
  start: 1,
  rightPhase: 0.8,
};
const FINE = 1e-7;

describe('a mirror', () => {
  it('changes left and right of every result, bit for bit', () => {
    fc.assert(
      fc.property(anyModel, fc.oneof(anyLedge, anyWaves), (model, shape) => {
        const options = { speed: 8, duration: 0.9 };
        const one = runRide(model, sampleCourse(shape), options);
        const other = runRide(mirroredRig(model), sampleCourse(mirrored(shape)), options);
        expect(other.status).toBe(one.status);
        assertEnergy(one);
        for (const corner of CORNERS) expect(other.corners[OTHER_SIDE[corner]]).toEqual(one.corners[corner]);
        expect(other.body).toEqual(one.body);
        expect(other.counters).toEqual(one.counters);
      }),
      { seed: 20, numRuns: 25, endOnFailure: true },
    );
  });
});

/** Figures that do not depend on how long the ground was flat before. */
const headline = (run: RideRun): readonly number[] => [
  ...CORNERS.flatMap((corner) => {
    const { peakCrush, peakStopForce, airborneShare } = run.corners[corner];
    return [peakCrush, peakStopForce / 1e6, airborneShare * run.time];
  }),
  run.body.rmsAcceleration ** 2 * run.time,
  run.body.peakPitch,
  run.body.heaveAtEnd,
];

describe('a course that begins later', () => {
  it('does the same to the rig, as much later', () => {
    const drive = (later: number): RideRun => {
      const track = sampleCourse({ ...WHOOPS, start: WHOOPS.start + later } as CourseShape);
      const options = { speed: 9, duration: 1.4 + later / 9, tolerance: FINE };
      return mustFinish(runRide(unevenRig, track, options), FINE);
    };
    const reference = headline(drive(0));
    for (const later of [0.37, 2.5]) {
      headline(drive(later)).forEach((value, i) => {
        // Steps fall elsewhere: the same to what the accepted error leaves after some dozen hits.
        expect(Math.abs(value - reference[i])).toBeLessThan(2e-4 * Math.max(0.02, Math.abs(reference[i])));
      });
    }
  });
});

describe('the unit of', () => {
  const drive = (unit: { mass: number; length: number; time: number }, tolerance: number): RideRun => {
    const model = inOtherUnits(unevenRig, unit);
    const { length, time } = unit;
    const shape: CourseShape = {
      ...WHOOPS,
      height: 0.26 * length,
      spacing: 4.5 * length,
      start: length,
    };
    return runRide(model, sampleCourse(shape), {
      speed: (9 * length) / time,
      duration: 1.4 * time,
      tolerance,
    });
  };
  const plain = mustFinish(drive({ mass: 1, length: 1, time: 1 }, FINE), FINE);

  it('mass does not matter: forces grow with it, motions stay', () => {
    const heavy = drive({ mass: 4, length: 1, time: 1 }, FINE);
    expect(heavy.counters).toEqual(plain.counters);
    for (const corner of CORNERS) {
      const { peakStopForce, ...motions } = plain.corners[corner];
      expect(heavy.corners[corner]).toEqual({ ...motions, peakStopForce: 4 * peakStopForce });
    }
    expect(heavy.body).toEqual(plain.body);
    expect(heavy.energy.dissipated).toBe(4 * plain.energy.dissipated);
  });

  it('length and time does not matter either, but for where steps fall', () => {
    const unit = { mass: 1, length: 1.7, time: 1.3 };
    const other = drive(unit, FINE);
    const perAcceleration = unit.time ** 2 / unit.length;
    for (const corner of CORNERS) {
      const [ours, theirs] = [other.corners[corner], plain.corners[corner]];
      expect(ours.peakCrush / unit.length / theirs.peakCrush).toBeCloseTo(1, 3);
      expect((ours.peakStopForce * perAcceleration) / theirs.peakStopForce).toBeCloseTo(1, 3);
      expect(Math.abs(ours.airborneShare - theirs.airborneShare)).toBeLessThan(1e-4);
      expect(ours.contacts).toEqual(theirs.contacts);
    }
    expect((other.body.rmsAcceleration * perAcceleration) / plain.body.rmsAcceleration).toBeCloseTo(1, 3);
  });
});
