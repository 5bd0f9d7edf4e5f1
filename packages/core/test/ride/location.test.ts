import { describe, expect, it } from 'vitest';
import { sampleCourse } from '../../src/course/track.ts';
import { CORNERS } from '../../src/finding/place.ts';
import { hermiteValue } from '../../src/numerics/hermite.ts';
import type { RideModel } from '../../src/ride/model.ts';
import type { RideRun } from '../../src/ride/result.ts';
import { runRide } from '../../src/ride/run.ts';
import type { CourseShape } from '../../src/rig/course-spec.ts';
import { underControl } from '../shelf/drive.ts';
import { makeStepper } from '../shelf/stepper.ts';
import { mustFinish } from './energy.ts';
import { unevenRig } from './invented-rigs.ts';
import { PLAIN_SIZE, plainRig } from './plain-rig.ts';

/**
 * One ride solved twice with the same step formula, the same accepted error and the same rule for the next step:
 * by the engine, which finds every switch in time, and by error control alone over laws with their kinks in them.
 */

interface Solved {
  readonly evaluations: number;
  readonly rejected: number;
  /** Peak crush of each corner [m]. */
  readonly peakCrush: readonly number[];
}

type Counted = RideRun['counters'];

interface Drive {
  readonly course: CourseShape;
  readonly speed: number;
  readonly duration: number;
}

const located = (model: RideModel, { course, ...drive }: Drive, tolerance: number): Solved => {
  const run = mustFinish(runRide(model, sampleCourse(course), { ...drive, tolerance }), tolerance);
  return { ...run.counters, peakCrush: CORNERS.map((corner) => run.corners[corner].peakCrush) };
};

function blind(model: RideModel, { course, speed, duration }: Drive, tolerance: number): Solved {
  const law = plainRig(model, course, speed);
  const state = new Float64Array(PLAIN_SIZE);
  const slope = new Float64Array(PLAIN_SIZE);
  // The engine's units of error: 20 mm, 0.02 rad, 0.6 m/s, 0.6 rad/s.
  const stepper = makeStepper(
    (time, q, v, out) => {
      state.set(q);
      state.set(v, 7);
      law(time, state, slope);
      out.set(slope.subarray(7));
    },
    7,
    { position: 0.02 * tolerance, speed: 0.6 * tolerance },
  );
  const { initialLift } = sampleCourse(course);
  for (const i of [0, 3, 5]) stepper.start.position[i] = initialLift;
  stepper.evaluateStart(0);
  // Crush inside a step is read off the same cubic as the engine's.
  const crushOf = (q: Float64Array, k: number, gap: number): number => {
    const front = k < 2;
    const { stop } = front ? model.axles.front : model.axles.rear;
    const station = (k % 2 === 0 ? 1 : -1) * stop.halfStation;
    const x = front ? model.sprung.toFrontAxle : -model.sprung.toRearAxle;
    const axle = front ? 3 : 5;
    const travel = q[axle] + station * q[axle + 1] - (q[0] - x * q[1] + station * q[2]);
    return stop.ratio * travel - gap * (k % 2 === 0 ? stop.gap.left : stop.gap.right);
  };
  const peakCrush = [0, 0, 0, 0];
  const before = {
    crush: [0, 1, 2, 3].map((k) => crushOf(stepper.start.position, k, 1)),
    speed: [0, 0, 0, 0],
  };
  const watch = (step: number): void => {
    const { position, speed: rates } = stepper.start;
    for (let k = 0; k < 4; k += 1) {
      const crush = crushOf(position, k, 1);
      const rate = crushOf(rates, k, 0);
      for (let part = 1; part <= 16; part += 1) {
        const inside = hermiteValue(before.crush[k], before.speed[k], crush, rate, step, part / 16);
        peakCrush[k] = Math.max(peakCrush[k], inside);
      }
      before.crush[k] = crush;
      before.speed[k] = rate;
    }
  };
  const { evaluations, rejected } = underControl(stepper, { landings: [duration], firstStep: 1e-3, watch });
  return { evaluations, rejected, peakCrush };
}

const worst = (one: Solved, reference: Solved): number =>
  Math.max(...reference.peakCrush.map((value, k) => Math.abs(one.peakCrush[k] - value)));

/** Counters of the engine at 1e-4, looked at and kept: a change by more than a tenth has to be looked at again. */
const DRIVES: readonly (readonly [string, Drive, Counted])[] = [
  [
    'a drop into metal',
    { course: { kind: 'drop', height: 0.5 }, speed: 1, duration: 1 },
    { steps: 275, rejected: 24, events: 41, evaluations: 1254 },
  ],
  [
    'a ledge under the left',
    {
      course: { kind: 'ledge', side: 'left', height: 0.14, length: 0.4, start: 0.5 },
      speed: 7,
      duration: 1.2,
    },
    { steps: 236, rejected: 26, events: 12, evaluations: 1065 },
  ],
  [
    'two hard whoops',
    {
      course: { kind: 'whoops', height: 0.3, spacing: 5, count: 2, start: 0.5, rightPhase: 0 },
      speed: 10,
      duration: 1.5,
    },
    { steps: 494, rejected: 49, events: 65, evaluations: 2256 },
  ],
];

// The numbers of both ways stand side by side in docs/theory/ride.md.
describe.each(DRIVES)('finding switches in time, over %s', (_name, drive, counted) => {
  const reference = located(unevenRig, drive, 1e-8);

  it.each([1e-3, 1e-4, 1e-5])(
    'costs no more than error control alone at %f, with a third fewer failed steps',
    (tolerance) => {
      const ours = located(unevenRig, drive, tolerance);
      const theirs = blind(unevenRig, drive, tolerance);
      expect(ours.evaluations).toBeLessThan(theirs.evaluations);
      expect(ours.rejected).toBeLessThan(0.67 * theirs.rejected);
    },
  );

  it('is as near to the truth, within a third: the same accepted error holds both', () => {
    // Over several accepted errors: any single one may hit the truth by luck.
    const errors = [1e-3, 3e-4, 1e-4, 3e-5, 1e-5].map((tolerance) => [
      worst(located(unevenRig, drive, tolerance), reference),
      worst(blind(unevenRig, drive, tolerance), reference),
    ]);
    const ratios = errors.map(([ours, theirs]) => Math.log(ours / theirs));
    expect(Math.exp(ratios.reduce((sum, x) => sum + x, 0) / ratios.length)).toBeLessThan(1.3);
  });

  it('counts its work, the same as when it was last looked at, within a tenth', () => {
    const { counters } = runRide(unevenRig, sampleCourse(drive.course), { ...drive, tolerance: 1e-4 });
    for (const [name, count] of Object.entries(counted)) {
      const ours = counters[name as keyof Counted];
      expect(Math.abs(ours - count), name).toBeLessThanOrEqual(0.1 * count);
    }
  });
});
