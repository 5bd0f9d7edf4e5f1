import { describe, expect, it } from 'vitest';
import { sampleCourse } from '../../src/course/track.ts';
import { CORNERS } from '../../src/finding/place.ts';
import { cubicValue, monotoneCubic } from '../../src/numerics/monotone-cubic.ts';
import type { RideModel } from '../../src/ride/model.ts';
import { runRide } from '../../src/ride/run.ts';
import type { CourseShape } from '../../src/rig/course-spec.ts';
import { mustFinish } from './energy.ts';
import { unevenRig } from './invented-rigs.ts';
import { evenly, PLAIN_SIZE, plainRig } from './plain-rig.ts';

// Whole rides against two solvers in another language: validation/ride-cases. Their rigs have no travel ratios and no
// side that differs from the other, so here the same equations are written down a second time, plainly.

const TOLERANCE = 1e-6;

interface Drive {
  readonly model?: RideModel;
  readonly course: CourseShape;
  readonly speed: number;
  readonly duration: number;
  readonly steps: number;
}

function bothWays({ model = unevenRig, course, speed, duration, steps }: Drive) {
  const track = sampleCourse(course);
  const options = { speed, duration, tolerance: TOLERANCE, historyRate: 1 / duration };
  const run = mustFinish(runRide(model, track, options), TOLERANCE);
  const start = new Float64Array(PLAIN_SIZE);
  for (const i of [0, 3, 5]) start[i] = track.initialLift;
  const crush = new Float64Array(4);
  const force = new Float64Array(4);
  const curves = CORNERS.map((_, k) => {
    const { stop } = k < 2 ? model.axles.front : model.axles.rear;
    return monotoneCubic(stop.crush, stop.force);
  });
  // Newly made contacts, counted from one even step to the next.
  const held = CORNERS.map(() => ({ stop: false, metal: false, droop: false }));
  const contacts = CORNERS.map(() => ({ stop: 0, metal: 0, droop: 0 }));
  const end = evenly(plainRig(model, course, speed), start, {
    duration,
    steps,
    watch: (y) => {
      CORNERS.forEach((_, k) => {
        const { sprung, axles } = model;
        const axle = k < 2 ? axles.front : axles.rear;
        const station = (k % 2 === 0 ? 1 : -1) * axle.stop.halfStation;
        const xa = k < 2 ? sprung.toFrontAxle : -sprung.toRearAxle;
        const [z, psi] = k < 2 ? [y[3], y[4]] : [y[5], y[6]];
        const press = (at: number): number => z + at * psi - (y[0] - xa * y[1] + at * y[2]);
        const side = k % 2 === 0 ? 'left' : 'right';
        const now = axle.stop.ratio * press(station) - axle.stop.gap[side];
        crush[k] = Math.max(crush[k], now);
        const speedOf = (at: number): number =>
          (k < 2 ? y[10] + at * y[11] : y[12] + at * y[13]) - (y[7] - xa * y[8] + at * y[9]);
        const pressed =
          (now > 0 ? cubicValue(curves[k], now) : 0) +
          axle.metal.rate * Math.max(0, now - axle.metal.atCrush[side]);
        const gain = Math.max(0, 1 + axle.stop.rateFactor * axle.stop.ratio * speedOf(station));
        force[k] = Math.max(force[k], gain * pressed);
        const touched = {
          stop: now > 0,
          metal: now > axle.metal.atCrush[side],
          droop: press(Math.sign(station) * axle.shock.halfStation) < -axle.droopLimit.at,
        };
        for (const name of ['stop', 'metal', 'droop'] as const) {
          if (touched[name] && !held[k][name]) contacts[k][name] += 1;
        }
        held[k] = touched;
      });
    },
  });
  return { run, end: [...end.subarray(0, 7)], crush: [...crush], force: [...force], contacts };
}

/** Metal of the front stands before its stop is touched: a mount that was never checked. */
const metalFirst: RideModel = {
  ...unevenRig,
  axles: {
    ...unevenRig.axles,
    front: { ...unevenRig.axles.front, metal: { atCrush: { left: -0.02, right: -0.015 }, rate: 2e7 } },
  },
};

describe('a ride of an uneven rig with travel ratios', () => {
  it.each<[string, Drive]>([
    [
      'a ledge under the left',
      {
        course: { kind: 'ledge', side: 'left', height: 0.12, length: 0.4, start: 0.5 },
        speed: 6,
        duration: 1.2,
        steps: 6_000,
      },
    ],
    [
      'whoops with a phase, into metal and off the ground',
      {
        course: { kind: 'whoops', height: 0.28, spacing: 5, count: 2, start: 0.3, rightPhase: 1 },
        speed: 9,
        duration: 1.3,
        steps: 8_000,
      },
    ],
    ['a drop', { course: { kind: 'drop', height: 0.3 }, speed: 1, duration: 0.6, steps: 6_000 }],
    [
      'a drop onto metal that stands before the stop',
      { model: metalFirst, course: { kind: 'drop', height: 0.1 }, speed: 1, duration: 0.5, steps: 6_000 },
    ],
  ])('over %s ends where the plainly written equations do', (_name, drive) => {
    const { run, end, crush, force, contacts } = bothWays(drive);
    const last = run.history!.coordinates.slice(-7);
    // Even steps of 0.1 to 0.2 ms across kinks, metal at 20 MN/m: good to some micrometres, whatever the engine is.
    end.forEach((value, i) => {
      expect(Math.abs(last[i] - value), `coordinate ${i}`).toBeLessThan(2e-5);
    });
    CORNERS.forEach((corner, k) => {
      expect(Math.abs(run.corners[corner].peakCrush - Math.max(0, crush[k])), corner).toBeLessThan(5e-6);
    });
    CORNERS.forEach((corner, k) => {
      // Read at the ends of even steps, of which a hit on metal holds a hundred: low by less than 0.2 %.
      const { peakStopForce } = run.corners[corner];
      expect(Math.abs(peakStopForce - force[k]), corner).toBeLessThanOrEqual(2e-3 * peakStopForce);
      expect(run.corners[corner].contacts, corner).toMatchObject(contacts[k]);
    });
    expect(Object.values(run.corners).some(({ peakStopForce }) => peakStopForce > 1000)).toBe(true);
  });
});
