import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Coupon, couponFit } from '../../src/stopdesign/coupon-fit.ts';
import { type LatticeMaterial, latticeLaw } from '../../src/stopdesign/lattice-law.ts';
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
});
