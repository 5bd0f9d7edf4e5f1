import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AxleGeometry } from '../../src/linkage/geometry.ts';
import { cubicIntegral, monotoneCubic } from '../../src/numerics/monotone-cubic.ts';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';
import { readRig } from '../../src/rigfile/index.ts';
import { articulationOf } from '../../src/travel/articulation.ts';
import { type AxleSprings, heaveAt, momentAt, travelAt } from '../../src/travel/axle-balance.ts';
import { padOffset, shorteningOf } from '../../src/travel/strut-travel.ts';
import { must } from './stories/story.ts';
import { type EndFacts, rigOf, setupOf } from './typed-rig.ts';

/** A straight stop, so that closed forms are short. */
const STRAIGHT = { crush: [0, 0.02, 0.04], force: [0, 2000, 4000] };
const STOP_RATE = 100_000;

const springs = (over: Partial<AxleSprings> = {}): AxleSprings => ({
  coilRate: 30_000,
  coilArm: 0.45,
  loose: 1,
  stopCurve: monotoneCubic(STRAIGHT.crush, STRAIGHT.force),
  stopRatio: 1,
  stopArm: 0.44,
  stopFree: 1,
  bar: 0,
  ...over,
});

describe('an axle that is rolled and carries what it carried', () => {
  it('stays at its height while only coils work', () => {
    for (const roll of [0, 0.1, 0.4]) expect(heaveAt(springs(), roll)).toBeCloseTo(0, 7);
  });

  it('goes down by what a stop pushes: −K·(a·sin φ − g) ÷ (2·k + K)', () => {
    const stop = springs({ stopFree: 0.06 });
    for (const roll of [0.15, 0.17, 0.2]) {
      const expected = (-STOP_RATE * (0.44 * Math.sin(roll) - 0.06)) / (2 * 30_000 + STOP_RATE);
      expect(heaveAt(stop, roll)).toBeCloseTo(expected, 6);
    }
  });

  it('goes down once a coil is loose, so that the other is pressed in by what both were: a·sin φ + h = u', () => {
    const soft = springs({ loose: 0.1 });
    for (const roll of [0.3, 0.4]) expect(heaveAt(soft, roll)).toBeCloseTo(0.1 - 0.45 * Math.sin(roll), 6);
  });

  it('takes the moment by which its energy rises with roll, at any springs', () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const any = fc.record({
      coilRate: between(10_000, 60_000),
      coilArm: between(0.2, 0.7),
      loose: between(0.05, 0.3),
      stopArm: between(0.2, 0.7),
      stopFree: between(0.02, 0.1),
      stopRatio: between(0.7, 1.1),
      bar: between(0, 20_000),
    });
    const energy = (of: AxleSprings, roll: number) => {
      const stand = { heave: heaveAt(of, roll), roll };
      return ([1, -1] as const).reduce(
        (sum, way) => {
          const z = travelAt(of.coilArm, way, stand);
          const coil =
            z > -of.loose ? (of.coilRate * z * z) / 2 : of.coilRate * of.loose * (-z - of.loose / 2);
          const crush = Math.max(0, (travelAt(of.stopArm, way, stand) - of.stopFree) * of.stopRatio);
          return sum + coil + cubicIntegral(of.stopCurve, crush);
        },
        (of.bar * roll * roll) / 2,
      );
    };
    fc.assert(
      fc.property(any, between(0.02, 0.35), (over, roll) => {
        const of = springs(over);
        const d = 1e-4;
        const slope = (energy(of, roll + d) - energy(of, roll - d)) / (2 * d);
        const moment = momentAt(of, { heave: heaveAt(of, roll), roll });
        expect(Math.abs(moment - slope)).toBeLessThan(1 + 2e-3 * Math.abs(moment));
      }),
      { seed: 21, numRuns: 100 },
    );
  });
});

/** Far from everything but what a test says. */
const WIDE: EndFacts = {
  contacts: { sump: { gap: 0.5 } },
  gap: 0.4,
  coil: { free: 0.6, ride: 0.3 },
  springRate: 40_000,
};
const flexOf = (front: EndFacts, rear: EndFacts = WIDE) =>
  articulationOf(setupOf(rigOf({ front, rear })), { trials: 64 });

