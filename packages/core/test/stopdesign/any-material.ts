import fc from 'fast-check';
import type { LatticeMaterial } from '../../src/stopdesign/lattice-law.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Materials that a printer may well have. */
export const anyMaterial: fc.Arbitrary<LatticeMaterial> = fc.record({
  structure: fc.constant('sheet-gyroid' as const),
  solidModulus: between(10e6, 70e6),
  densityPower: between(-0.5, 0.5),
  softening: between(0, 4),
  closing: between(1, 1.4),
});

export const anyDensity = between(0.12, 0.6);
export { between };
