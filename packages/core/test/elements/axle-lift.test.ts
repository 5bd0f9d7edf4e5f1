import { describe, expect, test } from 'vitest';
import {
  type AxleLift,
  heightFromLift,
  liftedHeight,
  liftedHeightWithTolerance,
} from '../../src/elements/axle-lift.ts';
import { coverageHalfWidth } from '../../src/numerics/coverage.ts';
import { nominal } from '../../src/rig/reading.ts';
import type { CgLift, Rig } from '../../src/rig/rig.ts';
import { columnOf } from '../../src/stance/columns.ts';
import { drawsOf } from '../../src/stance/draws.ts';
import { stanceOf } from '../../src/stance/stance.ts';
import { reading, rigOf, setupOf } from '../travel/typed-rig.ts';

/** Textbook numbers: a rig of 2000 kg whose centre stands at 0.75 m exactly, its rear raised by 0.6 m. */
const TEXTBOOK: AxleLift = {
  total: 2000,
  level: 1080,
  lifted: 1139.0906690909,
  wheelbase: 2.7,
  by: 0.6,
  radiusDown: 0.4,
  radiusRaised: 0.4,
};

describe('raising one axle', () => {
  // h = r + L·ΔW ÷ (W·tan θ), the form of ISO 10392 in the shared check values, section 5.
  test('59.09 kg more under the front of a 2000 kg rig with its rear 0.6 m up put the centre at 0.75 m', () => {
    expect(heightFromLift(TEXTBOOK)).toBeCloseTo(0.75, 6);
  });

  test('a kilogram on the scales is L ÷ (W·tan θ) = 5.92 mm of height', () => {
    const more = heightFromLift({ ...TEXTBOOK, lifted: TEXTBOOK.lifted + 1 });
    expect(more - heightFromLift(TEXTBOOK)).toBeCloseTo(5.923e-3, 6);
  });

  /** Weighs a rigid rig whose centre is known: points in the plane, turned, moments about the raised hub. */
  const weighed = (height: number, radiusDown: number, radiusRaised: number, by: number) => {
    const [total, wheelbase, x] = [1900, 2.6, 1.15];
    const base = Math.sqrt(wheelbase ** 2 - (radiusRaised - radiusDown) ** 2);
    const level = (total * (base - x)) / base;
    const turn =
      Math.asin((radiusRaised - radiusDown + by) / wheelbase) -
      Math.asin((radiusRaised - radiusDown) / wheelbase);
    // About the hub that stays down, the raised axle up.
    const across = (px: number, pz: number) => px * Math.cos(turn) - pz * Math.sin(turn);
    const centre = across(x, height - radiusDown);
    const raised = across(base, radiusRaised - radiusDown);
    const lifted = total * (1 - centre / raised);
    return { total, wheelbase, by, radiusDown, radiusRaised, level, lifted };
  };

  test('wheels of unlike size change nothing: the rig turned and weighed gives its height back', () => {
    for (const [down, up] of [
      [0.42, 0.42],
      [0.45, 0.4],
      [0.38, 0.47],
    ] as const)
      for (const by of [0.2, 0.5, 0.9])
        expect(heightFromLift(weighed(0.81, down, up, by))).toBeCloseTo(0.81, 12);
  });

  test('springs that give read too high unless what they gave is taken off', () => {
    const locked = { ...TEXTBOOK };
    const springs = {
      unsprungDown: 250,
      unsprungRaised: 240,
      rateDown: 60_000,
      rateRaised: 55_000,
      share: 1,
    };
    const free = heightFromLift({ ...locked, springs });
    expect(free).toBeLessThan(0.75);
    expect(free).toBeGreaterThan(0.6);
    const stiff = { ...springs, rateDown: 1e12, rateRaised: 1e12 };
    expect(heightFromLift({ ...locked, springs: stiff })).toBeCloseTo(0.75, 6);
    expect(heightFromLift({ ...locked, springs: { ...springs, share: 0 } })).toBeCloseTo(0.75, 6);
  });

  /** A body on two springs over a turned line of hubs, settled by force balance; nothing of the formula is used. */
  test('a body weighed on its springs gives its height back', () => {
    const [L, r, m, mD, mR, kD, kR, g] = [2.6, 0.42, 1400, 250, 240, 60_000, 52_000, 9.80665];
    const [a, c, theta] = [1.2, 0.55, 0.2];
    const preload = { down: m * g * (1 - a / L), raised: (m * g * a) / L };
    // Unknown scale load N: springs carry (N − axle)·cos θ, and the body's place follows from them.
    let load = (m * (1 - a / L) + mD) * 1.05;
    for (let i = 0; i < 60; i += 1) {
      const other = m + mD + mR - load;
      const d = ((load - mD) * g * Math.cos(theta) - preload.down) / kD;
      const e = (preload.raised - (other - mR) * g * Math.cos(theta)) / kR;
      const along = a - (c * (d + e)) / L;
      const over = c + (e * a) / L - d * (1 - a / L);
      const moment = mD * L + m * (L - along + over * Math.tan(theta));
      load = 0.5 * load + (0.5 * moment) / L;
    }
    const total = m + mD + mR;
    const height = heightFromLift({
      total,
      level: m * (1 - a / L) + mD,
      lifted: load,
      wheelbase: L,
      by: L * Math.sin(theta),
      radiusDown: r,
      radiusRaised: r,
      springs: { unsprungDown: mD, unsprungRaised: mR, rateDown: kD, rateRaised: kR, share: 1 },
    });
    expect(height).toBeCloseTo(r + (m * c) / total, 9);
  });
});

