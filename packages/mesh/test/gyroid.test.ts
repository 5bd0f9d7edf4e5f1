import fc from 'fast-check';
import { expect, it } from 'vitest';
import { gyroidLevel, sheetDensity, sheetLevel } from '../src/gyroid.ts';

it('fills the share of a cell that a count on a grid finds', () => {
  const n = 60;
  for (const level of [0.31, 0.77]) {
    let inside = 0;
    for (let i = 0; i < n; i += 1)
      for (let j = 0; j < n; j += 1)
        for (let k = 0; k < n; k += 1)
          if (Math.abs(gyroidLevel((i + 0.31) / n, (j + 0.57) / n, (k + 0.83) / n, 1)) <= level) inside += 1;
    expect(sheetDensity(level)).toBeCloseTo(inside / n ** 3, 3);
  }
});

it('finds the level of a density, and the density of that level', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (density) => {
      expect(sheetDensity(sheetLevel(density))).toBeCloseTo(density, 4);
    }),
    { seed: 3 },
  );
});
