import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sampleCourse } from '../../src/course/track.ts';
import { CORNERS } from '../../src/finding/place.ts';
import type { RideModel } from '../../src/ride/model.ts';
import type { RideRun } from '../../src/ride/result.ts';
import { runRide } from '../../src/ride/run.ts';
import { anyCourse } from '../course/any-course.ts';
import { anyModel } from './any-model.ts';
import { assertEnergy, mustFinish } from './energy.ts';
import { evenRig, unevenRig } from './invented-rigs.ts';

/** A rig has seventy numbers: a failing one is told as it was drawn, for shrinking it takes minutes. */
const RUNS = { seed: 20, endOnFailure: true };

/** Every number in a result, by its path. */
function numbersOf(value: unknown, path = 'run', into: [string, number][] = []): [string, number][] {
  if (typeof value === 'number') into.push([path, value]);
  else if (ArrayBuffer.isView(value)) {
    (value as Float64Array).forEach((one, i) => {
      into.push([`${path}[${i}]`, one]);
    });
  } else if (typeof value === 'object' && value !== null) {
    for (const [key, part] of Object.entries(value)) numbersOf(part, `${path}.${key}`, into);
  }
  return into;
}

function expectSane(run: RideRun): void {
  expect(numbersOf(run).filter(([, value]) => !Number.isFinite(value))).toEqual([]);
  for (const corner of CORNERS) {
    const at = run.corners[corner];
    expect(at.airborneShare).toBeGreaterThanOrEqual(0);
    expect(at.airborneShare).toBeLessThanOrEqual(1 + 1e-12);
    for (const value of [at.peakCrush, at.peakStopForce, ...Object.values(at.contacts)]) {
      expect(value).toBeGreaterThanOrEqual(0);
    }
    expect(at.peakShockSpeed.compression).toBeGreaterThanOrEqual(0);
    expect(at.peakShockSpeed.rebound).toBeGreaterThanOrEqual(0);
    if (at.contacts.metal > 0) expect(at.clearance).toBeLessThanOrEqual(0);
    if (at.peakCrush === 0 && at.contacts.metal === 0) expect(at.peakStopForce).toBe(0);
  }
  // At rest both are rounding: the sum is over inner stages too, the peak is not looked for there.
  expect(run.body.rmsAcceleration).toBeLessThanOrEqual(run.body.peakAcceleration * (1 + 1e-9) + 1e-12);
}

describe('any rig that could be built, on any ground that could be driven', () => {
  it('ends with finite figures, shares within their bounds and closed books', () => {
    const statuses = new Set<string>();
    fc.assert(
      fc.property(anyModel, anyCourse, fc.double({ min: 1, max: 20, noNaN: true }), (model, shape, speed) => {
        const run = runRide(model, sampleCourse(shape), { speed, duration: 1.2, historyRate: 20 });
        expect(['finished', 'left-validity']).toContain(run.status);
        statuses.add(run.status);
        expectSane(run);
        assertEnergy(run);
      }),
      { ...RUNS, numRuns: 80 },
    );
    expect(statuses).toContain('finished');
  });

  it('ends so for a drop too', () => {
    fc.assert(
      fc.property(anyModel, fc.double({ min: 0, max: 0.8, noNaN: true }), (model, height) => {
        const run = runRide(model, sampleCourse({ kind: 'drop', height }), { speed: 1, duration: 1.2 });
        expectSane(mustFinish(run));
      }),
      { ...RUNS, numRuns: 40 },
    );
  });
});

describe('a stop that cannot be reached', () => {
  it('has no crush, no force and no contact, and all of its clearance but the travel is left', () => {
    fc.assert(
      fc.property(anyModel, anyCourse, (model, shape) => {
        const far = (end: 'front' | 'rear') => ({
          ...model.axles[end],
          stop: { ...model.axles[end].stop, gap: { left: 9, right: 9 } },
        });
        const out: RideModel = { ...model, axles: { front: far('front'), rear: far('rear') } };
        const run = assertEnergy(runRide(out, sampleCourse(shape), { speed: 6, duration: 0.8 }));
        for (const corner of CORNERS) {
          const { stop, metal } = out.axles[corner.startsWith('front') ? 'front' : 'rear'];
          const side = corner.endsWith('Left') ? 'left' : 'right';
          const at = run.corners[corner];
          expect(at).toMatchObject({ peakCrush: 0, peakStopForce: 0 });
          expect([at.contacts.stop, at.contacts.metal]).toEqual([0, 0]);
          const whole = (9 + metal.atCrush[side]) / stop.ratio;
          expect(at.clearance).toBeCloseTo(whole - at.peakTravel, 12);
        }
      }),
      { ...RUNS, numRuns: 30 },
    );
  });
});

