import { describe, expect, it } from 'vitest';
import {
  blowDownTime,
  CRITICAL_RATIO,
  VENT_HOLDS_BELOW,
  ventFlow,
  ventPressure,
  ventResistance,
} from '../../src/elements/vent.ts';

const vent = { area: Math.PI * 1e-6, discharge: 0.62 };

describe('a vent', () => {
  it('passes nothing between equal pressures and no more once it is choked', () => {
    expect(ventFlow(vent, 2e5, 2e5, 293)).toBe(0);
    const choked = ventFlow(vent, 3e5, CRITICAL_RATIO * 3e5, 293);
    expect(ventFlow(vent, 3e5, 0, 293)).toBe(choked);
    expect(ventFlow(vent, 3e5, 0.6 * 3e5, 293)).toBeLessThan(choked);
  });

  it('refuses to call air incompressible where it is not', () => {
    expect(ventPressure(vent, 1963.5e-6, 1)).toBeNull();
    expect(ventPressure({ area: 50e-6, discharge: 0.62 }, 1963.5e-6, 1)).toBeGreaterThan(0);
  });

  it('asks in steady compressible flow for 29 % more pressure than the law where that ends, and less and less below', () => {
    const [faceArea, temperature, outside] = [1963.5e-6, 293.15, 101_325];
    const hole = { area: 30e-6, discharge: 0.62 };
    const more = (law: number): number => {
      const swept = faceArea * Math.sqrt(law / ventResistance(hole, faceArea));
      // Pressure at which as much mass leaves as the face sweeps, air in the space at the temperature outside.
      let [low, high] = [outside, 2 * outside];
      for (let k = 0; k < 60; k += 1) {
        const inside = (low + high) / 2;
        const leaves = ventFlow(hole, inside, outside, temperature);
        if (leaves < (swept * inside) / (287.05 * temperature)) low = inside;
        else high = inside;
      }
      return (low - outside) / law;
    };
    expect(more(VENT_HOLDS_BELOW)).toBeCloseTo(1.29, 2);
    expect(more(VENT_HOLDS_BELOW / 2)).toBeLessThan(1.15);
    expect(more(1)).toBeCloseTo(1, 3);
  });

  it('empties a volume as its own choked flow does', () => {
    // dp/dt = −R·T·ṁ(p)/V, stepped by the midpoint rule from 4 to 2 bar.
    const [volume, temperature] = [5e-5, 293.15];
    const slope = (p: number) => (-287.05 * temperature * ventFlow(vent, p, 0, temperature)) / volume;
    const time = blowDownTime(vent, { volume, from: 4e5, to: 2e5, temperature });
    const step = time / 4000;
    let pressure = 4e5;
    for (let k = 0; k < 4000; k += 1) pressure += step * slope(pressure + (step / 2) * slope(pressure));
    expect(pressure / 2e5).toBeCloseTo(1, 6);
  });
});
