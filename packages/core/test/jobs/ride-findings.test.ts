import { describe, expect, it } from 'vitest';
import { CORNERS, type Corner } from '../../src/finding/place.ts';
import type { CornerInterval, RideAnswer } from '../../src/jobs/protocol.ts';
import { rideFindings } from '../../src/jobs/ride-findings.ts';
import type { RideRun } from '../../src/ride/result.ts';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';
import { must, ochre, rode } from './ochre.ts';

const setup = must(resolveSetup(ochre, 'as-it-is'));
/** A real answer, of which each test changes the figures that it is about. */
const real = rode({ courseName: 'flat', trials: 0 });

type Told = Partial<Record<keyof CornerInterval, readonly [number, number | null]>>;

interface Said {
  readonly corners?: Partial<Record<Corner, Told>>;
  readonly acceleration?: readonly [number, number | null];
  readonly run?: Partial<RideRun>;
  readonly trials?: readonly Partial<Record<Corner, { clearance: number; metal?: number }>>[];
}

function findingsOf({ corners = {}, acceleration, run, trials = [] }: Said) {
  const told = Object.fromEntries(
    CORNERS.map((corner) => [
      corner,
      {
        ...real.corners[corner],
        ...Object.fromEntries(
          Object.entries(corners[corner] ?? {}).map(([key, [value, tolerance]]) => [
            key,
            { dimension: real.corners[corner][key as keyof CornerInterval].dimension, value, tolerance },
          ]),
        ),
      },
    ]),
  ) as RideAnswer['corners'];
  const body = acceleration
    ? {
        ...real.body,
        peakAcceleration: {
          dimension: 'acceleration' as const,
          value: acceleration[0],
          tolerance: acceleration[1],
        },
      }
    : real.body;
  const runs = trials.map(
    (trial): RideRun => ({
      ...real.run,
      corners: Object.fromEntries(
        CORNERS.map((corner) => {
          const { clearance, metal } = trial[corner] ?? { clearance: 1 };
          const own = real.run.corners[corner];
          return [corner, { ...own, clearance, contacts: { ...own.contacts, metal: metal ?? 0 } }];
        }),
      ) as RideRun['corners'],
    }),
  );
  return rideFindings(setup, { ...real, corners: told, body, run: { ...real.run, ...run } }, runs);
}

/** Flex and reserve that must stay free at the front of Ochre [m]. */
const keep = ochre.front.flex.value + ochre.limits.reserve.value;
const front = (clearance: number, tolerance: number | null): Said => ({
  corners: {
    frontLeft: { clearance: [clearance, tolerance] },
    frontRight: { clearance: [clearance, tolerance] },
  },
});
const ofFront = (said: Said) => findingsOf(said).find(({ place }) => place.startsWith('front'))!;

describe('clearance of a ride', () => {
  it('is clear when more is left than must stay free, for certain', () => {
    const finding = ofFront(front(keep + 0.05, 0.01));
    expect(finding).toMatchObject({ code: 'ride-clear', severity: 'fine', place: 'front', remedies: [] });
    expect(finding.limit!.value).toBeCloseTo(keep, 12);
    expect(finding.because).toContain(ochre.front.flex.key);
  });

  it('is unproven when the limit lies within its interval, on either side of it', () => {
    for (const aside of [-0.002, 0.002]) {
      expect(ofFront(front(keep + aside, 0.03))).toMatchObject({
        code: 'ride-clearance-short',
        severity: 'unproven',
      });
    }
  });

  it('is short when less is left, for certain', () => {
    const finding = ofFront(front(0.001, 0.0001));
    expect(finding).toMatchObject({ code: 'ride-clearance-short', severity: 'over' });
    expect(finding.remedies.map(({ code }) => code)).toContain('slow-down');
  });

  it('proves nothing when its interval is unknown, and still says so when it is short', () => {
    expect(ofFront(front(keep + 0.05, null)).severity).toBe('unproven');
    expect(ofFront(front(keep - 0.005, null)).severity).toBe('over');
  });

  it('that is all used up is metal', () => {
    expect(ofFront(front(-0.001, 0.02))).toMatchObject({
      code: 'ride-metal',
      severity: 'over',
      place: 'front',
    });
  });

  it('is told of the worse corner, by its name when the sides differ', () => {
    const finding = ofFront({
      corners: { frontLeft: { clearance: [0.06, 0.001] }, frontRight: { clearance: [0.001, 0.0001] } },
    });
    expect(finding).toMatchObject({ place: 'frontRight', severity: 'over' });
    expect(finding.value!.value).toBe(0.001);
  });

  it('comes with the share of trials in which it was short', () => {
    const finding = ofFront({
      ...front(keep + 0.001, 0.02),
      trials: [0.1, keep - 0.01, 0.1, keep - 0.02].map((clearance) => ({
        frontLeft: { clearance },
        frontRight: { clearance },
      })),
    });
    expect(finding.likelihood).toBe(0.5);
  });

  it('comes with the share of trials in which metal was reached', () => {
    const trials = [1, 0, 0, 2].map((metal) => ({ frontLeft: { clearance: 0, metal } }));
    expect(ofFront({ ...front(-0.001, 0.02), trials }).likelihood).toBe(0.5);
  });
});

