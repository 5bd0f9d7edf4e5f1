import { describe, expect, it } from 'vitest';
import { CORNERS } from '../../src/finding/place.ts';
import { FASTEST, SLOWEST } from '../../src/jobs/driving.ts';
import type { RideAnswer } from '../../src/jobs/protocol.ts';
import { rideRig } from '../../src/jobs/ride.ts';
import type { Reading } from '../../src/rig/reading.ts';
import type { Rig } from '../../src/rig/rig.ts';
import { assertEnergy } from '../ride/energy.ts';
import { asked, must, ochre, rode } from './ochre.ts';

const SETUPS = ['as-it-is', 'soft-stop-bolted-in', 'soft-stop-seat-down'] as const;

const figuresOf = (answer: RideAnswer) => [
  ...CORNERS.flatMap((corner) => Object.values(answer.corners[corner])),
  answer.body.peakAcceleration,
  answer.body.rmsAcceleration,
];

describe('a question that cannot be answered', () => {
  it.each([0, -9, 0.09, 60.1, 3e8, Number.NaN, Infinity])('names %f m/s as no speed to drive at', (speed) => {
    expect(rideRig(asked({ speed }))).toEqual({
      ok: false,
      problems: [
        {
          code: 'ask-speed-absurd',
          where: { key: 'speed' },
          found: `${speed} m/s`,
          accepted: expect.stringContaining('mph'),
        },
      ],
    });
  });

  it('is not one at the slowest and the fastest speed', () => {
    const course = { kind: 'flat', length: 5 } as const;
    for (const speed of [SLOWEST, FASTEST])
      expect(rideRig(asked({ speed, course, trials: 0 })).ok).toBe(true);
  });

  it('names a setup that the rig does not have, and those that it has', () => {
    expect(rideRig(asked({ setup: 'softer' }))).toMatchObject({
      ok: false,
      problems: [
        {
          code: 'ask-unknown-setup',
          found: 'softer',
          accepted: expect.stringContaining('soft-stop-bolted-in'),
        },
      ],
    });
  });

  it('names the reading that a setup still needs', () => {
    const unknown = { ...ochre.front.stop, freeLength: null };
    const rig = { ...ochre, front: { ...ochre.front, stop: unknown } };
    expect(rideRig(asked({ rig, setup: 'soft-stop-bolted-in' }))).toMatchObject({
      ok: false,
      problems: [{ code: 'rig-needs-reading', where: { key: 'front.stop.freeLength' } }],
    });
  });
});

describe.each(SETUPS)('a ride of Ochre over its whoops, %s', (setup) => {
  const answer = rode({ setup, historyRate: 100 });

  it('finishes with its energy books closed and says what was asked', () => {
    expect(answer).toMatchObject({ rig: 'Ochre', setup, course: 'whoops', speed: 9 });
    expect(answer.run.status).toBe('finished');
    assertEnergy(answer.run);
  });

  it('gives the figures of the nominal run, each with an interval', () => {
    for (const corner of CORNERS) {
      const { peakCrush, clearance, peakStopForce, airborneShare } = answer.corners[corner];
      expect(answer.run.corners[corner]).toMatchObject({
        peakCrush: peakCrush.value,
        clearance: clearance.value,
        peakStopForce: peakStopForce.value,
        airborneShare: airborneShare.value,
      });
      expect([
        peakCrush.dimension,
        clearance.dimension,
        peakStopForce.dimension,
        airborneShare.dimension,
      ]).toEqual(['length', 'length', 'force', 'ratio']);
    }
    for (const { value, tolerance } of figuresOf(answer)) {
      expect(Number.isFinite(value)).toBe(true);
      expect(tolerance).toBeGreaterThanOrEqual(0);
      expect(Number.isFinite(tolerance)).toBe(true);
    }
    expect(answer.corners.frontLeft.clearance.tolerance).toBeGreaterThan(1e-4);
    expect(answer.body.rmsAcceleration.tolerance).toBeGreaterThan(1e-3);
  });

  it('runs until the rear axle has passed the last whoop', () => {
    const { shape } = ochre.courses.whoops;
    if (shape.kind !== 'whoops') throw new Error('these are no whoops');
    const end = shape.start + shape.count * shape.spacing + ochre.wheelbase.value;
    expect(answer.run.time).toBeGreaterThan(end / 9);
    const ground = answer.run.history!.ground.slice(-4);
    expect([...ground]).toEqual([0, 0, 0, 0]);
  });

  it('has its findings worst first, one of a kind for each place', () => {
    const rank = { over: 0, unproven: 1, note: 2, fine: 3 };
    const ranks = answer.findings.map(({ severity }) => rank[severity]);
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    const ids = answer.findings.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(answer.findings.length).toBeGreaterThanOrEqual(2);
  });

  it('survives being sent to another thread', () => {
    expect(structuredClone(answer)).toEqual(answer);
  });
});