describe('how sure the height is', () => {
  const lift: CgLift = {
    raised: 'rear',
    by: reading('measured.cgLift.by', [0.6, 0.003]),
    scale: {
      left: reading('measured.cgLift.left', [510, 1], 'mass'),
      right: reading('measured.cgLift.right', [512, 1], 'mass'),
    },
    tyreRadius: reading('front.tyre.radius', 0.42),
    give: null,
  };
  const exact = rigOf({});
  const rig: Rig = {
    ...rigOf({
      corners: [
        [480, 1],
        [480, 1],
        [420, 1],
        [420, 1],
      ],
    }),
    cgLift: lift,
  };

  test('to first order: four scales, the lift and nothing else, added in squares', () => {
    const { halfWidth, contributions } = liftedHeightWithTolerance(exact, lift);
    const tan = Math.tan(Math.asin(0.6 / 2.6));
    const perKilogram = 2.6 / (1800 * tan);
    // ∂c/∂by = −c ÷ (tan θ·L·cos³θ).
    const c = perKilogram * (1022 - 960);
    const perMetre = c / (tan * 2.6 * Math.cos(Math.asin(0.6 / 2.6)) ** 3);
    expect(halfWidth / Math.hypot(perKilogram, perKilogram, perMetre * 0.003)).toBeCloseTo(1, 4);
    expect(contributions.map(({ key }) => key)).toEqual([
      'measured.cgLift.left',
      'measured.cgLift.right',
      'measured.cgLift.by',
    ]);
  });

  test('the trials say the same as the first order, within their scatter', () => {
    const draws = drawsOf(rig);
    const sampled = columnOf(draws.trials + 1, (i) => liftedHeight(rig, lift, draws.trial(i)));
    const { halfWidth } = liftedHeightWithTolerance(rig, lift);
    expect(Math.abs(coverageHalfWidth(sampled) / halfWidth - 1)).toBeLessThan(0.05);
  });

  test('a rig that was raised stands on that height everywhere', () => {
    const { cg } = stanceOf(setupOf(rig));
    expect(cg.height.value).toBe(liftedHeight(rig, lift, nominal));
    expect(cg.height.tolerance! / liftedHeightWithTolerance(rig, lift).halfWidth).toBeCloseTo(1, 1);
  });
});