describe('flex of an axle', () => {
  it('ends where the shock on the low side is open: a·sin φ = its droop', () => {
    const { flex } = flexOf({ ...WIDE, shock: { ride: 0.5, open: 0.6, ratio: 1 } });
    const arm = setupOf(rigOf({ front: WIDE })).ends.front.base.shock.spread.value / 2;
    const { angle, limits, bump, droop } = flex.frontLeft;
    expect(limits[0]).toMatchObject({ id: 'shock-open', side: 'right', firstShare: 1 });
    expect(angle.value).toBeCloseTo(Math.asin(0.1 / arm), 5);
    expect(bump.value).toBeCloseTo(0.8 * (0.1 / arm), 5);
    expect(droop.value).toBeCloseTo(bump.value, 6);
  });

  it('ends where the stop is used up, with the axle pushed down by it', () => {
    const { flex } = flexOf({ ...WIDE, gap: 0.06, crush: 0.04, curve: STRAIGHT });
    const { angle, limits } = flex.frontRight;
    expect(limits[0]).toMatchObject({ id: 'stop', side: 'right' });
    // K·0.04 lifts the body by K·0.04 ÷ (2·k): a·sin φ = 0.06 + 0.04 + that, the coils still held.
    expect(angle.value).toBeCloseTo(Math.asin((0.1 + (STOP_RATE * 0.04) / 80_000) / 0.44), 5);
  });

  it('ends where the tyre meets the body, out where it touches: a·sin φ = gap', () => {
    const contacts = { sump: { gap: 0.5 }, guard: { gap: 0.12, spread: 1.5 } };
    const { angle, limits } = flexOf({ ...WIDE, contacts }).flex.frontLeft;
    expect(limits[0]).toMatchObject({ id: 'guard', side: 'left' });
    expect(angle.value).toBeCloseTo(Math.asin(0.12 / 0.75), 5);
  });

  it('ends where the low tyre has no load left: k·s²/2·sin φ·cos φ = load·track', () => {
    const { flex } = flexOf({ ...WIDE, springRate: 90_000, coil: { free: 0.9, ride: 0.3 } });
    const { angle, limits, lowTyreLoad } = flex.frontLeft;
    expect(limits[0]).toMatchObject({ id: 'tyre-lifts', side: 'right' });
    const moment = 480 * 9.80665 * 1.6;
    expect(angle.value).toBeCloseTo(Math.asin((2 * moment) / (2 * 90_000 * 0.45 ** 2)) / 2, 5);
    expect(lowTyreLoad.value).toBeCloseTo(0, 2);
  });

  it('is the same to either side of a rig that is alike left and right', () => {
    const { flex, ramps } = flexOf({
      ...WIDE,
      gap: 0.05,
      strap: { length: 0.4, stretch: 0.08, tight: 0.58 },
      shock: { ride: 0.5 },
    });
    expect(flex.frontRight.angle.value).toBeCloseTo(flex.frontLeft.angle.value, 9);
    expect(flex.frontRight.limits[0]?.id).toBe(flex.frontLeft.limits[0]?.id);
    expect(ramps.frontRight.index.value).toBeCloseTo(ramps.frontLeft.index.value, 6);
  });

  it('never grows when any limit comes nearer', () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(between(0.02, 0.1), between(0.05, 0.2), between(0, 0.05), (gap, open, less) => {
        const at = (g: number, o: number) =>
          flexOf({ ...WIDE, gap: g, curve: STRAIGHT, shock: { ride: 0.5, open: 0.5 + o, ratio: 1 } }).flex
            .frontLeft.angle.value;
        const full = at(gap, open);
        expect(at(Math.max(0.001, gap - less), open)).toBeLessThanOrEqual(full + 1e-6);
        expect(at(gap, Math.max(0.01, open - less))).toBeLessThanOrEqual(full + 1e-6);
      }),
      { seed: 22, numRuns: 20 },
    );
  });

  it('knows its angle as well as the readings behind it: the shock alone, u = u(open) ÷ (a·cos φ)', () => {
    const front: EndFacts = { ...WIDE, shock: { ride: 0.5, open: [0.6, 0.004], ratio: 1 } };
    const { angle } = articulationOf(setupOf(rigOf({ front, rear: WIDE })), { trials: 2048 }).flex.frontLeft;
    const arm = setupOf(rigOf({ front })).ends.front.base.shock.spread.value / 2;
    const expected = 0.004 / (arm * Math.cos(angle.value));
    expect(angle.tolerance).toBeGreaterThan(0.97 * expected);
    expect(angle.tolerance).toBeLessThan(1.03 * expected);
  });
});