describe('the interval of a ride', () => {
  it('is unknown without trials, and with one', () => {
    for (const trials of [0, 1]) {
      const tolerances = figuresOf(rode({ trials })).map(({ tolerance }) => tolerance);
      expect(new Set(tolerances)).toEqual(new Set([null]));
    }
  });

  it('leaves the run at the nominal readings as it is', () => {
    expect(rode({ trials: 3 }).run).toEqual(rode({ trials: 0 }).run);
  });

  it('is the same for the same question', () => {
    expect(rode()).toEqual(rode());
  });

  it('is another, of about the same size, from another seed', () => {
    const [one, other] = [1, 2].map((seed) => rode({ seed, trials: 24 }));
    expect(other.run).toEqual(one.run);
    const [a, b] = [one, other].map((answer) => answer.corners.frontLeft.clearance.tolerance!);
    expect(b).not.toBe(a);
    expect(b / a).toBeGreaterThan(0.5);
    expect(b / a).toBeLessThan(2);
  });

  it('is nothing when every reading is exact', () => {
    const exact = <T>(value: T): T => {
      if (typeof value !== 'object' || value === null) return value;
      if (Array.isArray(value)) return value.map(exact) as T;
      const copy = Object.fromEntries(Object.entries(value).map(([key, part]) => [key, exact(part)]));
      return ('toleranceOrigin' in copy ? { ...copy, plus: 0, minus: 0 } : copy) as T;
    };
    const answer = rode({ rig: exact(ochre), trials: 4 });
    const nominal = rode({ trials: 0 });
    expect(answer.run).toEqual(nominal.run);
    for (const { value, tolerance } of figuresOf(answer)) {
      // What is left is the coarser step of trials: 2 % of the figure at most, and peaks of force are the worst of it.
      expect(tolerance).toBeLessThanOrEqual(0.02 * Math.abs(value) + 1e-6);
    }
  });

  it('grows with the tolerance of what was measured', () => {
    const vague = (reading: Reading): Reading => ({ ...reading, plus: 0.02, minus: 0.02 });
    const { gap } = ochre.front.stopMount;
    const both = { left: vague(gap.left), right: vague(gap.right) };
    const rig = { ...ochre, front: { ...ochre.front, stopMount: { ...ochre.front.stopMount, gap: both } } };
    const crush = (of: Rig) =>
      rode({ rig: of, courseName: 'ledge', speed: 5, trials: 12 }).corners.frontLeft.peakCrush.tolerance!;
    expect(crush(rig)).toBeGreaterThan(2 * crush(ochre));
  });
});

describe('progress of a ride', () => {
  it('never falls and ends with the whole', () => {
    const shares: number[] = [];
    must(rideRig(asked(), (share) => shares.push(share)));
    expect(shares.length).toBeGreaterThanOrEqual(6);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares[0]).toBeGreaterThan(0);
    expect(shares[shares.length - 1]).toBe(1);
  });
});

describe('the courses of Ochre', () => {
  it.each(Object.keys(ochre.courses))('can be ridden: %s', (courseName) => {
    const answer = rode({ courseName, speed: ochre.courses[courseName].speed ?? 5, trials: 2 });
    expect(answer.run.status).toBe('finished');
    assertEnergy(answer.run);
    expect(answer.findings.length).toBeGreaterThan(0);
  });

  it('let the rig go when they are a drop: it lands, whatever the speed', () => {
    const [slow, fast] = [2, 20].map((speed) => rode({ courseName: 'drop', speed, trials: 0 }));
    expect(fast.run).toEqual(slow.run);
    expect(slow.run.time).toBe(3);
    expect(slow.corners.frontLeft.airborneShare.value).toBeGreaterThan(0.05);
    expect(slow.corners.frontLeft.peakCrush.value).toBeGreaterThan(0.005);
  });

  it('leave the rig alone when they are flat', () => {
    const { corners, body, findings } = rode({ courseName: 'flat', trials: 4 });
    for (const corner of CORNERS)
      expect(corners[corner].peakCrush).toEqual({ dimension: 'length', value: 0, tolerance: 0 });
    expect(body.peakAcceleration.value).toBeLessThan(1e-9);
    expect(findings.map(({ severity }) => severity)).not.toContain('over');
  });
});

describe('what a faster drive does to Ochre as it is', () => {
  it('is a harder ride over the same whoops, up to the speed that it is asked for', () => {
    const rms = [4, 6, 9].map((speed) => rode({ speed, trials: 0 }).body.rmsAcceleration.value);
    expect(rms).toEqual([...rms].sort((a, b) => a - b));
  });
});
