import { describe, expect, test } from 'vitest';
import { sampleCourse } from '../../src/course/track.ts';
import { piecewiseLinear } from '../../src/numerics/piecewise-linear.ts';
import type { AxleModel, RideModel } from '../../src/ride/model.ts';
import { runRide } from '../../src/ride/run.ts';
import { flatRearFrequency, flatSpeed } from '../../src/stability/flat-ride.ts';
import { packDown, type ShakenCorner, type Washboard } from '../../src/stability/pack-down.ts';

describe('flat ride', () => {
  test('1.2 Hz in front, 2.7 m, 22.35 m/s want 1.3284 Hz behind', () => {
    // f·n·V ÷ (n·V − f·L) with n = 1.5, worked out beside the shared check values, section 4.4.
    expect(flatRearFrequency(1.2, 2.7, 22.35)).toBeCloseTo(1.32838, 5);
  });

  test('the speed of a rig is that at which its own rear is the one that is wanted', () => {
    const speed = flatSpeed(1.2, 1.35, 2.7);
    expect(flatRearFrequency(1.2, 2.7, speed)).toBeCloseTo(1.35, 12);
    expect(flatSpeed(1.3, 1.3, 2.7)).toBe(Number.POSITIVE_INFINITY);
    expect(flatRearFrequency(1.2, 2.7, 1.5)).toBe(Number.POSITIVE_INFINITY);
  });
});

const G = 9.80665;
const SHAKEN: Omit<ShakenCorner, 'shock'> = {
  sprungMass: 350,
  unsprungMass: 110,
  springRate: 30_000,
  tyreRate: 200_000,
  tyreDamping: 300,
  shockRatio: 0.9,
};
const BOARD: Washboard = { spacing: 0.75, height: 0.012, speed: 11 };

describe('packing down', () => {
  const slopes = (bump: number, rebound: number) => piecewiseLinear([-3, 0, 3], [-3 * rebound, 0, 3 * bump]);

  test('two straight slopes sink it by (c rebound − c bump)·U·ω ÷ (π·k)', () => {
    const { sinks, swing } = packDown({ ...SHAKEN, shock: slopes(1500, 4500) }, BOARD)!;
    const omega = (2 * Math.PI * 11) / 0.75;
    // Half a cosine has a mean of 1/π; ratio² takes shaft to axle. 64 points of it: to 2 in 1000.
    expect(sinks / ((0.81 * 3000 * swing * omega) / (Math.PI * 30_000))).toBeCloseTo(1, 2);
  });

  test('nothing sinks on a shock that holds alike both ways; more bump than rebound lifts it', () => {
    expect(packDown({ ...SHAKEN, shock: slopes(3000, 3000) }, BOARD)!.sinks).toBeCloseTo(0, 12);
    expect(packDown({ ...SHAKEN, shock: slopes(4500, 1500) }, BOARD)!.sinks).toBeLessThan(0);
  });

  /** A rig of four such corners on our own washboard, driven until it has settled. */
  const driven = (shock: { speed: readonly number[]; force: readonly number[] }, board: Washboard) => {
    const axle: AxleModel = {
      mass: 220,
      rollInertia: 60,
      halfTrack: 0.8,
      spring: { halfStation: 0.45, rate: 30_000, ratio: 1 },
      shock: { halfStation: 0.55, ratio: 0.9, ...shock },
      stop: {
        halfStation: 0.44,
        ratio: 1,
        gap: { left: 1, right: 1 },
        crush: [0, 0.04],
        force: [0, 9000],
        rateFactor: 0,
      },
      metal: { atCrush: { left: 1, right: 1 }, rate: 2e7 },
      droopLimit: { at: 1, rate: 5e5, rateFactor: 0.2 },
      tyre: { rate: 200_000, damping: 300 },
    };
    const model: RideModel = {
      // k² = a·b: the ends do not feel each other.
      sprung: {
        mass: 1400,
        rollInertia: 500,
        pitchInertia: 1400 * 1.3 * 1.3,
        toFrontAxle: 1.3,
        toRearAxle: 1.3,
      },
      axles: { front: axle, rear: axle },
      gravity: G,
    };
    const track = sampleCourse({
      kind: 'washboard',
      spacing: board.spacing,
      height: board.height,
      length: 90,
      fadeIn: 10,
      start: 2,
      rightPhase: 0,
    });
    const duration = 80 / board.speed;
    const run = runRide(model, track, { speed: board.speed, duration, historyRate: 2000, tolerance: 1e-6 });
    const { travel, count, rate } = run.history!;
    // The mean over the last whole waves of the front left travel.
    const waves = Math.round((20 / board.spacing) | 0);
    const samples = Math.round((waves * board.spacing * rate) / board.speed);
    let [sum, most, least] = [0, -1, 1];
    for (let k = count - samples; k < count; k += 1) {
      const at = travel[4 * k];
      sum += at;
      most = Math.max(most, at);
      least = Math.min(least, at);
    }
    return { mean: sum / samples, swing: (most - least) / 2 };
  };

  test.each([
    [1500, 4500, BOARD],
    [1000, 2500, { spacing: 0.9, height: 0.016, speed: 12 }],
    [2500, 4000, { spacing: 0.6, height: 0.01, speed: 10 }],
  ])(
    'bump %i, rebound %i N·s/m: the engine rides as low as the closed form says, to 5 %%',
    (bump, rebound, board) => {
      const speed = [-6, 0, 6];
      const force = [-6 * rebound, 0, 6 * bump];
      const ours = packDown({ ...SHAKEN, shock: piecewiseLinear(speed, force) }, board)!;
      const ride = driven({ speed, force }, board);
      expect(ours.tyreShare).toBeLessThan(1);
      expect(ours.sinks / ride.mean).toBeGreaterThan(0.95);
      expect(ours.sinks / ride.mean).toBeLessThan(1.05);
      expect(Math.abs(ours.swing / ride.swing - 1)).toBeLessThan(0.08);
    },
  );
});
