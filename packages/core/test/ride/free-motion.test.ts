import { describe, expect, it } from 'vitest';
import { sampleCourse } from '../../src/course/track.ts';
import { CORNERS } from '../../src/finding/place.ts';
import type { RideModel } from '../../src/ride/model.ts';
import type { RideRun } from '../../src/ride/result.ts';
import { runRide } from '../../src/ride/run.ts';
import { mustFinish } from './energy.ts';
import { evenRig, fourfoldRig, lossless, unevenRig } from './invented-rigs.ts';

// The linear rig against modes, gains and a matrix exponential: validation/checks/ride.

const letGo = (height: number) => sampleCourse({ kind: 'drop', height });
const G = 9.80665;

describe('a rig that stands on flat ground', () => {
  it.each([
    ['even', evenRig],
    ['uneven', unevenRig],
  ])('and is %s stays where it is', (_name, model) => {
    const track = sampleCourse({ kind: 'flat', length: 100 });
    const run = mustFinish(runRide(model, track, { speed: 10, duration: 5, historyRate: 10 }));
    // Loads at rest are sums and quotients: what is left is rounding of some thousand newtons.
    expect(Math.max(...run.history!.coordinates.map(Math.abs))).toBeLessThan(1e-12);
    expect(run.body.peakAcceleration).toBeLessThan(1e-11);
    expect(Math.abs(run.energy.dissipated)).toBeLessThan(1e-12);
    expect(run.energy.relativeResidual).toBeLessThan(1e-9);
    expect(run.counters.events).toBe(0);
    for (const corner of CORNERS) {
      const { peakCrush, peakStopForce, airborneShare, contacts } = run.corners[corner];
      expect({ peakCrush, peakStopForce, airborneShare, contacts }).toEqual({
        peakCrush: 0,
        peakStopForce: 0,
        airborneShare: 0,
        contacts: { stop: 0, metal: 0, droop: 0, shockOpen: 0, shockClosed: 0 },
      });
    }
  });
});

/**
 * Let go in the air without any loss. Until the coils come loose body and axle swing apart about their common centre of
 * gravity, which falls freely; then each falls by itself. All of it in closed form.
 */
describe('a rig without losses that is let go high in the air', () => {
  const model: RideModel = (() => {
    const rig = lossless(fourfoldRig);
    const far = { ...rig.axles.front, droopLimit: { ...rig.axles.front.droopLimit, at: 2 } };
    return { ...rig, axles: { front: far, rear: far } };
  })();
  const body = model.sprung.mass / 4;
  const axle = model.axles.front.mass / 2;
  const { rate, ratio } = model.axles.front.spring;
  const k = rate * ratio ** 2;
  const omega = Math.sqrt(k * (1 / body + 1 / axle));
  const pressed = (body * G) / k;
  const loose = Math.PI / 2 / omega;
  const lift = 1;
  const duration = 0.3;

  /** Compression from ride height: the coil pushes axle and body apart until it is as long as it is free. */
  const compression = (t: number): number =>
    t < loose ? -pressed * (1 - Math.cos(omega * t)) : -pressed * (1 + omega * (t - loose));
  const fallen = (t: number): number => lift - (G * t * t) / 2;

  const run = mustFinish(
    runRide(model, letGo(lift), { speed: 1, duration, tolerance: 1e-8, historyRate: 100 }),
    1e-8,
  );
  const { coordinates, count } = run.history!;

  it('moves as the closed form says, before and after its coils come loose', () => {
    expect(loose).toBeGreaterThan(0.05);
    expect(loose).toBeLessThan(0.15);
    for (let i = 0; i < count; i += 1) {
      const t = i / 100;
      const heave = fallen(t) - (axle / (axle + body)) * compression(t);
      const wheel = fallen(t) + (body / (axle + body)) * compression(t);
      expect(Math.abs(coordinates[7 * i] - heave)).toBeLessThan(1e-8);
      expect(Math.abs(coordinates[7 * i + 3] - wheel)).toBeLessThan(1e-8);
      expect(Math.abs(coordinates[7 * i + 5] - wheel)).toBeLessThan(1e-8);
    }
  });

  it('knows of one event, the four coils that come loose together', () => {
    expect(run.counters.events).toBe(1);
  });

  it('feels the whole of gravity while it flies, and its r.m.s. is that of the closed form', () => {
    expect(run.body.peakAcceleration).toBeCloseTo(G, 9);
    // a = −g(1 − cos ωt) until the coils are loose, then −g.
    const square = (G ** 2 * ((3 * Math.PI) / 4 - 2)) / omega + G ** 2 * (duration - loose);
    expect(run.body.rmsAcceleration).toBeCloseTo(Math.sqrt(square / duration), 7);
  });

  it('is in the air all the time, and nothing is lost or put in', () => {
    for (const corner of CORNERS) expect(run.corners[corner].airborneShare).toBeCloseTo(1, 12);
    expect(run.energy.dissipated).toBe(0);
    expect(run.energy.putInByGround).toBe(0);
    expect(Math.abs(run.energy.storedAtEnd / run.energy.storedAtStart - 1)).toBeLessThan(1e-8);
  });
});

