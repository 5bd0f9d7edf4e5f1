import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnAt, columnEnergy, columnPressed, type Layer } from '../../src/stopdesign/column.ts';
import { latticeLaw } from '../../src/stopdesign/lattice-law.ts';
import {
  confinedNeoHookeanLaw,
  type LayerLaw,
  lockingLaw,
  neoHookeanLaw,
  strainAt,
} from '../../src/stopdesign/layer-law.ts';
import { anyDensity, anyMaterial, between } from './any-material.ts';

const anyLaw: fc.Arbitrary<LayerLaw> = fc.oneof(
  between(0.3e6, 10e6).map(neoHookeanLaw),
  fc.tuple(between(0.3e6, 10e6), between(1e6, 30e6)).map(([g, k]) => confinedNeoHookeanLaw(g, k)),
  fc.tuple(between(0.3e6, 10e6), between(0.4, 0.9)).map(([e, l]) => lockingLaw(e, l)),
  fc.tuple(anyMaterial, anyDensity).map(([material, density]) => latticeLaw(material, density)),
);
const anyLayers: fc.Arbitrary<readonly Layer[]> = fc.array(
  fc.record({ height: between(0.002, 0.03), area: between(5e-4, 5e-3), law: anyLaw }),
  { minLength: 1, maxLength: 8 },
);

describe('a slice', () => {
  it('has the slope of its own stress and the energy of its own work', () => {
    fc.assert(
      fc.property(anyLaw, between(0.02, 0.8), (law, share) => {
        const strain = share * law.locksAt;
        const h = 1e-6;
        const slope = (law.stress(strain + h) - law.stress(strain - h)) / (2 * h);
        expect(law.slope(strain) / slope).toBeCloseTo(1, 5);
        const power = (law.energy(strain + h) - law.energy(strain - h)) / (2 * h);
        expect(power / law.stress(strain)).toBeCloseTo(1, 5);
      }),
    );
  });

  it('is asked back: the strain at a stress carries that stress', () => {
    fc.assert(
      fc.property(anyLaw, between(1e3, 20e6), (law, stress) => {
        expect(law.stress(strainAt(law, stress)) / stress).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('slices in series', () => {
  it('do not mind their order', () => {
    fc.assert(
      fc.property(anyLayers, between(10, 20000), (layers, force) => {
        const turned = [...layers].reverse();
        expect(columnAt(turned, force).crush).toBeCloseTo(columnAt(layers, force).crush, 12);
      }),
    );
  });

  it('are pressed by a force that gives back the crush', () => {
    fc.assert(
      fc.property(anyLayers, between(10, 20000), (layers, force) => {
        const { crush } = columnAt(layers, force);
        expect(columnPressed(layers, crush).force / force).toBeCloseTo(1, 7);
      }),
    );
  });

  it('hold the work that was put in', () => {
    fc.assert(
      fc.property(anyLayers, between(100, 10000), (layers, force) => {
        // Work along the path by the trapezium rule in force: ∫ F dδ, finely.
        const steps = 200;
        let work = 0;
        let before = columnAt(layers, 0);
        for (let k = 1; k <= steps; k += 1) {
          const state = columnAt(layers, force * (k / steps) ** 2, before);
          work += ((state.force + before.force) / 2) * (state.crush - before.crush);
          before = state;
        }
        expect(columnEnergy(layers, before) / work).toBeCloseTo(1, 2);
      }),
      { numRuns: 20 },
    );
  });
});
