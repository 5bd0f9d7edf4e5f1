import { describe, expect, it } from 'vitest';
import { sampleCourse } from '../../src/course/track.ts';
import type { AxleModel, RideModel } from '../../src/ride/model.ts';
import { runRide } from '../../src/ride/run.ts';
import type { CourseShape } from '../../src/rig/course-spec.ts';
import { mustFinish } from './energy.ts';

/** A rig of the usual size, invented. The expectations are closed forms and the energy books. */
const axle: AxleModel = {
  mass: 220,
  rollInertia: 60,
  halfTrack: 0.8,
  spring: { halfStation: 0.45, rate: 30_000, ratio: 1 },
  shock: { halfStation: 0.55, ratio: 1, speed: [-1, 0, 1], force: [-3000, 0, 1500] },
  stop: {
    halfStation: 0.44,
    ratio: 1,
    gap: { left: 0.05, right: 0.05 },
    crush: [0, 0.01, 0.03, 0.05],
    force: [0, 500, 3500, 15_000],
    rateFactor: 0,
  },
  metal: { atCrush: { left: 0.06, right: 0.06 }, rate: 1e7 },
  droopLimit: { at: 0.14, rate: 3e5, rateFactor: 0.2 },
  tyre: { rate: 220_000, damping: 300 },
};
const rig: RideModel = {
  sprung: { mass: 1400, rollInertia: 500, pitchInertia: 1700, toFrontAxle: 1.3, toRearAxle: 1.3 },
  axles: { front: axle, rear: axle },
  gravity: 9.80665,
};

const both = (change: Partial<AxleModel>): RideModel => ({
  ...rig,
  axles: { front: { ...axle, ...change }, rear: { ...axle, ...change } },
});
const withStop = (change: Partial<AxleModel['stop']>): RideModel =>
  both({ stop: { ...axle.stop, ...change } });

const DROP: CourseShape = { kind: 'drop', height: 0.35 };
const LEDGE: CourseShape = { kind: 'ledge', side: 'left', height: 0.15, length: 0.4, start: 1 };
const drive = (model: RideModel, shape: CourseShape, historyRate = 0) =>
  mustFinish(runRide(model, sampleCourse(shape), { speed: 6, duration: 2.5, historyRate }));

describe('each further element, over a drop and a ledge,', () => {
  const friction = { limit: 0.3, halfTravel: 0.002 };
  const maxwell = { rate: 60_000, damping: 2500 };
  const models: readonly (readonly [string, RideModel])[] = [
    ['gas in the shocks', both({ shock: { ...axle.shock, gas: { force: 500, rate: 900 } } })],
    ['an anti-roll bar', both({ antiRollRate: 15_000 })],
    [
      'shocks that reach both their ends',
      both({ shock: { ...axle.shock, ends: { closedAt: 0.07, openAt: 0.06, rate: 2e6 } } }),
    ],
    ['oil in the stops', withStop({ oilFactor: 900 })],
    ['friction in the stops', withStop({ friction })],
    ['a viscous branch in the stops', withStop({ maxwell })],
    ['friction and a viscous branch together', withStop({ friction, maxwell, rateFactor: 0.1 })],
    [
      'somebody on a seat',
      { ...rig, seat: { mass: 85, rate: 45_000, damping: 1200, ahead: -0.3, left: 0.4 } },
    ],
  ];
  it.each(models)('%s: closes its energy books', (_, model) => {
    for (const shape of [DROP, LEDGE]) drive(model, shape);
  });

  it('takes out energy in a stop with friction or a viscous branch: less comes back after the hit', () => {
    const rebound = (model: RideModel): number => {
      const { history } = drive(model, DROP, 500);
      const heave = Array.from({ length: history?.count ?? 0 }, (_, k) => history?.coordinates[7 * k] ?? 0);
      const lowest = heave.indexOf(Math.min(...heave));
      return Math.max(...heave.slice(lowest));
    };
    expect(rebound(withStop({ friction }))).toBeLessThan(rebound(rig));
    expect(rebound(withStop({ maxwell }))).toBeLessThan(rebound(rig));
  });
});