describe('the ramp', () => {
  const HELD: EndFacts = { ...WIDE, shock: { ride: 0.5, open: 0.6, ratio: 1 } };

  it('twists both axles to their ends, and its index is 2924 times height over wheelbase', () => {
    const { flex, ramps } = flexOf(HELD, HELD);
    const { twist, height, index, lifts } = ramps.frontLeft;
    expect(lifts).toBeNull();
    expect(twist.value).toBeCloseTo(flex.frontLeft.angle.value + flex.rearRight.angle.value, 6);
    expect(height.value).toBeCloseTo(1.6 * Math.sin(twist.value), 9);
    // 1000 ÷ sin 20° = 2923.8: closed form of the definition (distance along a 20° slope ÷ wheelbase × 1000).
    expect(index.value / (height.value / 2.6)).toBeCloseTo(2923.8, 1);
  });

  it('ends earlier where a tyre lifts before the contacts, each axle then at the roll of that moment', () => {
    const stiff: EndFacts = { ...WIDE, springRate: 90_000, coil: { free: 0.9, ride: 0.3 } };
    const { ramps } = flexOf(stiff, stiff);
    expect(ramps.frontLeft.lifts).toBe('rear');
    // The rear is the lighter end: both axles take its moment, k·s²·sin φ·cos φ ÷ 2.
    const roll = Math.asin((2 * 420 * 9.80665 * 1.6) / (2 * 90_000 * 0.45 ** 2)) / 2;
    expect(ramps.frontLeft.twist.value).toBeCloseTo(2 * roll, 5);
  });
});

describe('mounts on links', () => {
  /** Guided straight up and turning about its own middle: everything in closed form. */
  const leaf: AxleGeometry = {
    kind: 'leaf',
    centre: [0, 0, 0.43],
    links: [],
    halfTrack: 0.8,
    tyreRadius: 0.43,
    struts: {
      'shock-left': { axle: [0, 0.5, 0.43], body: [0, 0.5, 0.93] },
      'stop-left': { axle: [0, 0.45, 0.53], body: [0, 0.45, 0.6] },
    },
  };

  it('shorten an upright strut by what its foot rises and moves in', () => {
    const shorter = shorteningOf(leaf);
    for (const [heave, roll] of [
      [0.05, 0.2],
      [-0.11, 0.31],
      [0, -0.17],
    ] as const) {
      const foot = [0.5 * (1 - Math.cos(roll)), heave + 0.5 * Math.sin(roll)] as const;
      const expected = 0.5 - Math.hypot(foot[0], 0.5 - foot[1]);
      // The table is read in between: to a tenth of a millimetre.
      expect(Math.abs((shorter('shock', 'left', { heave, roll }) ?? 0) - expected)).toBeLessThan(1e-4);
    }
    expect(shorter('spring', 'left', { heave: 0, roll: 0 })).toBeNull();
    expect(shorter('shock', 'left', { heave: 0.5, roll: 0 })).toBeNull();
  });

  it('carry a pad from under its stop: y·(1 − cos φ) + rise·sin φ inward, seen from the body', () => {
    for (const roll of [0.1, 0.25]) {
      const inward = 0.45 * (1 - Math.cos(roll)) + 0.1 * Math.sin(roll);
      expect(padOffset(leaf, 'left', 'axle', { heave: 0.03, roll })).toBeCloseTo(inward, 9);
    }
  });

  it('tell of the demo rig what ends its flex, and whether its stops stay on their pads', () => {
    const text = readFileSync(new URL('../../../../examples/ochre/ochre.rig.yaml', import.meta.url), 'utf8');
    const { flex } = articulationOf(must(resolveSetup(must(readRig(text)), 'as-measured')), { trials: 32 });
    expect(flex.frontLeft.limits[0]?.id).toBe('shock-open');
    expect(flex.rearLeft.limits[0]?.id).toBe('strap');
    for (const { pad, angle } of Object.values(flex)) {
      expect(pad).not.toBeNull();
      expect(angle.tolerance).toBeGreaterThan(0);
    }
  });
});
