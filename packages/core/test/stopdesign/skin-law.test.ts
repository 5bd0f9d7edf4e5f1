import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { neoHookeanLaw } from '../../src/stopdesign/layer-law.ts';
import { foldingBand, foldingKnockDown, skinLaw } from '../../src/stopdesign/skin-law.ts';
import { between } from './any-material.ts';

describe('a skin around a lattice', () => {
  const any = [between(5e6, 70e6), between(0.0006, 0.003), between(0.012, 0.04), between(0.02, 0.4)] as const;

  it('is solid rubber at first, and never more than the stress at which it folds', () => {
    fc.assert(
      fc.property(...any, between(0, 1), (modulus, thickness, radius, behind, hold) => {
        const wall = { thickness, radius };
        const [least, most] = foldingBand(modulus, wall, behind * modulus);
        const law = skinLaw(modulus, wall, behind * modulus, hold);
        const folds = least * (most / least) ** hold;
        const solid = neoHookeanLaw(modulus / 3);
        expect(most).toBeGreaterThan(least);
        expect(law.stress(1e-4) / solid.stress(1e-4)).toBeCloseTo(1, 3);
        for (const strain of [0.05, 0.2, 0.5, 0.8]) {
          expect(law.stress(strain)).toBeLessThan(folds);
          expect(law.stress(strain)).toBeLessThan(solid.stress(strain));
          expect(law.slope(strain)).toBeGreaterThan(0);
        }
      }),
    );
  });

  it('has the slope of its own stress and the energy of its own work', () => {
    fc.assert(
      fc.property(...any, between(0.005, 0.6), (modulus, thickness, radius, behind, strain) => {
        const law = skinLaw(modulus, { thickness, radius }, behind * modulus, 0.5);
        const h = 1e-6;
        const slope = (law.stress(strain + h) - law.stress(strain - h)) / (2 * h);
        expect(Math.abs(law.slope(strain) - slope)).toBeLessThan(1e-5 * law.slope(0));
        let work = 0;
        const steps = 4000;
        for (let k = 0; k < steps; k += 1)
          work += (law.stress((strain * (k + 0.5)) / steps) * strain) / steps;
        expect(law.energy(strain) / work).toBeCloseTo(1, 4);
      }),
    );
  });

  it('of a thin wide tube is knocked down more than of a thick narrow one', () => {
    expect(foldingKnockDown(1, 20)).toBeGreaterThan(foldingKnockDown(1, 200));
    expect(foldingKnockDown(1, 1e-9)).toBeCloseTo(1, 5);
  });
});