describe('gas in a shock', () => {
  it('carries what the coil then need not: the rig rests where it did', () => {
    const model = both({ shock: { ...axle.shock, gas: { force: 700, rate: 1200 } } });
    const run = drive(model, { kind: 'flat', length: 5 });
    expect(run.body.peakAcceleration).toBeLessThan(1e-10);
    expect(Math.abs(run.body.heaveAtEnd)).toBeLessThan(1e-12);
  });

  it('adds its rate to that of the coil, to the last digit', () => {
    const gas = drive(
      both({ shock: { ...axle.shock, halfStation: 0.45, gas: { force: 0, rate: 5000 } } }),
      LEDGE,
    );
    const coil = drive(
      both({
        shock: { ...axle.shock, halfStation: 0.45 },
        spring: { ...axle.spring, rate: axle.spring.rate + 5000 },
      }),
      LEDGE,
    );
    expect(gas.body.rmsAcceleration / coil.body.rmsAcceleration).toBeCloseTo(1, 6);
  });
});

describe('an anti-roll bar', () => {
  it('is to tilt what coils further out are: K = 2·k·(y₂² − y₁²) moves the same', () => {
    const wider = 0.55;
    const rate = 2 * axle.spring.rate * (wider ** 2 - axle.spring.halfStation ** 2);
    const bar = drive(both({ antiRollRate: rate }), LEDGE);
    const coils = drive(both({ spring: { ...axle.spring, halfStation: wider } }), LEDGE);
    expect(bar.body.peakRoll / coils.body.peakRoll).toBeCloseTo(1, 4);
  });
});

describe('a seat', () => {
  // Bolted to a body that stands still, the sitter is one mass on a spring: SDOF closed form, a = F/m·|H|.
  it('that is hard as a rock feels what the body feels there', () => {
    const seat = { mass: 1, rate: 4e5, damping: 900, ahead: 0, left: 0 };
    const run = drive({ ...rig, seat }, LEDGE);
    expect(run.seat?.rmsAcceleration).toBeCloseTo(run.body.rmsAcceleration, 1);
  });

  it('shakes at its base as the transfer function of one mass says', () => {
    // A light sitter does not move the rig; a long sine road gives a steady shake of the body.
    const seat = {
      mass: 0.5,
      rate: 0.5 * (2 * Math.PI * 3) ** 2,
      damping: 0.5 * 2 * 0.3 * 2 * Math.PI * 3,
      ahead: 0,
      left: 0,
    };
    const speed = 10;
    const n = 0.2;
    const wave = { n, common: 0.01, commonPhase: 0, own: 0, leftPhase: 0, rightPhase: 0 };
    // Front and rear two wavelengths apart would be in step; here the axles are half a metre short of that, and only the
    // ratio of seat to body is asked for.
    // A shock alike both ways leaves one sine and no harmonics.
    const even = both({ shock: { ...axle.shock, force: [-2000, 0, 2000] } });
    const track = sampleCourse({ kind: 'waves', waves: [wave], fadeIn: 20, length: 400 });
    const run = mustFinish(
      runRide({ ...even, seat }, track, { speed, duration: 30, historyRate: 200, tolerance: 1e-5 }),
      1e-4,
    );
    const rms = (record: Float64Array | null | undefined): number => {
      const late = (record ?? new Float64Array(0)).slice(-2000);
      return Math.sqrt(late.reduce((sum, a) => sum + a * a, 0) / late.length);
    };
    const r = (n * speed) / 3;
    const gain = Math.sqrt((1 + (0.6 * r) ** 2) / ((1 - r * r) ** 2 + (0.6 * r) ** 2));
    expect(rms(run.history?.seatAcceleration) / rms(run.history?.bodyAcceleration)).toBeCloseTo(gain, 2);
  });
});
