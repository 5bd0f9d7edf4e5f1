import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnAt } from '../../src/stopdesign/column.ts';
import { densityForCurve, type WantedCurve } from '../../src/stopdesign/density-for-curve.ts';
import type { LatticeMaterial } from '../../src/stopdesign/lattice-law.ts';
import { HALF_HELD, type PrintedBody, printedLayers } from '../../src/stopdesign/printed-body.ts';
import { anyMaterial, between } from './any-material.ts';

const RANGE = { least: 0.15, most: 0.6 };

const bodyWith = (densities: readonly number[], tip: number): PrintedBody => ({
  height: 0.07,
  radius: { at: [0, 0.07], value: [0.03, tip] },
  bore: 0.004,
  skin: 0,
  density: { at: densities.map((_, i) => (0.07 * i) / (densities.length - 1)), value: densities },
});

/** What a body answers up to half of what closes its softest slice. */
function curveOfBody(body: PrintedBody, material: LatticeMaterial): WantedCurve {
  const layers = printedLayers(body, material, HALF_HELD);
  const most = Math.min(...layers.map(({ area, law }) => area * law.stress(0.75 * law.locksAt)));
  const force = Array.from({ length: 41 }, (_, k) => most * (k / 40) ** 2);
  return { force, crush: force.map((f) => columnAt(layers, f).crush) };
}

describe('the density that answers a wanted curve', () => {
  it('gives a curve back that a body in reach has made, within 2 % of its crush', () => {
    fc.assert(
      fc.property(
        anyMaterial,
        between(0.2, 0.58),
        between(0.3, 0.95),
        between(0.024, 0.03),
        (material, foot, share, tip) => {
          const least = Math.max(0.16, foot * share);
          const made = bodyWith([foot, (foot + least) / 2 + (foot - least) / 8, least], tip);
          const wanted = curveOfBody(made, material);
          const { worst, body } = densityForCurve(
            bodyWith([0.3, 0.3], tip),
            material,
            HALF_HELD,
            wanted,
            RANGE,
          );
          expect(worst).toBeLessThan(0.02);
          for (const density of body.density.value) {
            expect(density).toBeGreaterThanOrEqual(RANGE.least);
            expect(density).toBeLessThanOrEqual(RANGE.most);
          }
          for (let i = 1; i < body.density.value.length; i += 1)
            expect(body.density.value[i]).toBeLessThanOrEqual(body.density.value[i - 1]);
        },
      ),
      { numRuns: 6 },
    );
  });

  it('says by how much a curve is missed that is softer or harder than any print', () => {
    const material = {
      structure: 'sheet-gyroid',
      solidModulus: 30e6,
      densityPower: 0,
      softening: 1,
      closing: 1.4,
    } as const;
    const reached = curveOfBody(bodyWith([0.4, 0.3], 0.03), material);
    const times = (factor: number): WantedCurve => ({
      crush: reached.crush,
      force: reached.force.map((f) => f * factor),
    });
    const soft = densityForCurve(bodyWith([0.3, 0.3], 0.03), material, HALF_HELD, times(0.1), RANGE);
    expect(soft.worst).toBeGreaterThan(0.3);
    expect(Math.max(...soft.off)).toBeLessThan(0);
    expect(soft.atLeast).toBeGreaterThan(0.5);
    const hard = densityForCurve(bodyWith([0.3, 0.3], 0.03), material, HALF_HELD, times(12), RANGE);
    expect(hard.worst).toBeGreaterThan(0.3);
    expect(hard.off[0]).toBeGreaterThan(0);
    // As dense as it may be it would close before the end of the curve: a little less misses least.
    expect(Math.min(...hard.body.density.value)).toBeGreaterThan(0.5);
  });
});
