import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../src/numerics/normal-quantile.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { columnPressed } from '../../src/stopdesign/column.ts';
import { type Coupon, couponFit, FITTED, PRINT_SCATTER } from '../../src/stopdesign/coupon-fit.ts';
import { type LatticeMaterial, latticeLaw } from '../../src/stopdesign/lattice-law.ts';
import { HALF_HELD, printedLayers } from '../../src/stopdesign/printed-body.ts';
import { anyMaterial } from './any-material.ts';

const TAKEN: LatticeMaterial = {
  structure: 'sheet-gyroid',
  solidModulus: 30e6,
  densityPower: 0,
  softening: 1,
  closing: 1.2,
};

function coupon(material: LatticeMaterial, density: number, deep: number, error = (_: number) => 0): Coupon {
  const law = latticeLaw(material, density);
  const [height, area] = [0.02, 0.02 ** 2];
  const strain = Array.from({ length: 12 }, (_, k) => (deep * law.locksAt * (k + 1)) / 12);
  return {
    density,
    height,
    area,
    crush: strain.map((e) => e * height),
    force: strain.map((e, k) => area * law.stress(e) * (1 + error(k))),
  };
}

describe('coupons that were pressed', () => {
  it('of three densities, deep, tell the material that made them', () => {
    fc.assert(
      fc.property(anyMaterial, (material) => {
        const coupons = [0.2, 0.35, 0.5].map((density) => coupon(material, density, 0.8));
        const { material: found, misfit } = couponFit(coupons, TAKEN);
        expect(misfit).toBeLessThan(1e-4);
        expect(found.solidModulus / material.solidModulus).toBeCloseTo(1, 2);
        expect(found.densityPower).toBeCloseTo(material.densityPower, 2);
        expect(found.closing).toBeCloseTo(material.closing, 2);
      }),
      { numRuns: 30 },
    );
  });

  it('of one density, or pressed a little, leave the rest as it was and say so', () => {
    const { material, tolerance } = couponFit([coupon({ ...TAKEN, solidModulus: 20e6 }, 0.3, 0.1)], TAKEN);
    expect(material.solidModulus / 20e6).toBeCloseTo(1, 6);
    expect(material).toMatchObject({ densityPower: 0, softening: 1, closing: 1.2 });
    expect(tolerance).toMatchObject({ densityPower: null, softening: null, closing: null });
  });

  it('with five per cent of scatter tell the modulus within the half-width they state, nineteen times in twenty', () => {
    let inside = 0;
    const runs = 60;
    for (let seed = 1; seed <= runs; seed += 1) {
      let state = seed * 7919;
      const normal = () => {
        // Sum of twelve even draws less six: near enough normal for a coverage of one in twenty.
        let sum = -6;
        for (let k = 0; k < 12; k += 1) {
          state = (state * 1103515245 + 12345) % 2147483648;
          sum += state / 2147483648;
        }
        return 0.05 * sum;
      };
      const truth = { ...TAKEN, solidModulus: 25e6 };
      const { material, tolerance } = couponFit(
        [0.2, 0.35, 0.5].map((density) => coupon(truth, density, 0.8, normal)),
        TAKEN,
      );
      if (Math.abs(material.solidModulus - 25e6) <= (tolerance.solidModulus ?? 0)) inside += 1;
    }
    expect(inside).toBeGreaterThanOrEqual(0.85 * runs);
  });

  it('whose prints and readings scatter, tell each number within the half-width they state, nineteen times in twenty', () => {
    const truth = { ...TAKEN, solidModulus: 25e6, densityPower: -0.2, softening: 1.6, closing: 1.15 };
    const runs = 60;
    const inside = { solidModulus: 0, densityPower: 0, softening: 0, closing: 0 };
    let widest = 0;
    const random = randomStream(11);
    const normal = () => normalQuantile((random.below(1_000_000) + 0.5) / 1_000_000);
    for (let run = 0; run < runs; run += 1) {
      // Every print has an error of density of its own, every reading one of force.
      const coupons = [0.3, 0.3, 0.42, 0.42, 0.55, 0.55].map((density) => {
        const print = coupon(
          truth,
          density * (1 + (PRINT_SCATTER / 2) * normal()),
          0.75,
          () => 0.02 * normal(),
        );
        return { ...print, density };
      });
      const { material, tolerance } = couponFit(coupons, TAKEN);
      for (const name of FITTED)
        if (Math.abs(material[name] - truth[name]) <= (tolerance[name] ?? 0)) inside[name] += 1;
      widest = Math.max(widest, (tolerance.solidModulus ?? Infinity) / material.solidModulus);
    }
    // 57 of 60 are expected; fewer than 52 come one time in a hundred.
    for (const name of FITTED) expect(inside[name], name).toBeGreaterThanOrEqual(52);
    // A factor of 1.7 either way was taken before: no interval may be so wide as to be nothing new.
    expect(widest).toBeLessThan(0.35);
  });

  it('and a stop pressed as a whole tell the same material', () => {
    const truth = { ...TAKEN, solidModulus: 18e6, softening: 2.5, closing: 1.3 };
    const body = {
      height: 0.06,
      radius: { at: [0, 0.06], value: [0.03, 0.026] },
      bore: 0.004,
      skin: 0,
      density: { at: [0, 0.06], value: [0.5, 0.3] },
    };
    const layers = printedLayers(body, truth, HALF_HELD);
    const crush = Array.from({ length: 10 }, (_, k) => 0.0024 * (k + 1));
    const force = crush.map((c) => columnPressed(layers, c).force);
    const { material, tolerance, misfit } = couponFit([], TAKEN, [{ body, crush, force }]);
    expect(misfit).toBeLessThan(1e-3);
    expect(material.solidModulus / truth.solidModulus).toBeCloseTo(1, 2);
    expect(material.softening / truth.softening).toBeCloseTo(1, 1);
    expect(material.closing / truth.closing).toBeCloseTo(1, 2);
    expect(tolerance.densityPower).toBeNull();
  });

  it('of one density are less sure where the power of density was never told', () => {
    const coupons = [0.5, 0.5].map((density) => coupon(TAKEN, density, 0.8));
    const half = (densityPower: number) =>
      couponFit(coupons, TAKEN, [], { solidModulus: 0.4, densityPower, softening: 1, closing: 0.2 }).tolerance
        .solidModulus ?? 0;
    // (0.5/0.35)^0.25 is 9 %, one standard deviation: twice that comes on top.
    expect(Math.hypot(half(0), 2 * 0.093 * TAKEN.solidModulus) / half(0.5)).toBeCloseTo(1, 1);
  });
});