describe('other things that a ride says', () => {
  it('a stop that was crushed beyond its table was not measured there', () => {
    const last = ochre.front.stop.crush[ochre.front.stop.crush.length - 1];
    const crushed = (by: number): Told => ({ peakCrush: [last + by, 0.001], clearance: [0.02, 0.001] });
    const codes = (by: number) =>
      findingsOf({ corners: { frontLeft: crushed(by), frontRight: crushed(by) } }).map(({ code }) => code);
    expect(codes(0.001)).toContain('ride-stop-past-table');
    expect(codes(-0.001)).not.toContain('ride-stop-past-table');
  });

  it('a tyre that is hardly off the ground is not worth a word, one that often is gets one', () => {
    const codes = (share: number) =>
      findingsOf({
        corners: { frontLeft: { airborneShare: [share, 0] }, frontRight: { airborneShare: [share, 0] } },
      }).map(({ code }) => code);
    expect(codes(0.01)).not.toContain('ride-airborne');
    expect(codes(0.2)).toContain('ride-airborne');
  });

  it('a harsh ride is held against what its owner accepts', () => {
    const limit = ochre.limits.bodyAcceleration.value;
    const severityAt = (value: number, tolerance: number | null) =>
      findingsOf({ acceleration: [value, tolerance] }).find(({ code }) => code === 'ride-harsh')?.severity;
    expect(severityAt(1.5 * limit, 0.1 * limit)).toBe('over');
    expect(severityAt(0.95 * limit, 0.2 * limit)).toBe('unproven');
    expect(severityAt(0.5 * limit, 0.1 * limit)).toBeUndefined();
    expect(severityAt(0.5 * limit, null)).toBe('unproven');
  });

  it('a run that left what the model holds for says only that', () => {
    expect(findingsOf({ run: { status: 'left-validity' } })).toMatchObject([
      { code: 'ride-left-validity', severity: 'over', place: 'rig' },
    ]);
  });

  it('trials that left what the model holds for are told, with their share', () => {
    const lost = { ...real.run, status: 'left-validity' } as const;
    const answer = { ...real, corners: real.corners };
    const [first] = rideFindings(setup, answer, [real.run, lost, real.run, real.run]);
    expect(first).toMatchObject({ code: 'ride-left-validity', severity: 'unproven', likelihood: 0.25 });
  });

  it('the worst of them stands first', () => {
    const severities = findingsOf({
      corners: {
        frontLeft: { clearance: [-0.001, 0.001], airborneShare: [0.3, 0] },
        rearLeft: { clearance: [0.2, 0.001] },
        rearRight: { clearance: [0.2, 0.001] },
      },
      acceleration: [0.95 * ochre.limits.bodyAcceleration.value, 10],
    }).map(({ severity }) => severity);
    expect(severities).toEqual(['over', 'unproven', 'note', 'fine']);
  });
});

describe('a rig that is let go in the air', () => {
  const answer = rode({ courseName: 'drop', course: ochre.courses.drop.shape, speed: 5, trials: 0 });
  const found = rideFindings(setup, answer, []);

  it('has no speed that could be named or lowered', () => {
    expect(found.length).toBeGreaterThan(0);
    for (const { facts, remedies } of found) {
      expect(facts.speed).toBeUndefined();
      expect(remedies.map(({ code }) => code)).not.toContain('slow-down');
    }
  });

  it('differs in that from the same rig over whoops', () => {
    const driven = rideFindings(setup, rode({ trials: 0 }), []);
    expect(driven.every(({ facts }) => facts.speed !== undefined)).toBe(true);
    expect(driven.some(({ remedies }) => remedies.some(({ code }) => code === 'slow-down'))).toBe(true);
  });
});