describe('a rig that lands', () => {
  it('without losses bounces on and on with the energy that it was given', () => {
    const model = lossless(unevenRig);
    const run = mustFinish(runRide(model, letGo(0.25), { speed: 1, duration: 3, tolerance: 1e-7 }), 1e-7);
    const given = run.energy.storedAtStart;
    expect(run.counters.events).toBeGreaterThan(50);
    // A tyre that leaves the ground holds nothing, but for the rounding of the moment it leaves.
    expect(run.energy.dissipated).toBeCloseTo(0, 9);
    expect(Math.abs(run.energy.storedAtEnd / given - 1)).toBeLessThan(1e-5);
  });

  it('with losses comes to rest at ride height, and has lost what it fell', () => {
    const run = mustFinish(runRide(evenRig, letGo(0.4), { speed: 1, duration: 8 }));
    expect(Math.abs(run.body.heaveAtEnd)).toBeLessThan(1e-4);
    const { mass } = evenRig.sprung;
    const weight = (mass + evenRig.axles.front.mass + evenRig.axles.rear.mass) * G;
    // Tyres take up their load as they come back to ride height: that part of the fall stays in them.
    const held = CORNERS.reduce((sum, corner) => {
      const { tyre, mass: own } = evenRig.axles[corner.startsWith('front') ? 'front' : 'rear'];
      const { toFrontAxle: a, toRearAxle: b } = evenRig.sprung;
      const load = (((mass * (corner.startsWith('front') ? b : a)) / (a + b) + own) * G) / 2;
      return sum + load ** 2 / (2 * tyre.rate);
    }, 0);
    expect(Math.abs(run.energy.dissipated / (weight * 0.4 - held) - 1)).toBeLessThan(2e-3);
  });
});

describe('symmetry of a drop', () => {
  const corners = (run: RideRun) => CORNERS.map((corner) => run.corners[corner]);

  it('makes all corners alike and neither pitch nor roll, when all four are alike', () => {
    const run = mustFinish(runRide(fourfoldRig, letGo(0.4), { speed: 1, duration: 2 }));
    const [first, ...rest] = corners(run);
    expect(first.peakCrush).toBeGreaterThan(0.03);
    for (const other of rest) expect(other).toEqual(first);
    expect([run.body.peakPitch, run.body.peakRoll]).toEqual([0, 0]);
  });

  it('makes left like right, bit for bit, when the sides are alike', () => {
    const run = mustFinish(runRide(evenRig, letGo(0.4), { speed: 1, duration: 2 }));
    const [frontLeft, frontRight, rearLeft, rearRight] = corners(run);
    expect(frontRight).toEqual(frontLeft);
    expect(rearRight).toEqual(rearLeft);
    expect(frontLeft.peakCrush).not.toBe(rearLeft.peakCrush);
    expect(run.body.peakRoll).toBe(0);
    expect(run.body.peakPitch).toBeGreaterThan(1e-3);
  });

  it('has no use for a speed', () => {
    const [slow, fast] = [1, 40].map((speed) =>
      runRide(unevenRig, letGo(0.3), { speed, duration: 1, historyRate: 20 }),
    );
    expect(fast).toEqual(slow);
  });
});