describe('a stop that touches at ride', () => {
  it('holds the rig up higher than its coils do, and books close from the first moment', () => {
    const { front, rear } = evenRig.axles;
    const pressed = { ...front, stop: { ...front.stop, gap: { left: -0.01, right: -0.01 } } };
    const model: RideModel = { ...evenRig, axles: { front: pressed, rear } };
    const flat = sampleCourse({ kind: 'flat', length: 100 });
    const run = mustFinish(runRide(model, flat, { speed: 5, duration: 6, tolerance: 1e-6 }), 1e-6);
    expect(run.corners.frontLeft.peakCrush).toBeGreaterThanOrEqual(0.01);
    expect(run.corners.frontLeft.contacts.stop).toBe(0);
    expect(run.body.heaveAtEnd).toBeGreaterThan(1e-3);
    expect(run.body.pitchAtEnd).toBeLessThan(-1e-3);
  });
});

describe('ground that no rig is made for', () => {
  it.each([
    [
      'a wall under the left at 30 m/s',
      { kind: 'ledge', side: 'left', height: 4, length: 0.5, start: 1 },
      30,
    ],
    [
      'whoops as tall as the rig, sides against each other',
      { kind: 'whoops', height: 3, spacing: 6, count: 5, start: 1, rightPhase: Math.PI },
      20,
    ],
  ] as const)('ends the run with the status that says so: %s', (_name, shape, speed) => {
    const run = runRide(unevenRig, sampleCourse(shape), { speed, duration: 3, historyRate: 50 });
    expect(run.status).toBe('left-validity');
    expect(run.time).toBeLessThan(3);
    expect(run.time).toBeGreaterThan(0);
    expectSane(run);
    // The history ends with the run and not at what was asked for.
    expect(run.history!.count).toBeLessThanOrEqual(Math.floor(run.time * 50) + 1);
  });

  it('that is no number ends the run at once', () => {
    const track = sampleCourse({ kind: 'flat', length: 10 });
    const broken = { ...unevenRig, sprung: { ...unevenRig.sprung, mass: Number.NaN } };
    expect(runRide(broken, track, { speed: 5, duration: 1 })).toMatchObject({
      status: 'left-validity',
      time: 0,
    });
  });
});

describe('a small bump after a long flat', () => {
  it.each([
    ['0.2 m of ledge', { kind: 'ledge', side: 'both', height: 0.04, length: 0.2, start: 60 }],
    [
      'one whoop of 0.3 m',
      { kind: 'whoops', height: 0.04, spacing: 0.3, count: 1, start: 60, rightPhase: 0 },
    ],
  ] as const)('is not jumped by a step that has grown long: %s', (_name, shape) => {
    const drive = (tolerance: number): RideRun =>
      mustFinish(runRide(unevenRig, sampleCourse(shape), { speed: 20, duration: 3.4, tolerance }), tolerance);
    const [coarse, fine] = [1e-2, 1e-6].map(drive);
    expect(fine.corners.frontLeft.peakTravel).toBeGreaterThan(0.005);
    expect(coarse.corners.frontLeft.peakTravel / fine.corners.frontLeft.peakTravel).toBeCloseTo(1, 1);
    expect(coarse.energy.dissipated / fine.energy.dissipated).toBeCloseTo(1, 1);
  });
});

describe('a run that is not let to its end', () => {
  const track = sampleCourse({ kind: 'whoops', height: 0.3, spacing: 5, count: 6, start: 1, rightPhase: 1 });

  it('says that it ran out of steps, and how far it came', () => {
    const run = runRide(unevenRig, track, { speed: 9, duration: 4, stepLimit: 300 });
    expect(run.status).toBe('step-limit');
    expect(run.counters.steps + run.counters.rejected).toBe(300);
    expect(run.time).toBeGreaterThan(0.1);
    expect(run.time).toBeLessThan(4);
    expectSane(run);
    assertEnergy(run);
  });

  it('says that it was called off, and is asked about it no more than every thousand steps', () => {
    let asked = 0;
    const run = runRide(unevenRig, track, {
      speed: 9,
      duration: 4,
      tolerance: 1e-6,
      isCancelled: () => {
        asked += 1;
        return asked === 3;
      },
    });
    expect(run.status).toBe('cancelled');
    expect(asked).toBe(3);
    expect(run.counters.steps).toBeGreaterThanOrEqual(3000);
    expectSane(run);
  });

  it('is the first part of the run that is', () => {
    const options = { speed: 9, historyRate: 100 };
    const whole = runRide(unevenRig, track, { ...options, duration: 2, tolerance: 1e-6 });
    const part = runRide(unevenRig, track, { ...options, duration: 1.5, tolerance: 1e-6 });
    part.history!.coordinates.forEach((value, i) => {
      expect(Math.abs(value - whole.history!.coordinates[i])).toBeLessThan(1e-6);
    });
  });
});

describe('the same run', () => {
  it('is the same twice, to the last bit', () => {
    const drive = () =>
      runRide(
        unevenRig,
        sampleCourse({ kind: 'whoops', height: 0.3, spacing: 5, count: 4, start: 1, rightPhase: 1 }),
        { speed: 9, duration: 3, historyRate: 100 },
      );
    expect(drive()).toEqual(drive());
  });

  it('survives being sent to another thread', () => {
    const run = runRide(unevenRig, sampleCourse({ kind: 'drop', height: 0.2 }), {
      speed: 1,
      duration: 0.5,
      historyRate: 50,
    });
    expect(structuredClone(run)).toEqual(run);
  });
});
