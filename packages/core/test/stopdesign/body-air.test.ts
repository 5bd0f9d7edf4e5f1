import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ATMOSPHERE } from '../../src/elements/gas-chamber.ts';
import { steadyVentPressure, ventFlow, ventPressure } from '../../src/elements/vent.ts';
import { pressedWithAir } from '../../src/stopdesign/body-air.ts';
import { cellGasStress } from '../../src/stopdesign/cellular.ts';
import { columnPressed } from '../../src/stopdesign/column.ts';
import { latticeLaw } from '../../src/stopdesign/lattice-law.ts';
import { anyMaterial, between } from './any-material.ts';

describe('air shut in a printed body', () => {
  const area = 0.002;
  const height = 0.06;

  it('of one density presses like the gas of closed cells', () => {
    fc.assert(
      fc.property(anyMaterial, between(0.2, 0.5), between(0.05, 0.8), (material, density, share) => {
        const law = latticeLaw(material, density);
        const strain = share * law.locksAt;
        const layers = [
          { height: 0.02, area, law },
          { height: 0.04, area, law },
        ];
        const volume = area * height * (1 - density);
        const { state, pressure } = pressedWithAir(layers, strain * height, { volume, index: 1 });
        // Gibson and Ashby: p₀·ε ÷ (1 − ε − ρ) on the whole area.
        const gas = cellGasStress(ATMOSPHERE, strain, density);
        expect(pressure / gas).toBeCloseTo(1, 6);
        expect((state.force - columnPressed(layers, strain * height).force) / (gas * area)).toBeCloseTo(1, 5);
      }),
    );
  });

  it('of a tapered body makes the wide slices carry more of the air, and the sum of crushes stays', () => {
    fc.assert(
      fc.property(anyMaterial, between(0.1, 0.6), (material, share) => {
        const law = latticeLaw(material, 0.3);
        const layers = [
          { height: 0.03, area, law },
          { height: 0.03, area: area / 2, law },
        ];
        const volume = 1.5 * area * 0.03 * 0.7;
        const crush = share * 0.06 * law.locksAt;
        const { state } = pressedWithAir(layers, crush, { volume, index: 1.4 });
        expect(0.03 * (state.strain[0] + state.strain[1])).toBeCloseTo(crush, 8);
        expect(state.force).toBeGreaterThan(columnPressed(layers, crush).force);
      }),
      { numRuns: 40 },
    );
  });
});

describe('air let out through vents at a steady speed', () => {
  const WARM = { outside: ATMOSPHERE, temperature: 293.15 };

  it('takes the pressure at which the hole lets out what the face sweeps', () => {
    // Shared check 6.2: 6.61863e-4 kg/s through 2 mm from 120 to 101.325 kPa at 293.15 K.
    const vent = { area: (Math.PI / 4) * 0.002 ** 2, discharge: 1 };
    const face = 0.0019635;
    const speed = (6.61863e-4 * 287.05 * 293.15) / 120_000 / face;
    const pressure = steadyVentPressure(vent, face, speed, WARM) ?? Number.NaN;
    expect(pressure + ATMOSPHERE).toBeCloseTo(120_000, -1);
  });

  it('is the incompressible law at small pressure, and refuses beyond choking', () => {
    const vent = { area: (Math.PI / 4) * 0.008 ** 2, discharge: 0.62 };
    const slow = steadyVentPressure(vent, 0.0019635, 0.3, WARM) ?? Number.NaN;
    expect(slow / (ventPressure(vent, 0.0019635, 0.3) ?? Number.NaN)).toBeCloseTo(1, 2);
    expect(steadyVentPressure({ ...vent, area: vent.area / 16 }, 0.0019635, 1, WARM)).toBeNull();
  });

  it('grows with speed and gives back the flow', () => {
    fc.assert(
      fc.property(between(0.05, 3), between(0.002, 0.01), (speed, hole) => {
        const vent = { area: (Math.PI / 4) * hole ** 2, discharge: 0.62 };
        const face = 0.002;
        const pressure = steadyVentPressure(vent, face, speed, WARM);
        fc.pre(pressure !== null);
        const inside = (pressure ?? 0) + ATMOSPHERE;
        const out = ventFlow(vent, inside, ATMOSPHERE, 293.15) / (inside / (287.05 * 293.15));
        expect(out / (face * speed)).toBeCloseTo(1, 6);
      }),
    );
  });
});
