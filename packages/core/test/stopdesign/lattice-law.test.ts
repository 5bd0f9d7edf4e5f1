import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { latticeLaw } from '../../src/stopdesign/lattice-law.ts';
import { lockingLaw } from '../../src/stopdesign/layer-law.ts';
import { anyDensity, anyMaterial, between } from './any-material.ts';

describe('a printed lattice', () => {
  it('is harder the denser it is, at every strain: so one density answers one force', () => {
    fc.assert(
      fc.property(
        anyMaterial,
        anyDensity,
        between(1.02, 1.3),
        between(0.01, 0.9),
        (material, thin, more, share) => {
          const dense = Math.min(thin * more, 0.65);
          const [soft, hard] = [latticeLaw(material, thin), latticeLaw(material, dense)];
          const strain = share * hard.locksAt;
          expect(hard.stress(strain)).toBeGreaterThan(soft.stress(strain));
        },
      ),
    );
  });

  it('without softening is the locking law', () => {
    fc.assert(
      fc.property(anyMaterial, anyDensity, between(0.01, 0.9), (material, density, share) => {
        const lattice = latticeLaw({ ...material, softening: 0 }, density);
        const locking = lockingLaw(lattice.slope(0), lattice.locksAt);
        const strain = share * lattice.locksAt;
        expect(lattice.stress(strain) / locking.stress(strain)).toBeCloseTo(1, 12);
        expect(lattice.energy(strain) / locking.energy(strain)).toBeCloseTo(1, 5);
      }),
    );
  });
});
