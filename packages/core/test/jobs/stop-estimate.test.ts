import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BlockStep,
  ESTIMATE_DOUBTS,
  type EstimateEnds,
  estimateStop,
  type StopEstimate,
} from '../../src/jobs/stop-estimate.ts';
import { estimateFragment } from '../../src/rigfile/estimate-fragment.ts';
import { readRig } from '../../src/rigfile/read.ts';
import { parseBulkDensity } from '../../src/stopdesign/bulk-density-text.ts';
import { modulusBand } from '../../src/stopdesign/hardness.ts';
import { parseHardness } from '../../src/stopdesign/hardness-text.ts';
import { estimateDoubtText } from '../../src/words/estimate-doubts.ts';
import { must } from './ochre.ts';

const OCHRE = readFileSync(new URL('../../../../examples/ochre/ochre.rig.yaml', import.meta.url), 'utf8');
const block = (
  steps: readonly BlockStep[],
  ends: EstimateEnds,
  shoreA = 60,
  kind: 'rubber' | 'polyurethane' = 'rubber',
): StopEstimate => must(estimateStop({ kind, hardness: { value: shoreA, scale: 'shore-a' }, steps, ends }));

/** Force on straight lines between the points. */
const at = ({ crush }: StopEstimate, force: readonly number[], c: number): number => {
  const i = Math.max(
    1,
    crush.findIndex((x) => x >= c),
  );
  return force[i - 1] + ((force[i] - force[i - 1]) * (c - crush[i - 1])) / (crush[i] - crush[i - 1]);
};

describe('a block by its hardness', () => {
  it('holds the worked example of a bonded block within its band', () => {
    // 60 IRHD, D = h = 63.5 mm: Lindley, Engineering Design with Natural Rubber (from memory), E₀ 4.45 MPa, k 0.57.
    const side = 0.0635;
    const estimate = block([{ height: side, diameter: side, bore: 0 }], 'bonded');
    for (const [strain, force] of [
      [0.1, 1684],
      [0.2, 3837],
      [0.3, 6747],
      [0.4, 10_959],
    ] as const) {
      expect(at(estimate, estimate.least, strain * side)).toBeLessThan(force);
      expect(at(estimate, estimate.most, strain * side)).toBeGreaterThan(force);
      expect(at(estimate, estimate.middle, strain * side) / force).toBeGreaterThan(0.75);
      expect(at(estimate, estimate.middle, strain * side) / force).toBeLessThan(1.35);
    }
  });

  it.each([
    [0.25, 1.196],
    [0.5, 1.543],
    [1, 2.938],
  ])('is held by bonded ends as finite elements say, shape factor %f', (shape, ratio) => {
    // CalculiX 2.20, neo-Hookean, K 1000 G: apparent ÷ Young's modulus at small strain. The formula lies up to 7 % from it.
    const steps = [{ height: 0.05 / (4 * shape), diameter: 0.05, bore: 0 }];
    const [bonded, greased] = [block(steps, 'bonded'), block(steps, 'greased')];
    expect(bonded.shapeFactors[0]).toBeCloseTo(shape, 12);
    const first = (one: StopEstimate): number => one.most[1] / one.crush[1];
    // Both curves end at the same strain, so the same point has the same crush.
    expect(bonded.crush[1]).toBeCloseTo(greased.crush[1], 12);
    expect(first(bonded) / first(greased) / ratio).toBeGreaterThan(0.93);
    expect(first(bonded) / first(greased) / ratio).toBeLessThan(1.07);
  });

  it('in steps is a column: a cone of many steps, greased, by its closed form at small strain', () => {
    // δ = F·H ÷ (π·E·R₀·R₁), any text on the strength of materials. Steps of even height: second order in their count.
    const count = 60;
    const steps = Array.from({ length: count }, (_, i) => ({
      height: 0.05 / count,
      diameter: 2 * (0.015 + (0.015 * (i + 0.5)) / count),
      bore: 0,
    }));
    const estimate = block(steps, 'greased');
    const young = modulusBand(60, 'shore-a').middle;
    const rate = (Math.PI * young * 0.015 * 0.03) / 0.05;
    // At the first point the thin end is strained by some per cent already, and rubber stiffens by as much.
    const [c, f] = [estimate.crush[1], estimate.middle[1]];
    expect(f / c / rate).toBeGreaterThan(1);
    expect(f / c / rate).toBeLessThan(1 + (3 * c) / 0.05);
    expect(estimate.doubts).toContain('stepped');
  });

  it('rises, least below middle below most, whatever its shape', () => {
    const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const anyStep = fc
      .record({ height: size(0.01, 0.08), diameter: size(0.02, 0.1), share: size(0, 0.6) })
      .map(({ height, diameter, share }) => ({ height, diameter, bore: share * diameter }));
    fc.assert(
      fc.property(
        fc.array(anyStep, { minLength: 1, maxLength: 3 }),
        fc.constantFrom('bonded', 'greased', 'dry'),
        size(20, 95),
        fc.constantFrom('rubber', 'polyurethane'),
        (steps, ends, shoreA, kind) => {
          const { crush, least, middle, most, usableCrush, energy } = block(steps, ends, shoreA, kind);
          crush.forEach((c, i) => {
            if (i === 0) return;
            expect(c).toBeGreaterThan(crush[i - 1]);
            expect(least[i]).toBeGreaterThan(least[i - 1]);
            expect(middle[i]).toBeGreaterThan(least[i]);
            expect(most[i]).toBeGreaterThan(middle[i]);
          });
          const height = steps.reduce((sum, step) => sum + step.height, 0);
          expect(crush[crush.length - 1]).toBeLessThanOrEqual(0.451 * height);
          expect(usableCrush.value + (usableCrush.tolerance ?? 0)).toBeLessThanOrEqual(0.451 * height);
          expect(energy[0]).toBeLessThan(energy[2]);
        },
      ),
      { seed: 11, numRuns: 60 },
    );
  });

  it('says where its law is weak', () => {
    expect(block([{ height: 0.1, diameter: 0.05, bore: 0 }], 'dry', 90).doubts).toEqual(['hard', 'slender']);
    expect(block([{ height: 0.01, diameter: 0.05, bore: 0 }], 'bonded').doubts).toEqual(['flat']);
    for (const doubt of ESTIMATE_DOUBTS) expect(estimateDoubtText(doubt)).toMatch(/^[A-Z].*\.$/);
  });

  it.each([
    ['of no height', { height: 0, diameter: 0.05, bore: 0 }],
    ['with a bore as wide as itself', { height: 0.05, diameter: 0.05, bore: 0.05 }],
  ])('%s is none', (_, step) => {
    const asked = {
      kind: 'rubber',
      hardness: { value: 60, scale: 'shore-a' },
      steps: [step],
      ends: 'dry',
    } as const;
    expect(estimateStop(asked)).toMatchObject({ ok: false, problems: [{ code: 'stop-shape' }] });
  });
});

describe('a gas stop by its chamber', () => {
  const gas = { kind: 'gas', rodDiameter: 0.0508, pressure: 1e6, column: 0.1, stroke: 0.08 } as const;

  it('runs from the slow to the fast law of a gas', () => {
    // Shared check 6.5, any thermodynamics text: bore 50.8 mm, 10 bar gauge, column 100 mm, at 20, 40, 60, 80 mm [N].
    const { crush, least, most } = must(estimateStop(gas));
    const rows = [
      [3, 2584.88, 2845.38],
      [6, 3514.96, 4358.37],
      [9, 5375.13, 7845.61],
      [12, 10_955.6, 21_041.3],
    ] as const;
    for (const [i, slow, fast] of rows) {
      expect(crush[i]).toBeCloseTo((0.08 * i) / 12, 12);
      expect(least[i] / slow).toBeCloseTo(1, 5);
      expect(most[i] / fast).toBeCloseTo(1, 5);
    }
  });

  it('is the one of the story: 0.66 to 3.2 kN over 50 mm', () => {
    // Story S2: rod 1.375 in, 100 psi, 65 mm of gas, isothermal.
    const told = {
      kind: 'gas',
      rodDiameter: 0.034925,
      pressure: 689_475.7,
      column: 0.065,
      stroke: 0.05,
    } as const;
    const { least, warmed, doubts } = must(estimateStop(told));
    expect(least[0] / 1000).toBeCloseTo(0.66, 2);
    expect((least.at(-1) ?? 0) / 1000).toBeCloseTo(3.2, 1);
    expect(warmed).toBeGreaterThan(353.15 / 293.15);
    expect(doubts).toEqual(['no-oil']);
  });

  it.each([
    ['a column no longer than its stroke', { column: 0.08 }],
    ['no rod', { rodDiameter: 0 }],
    ['a negative charge', { pressure: -1 }],
  ])('with %s is none', (_, change) => {
    expect(estimateStop({ ...gas, ...change })).toMatchObject({
      ok: false,
      problems: [{ code: 'stop-shape' }],
    });
  });
});

describe('a hardness as typed', () => {
  it.each([
    ['60 A', 60, 'shore-a'],
    ['Shore A 60', 60, 'shore-a'],
    ['45d', 45, 'shore-d'],
    ['A72.5', 72.5, 'shore-a'],
  ])('%s is read', (text, value, scale) => {
    expect(must(parseHardness(text))).toEqual({ value, scale });
  });

  it.each([
    ['60', 'quantity-unit-missing'],
    ['', 'quantity-not-understood'],
    ['hard', 'quantity-not-understood'],
    ['A 60 D', 'quantity-not-understood'],
    ['96 A', 'stop-hardness-range'],
    ['10 A', 'stop-hardness-range'],
    ['80 D', 'stop-hardness-range'],
  ])('%s is refused', (text, code) => {
    expect(parseHardness(text)).toMatchObject({ ok: false, problems: [{ code }] });
  });
});

describe('an estimated stop in a rig file', () => {
  const inOchre = (text: string) => {
    const entry = text.replace(/^parts:\n {2}stops:\n/, '');
    return must(
      readRig(
        OCHRE.replace('parts:\n  stops:\n', (head) => head + entry),
        { file: 'a.yaml' },
      ),
    ).shelf.stops;
  };

  it.each(['shop', 'metric'] as const)('never looks measured, %s', (system) => {
    const force = { value: 6300, tolerance: 2900 };
    const usableCrush = { value: 0.0225, tolerance: 0.0045 };
    const text = estimateFragment(
      { kind: 'rubber', name: 'guess', from: '60 A', freeLength: 0.06, usableCrush, force },
      system,
    );
    const { guess } = inOchre(text);
    expect(guess.origin).not.toBe('measured');
    expect((guess.force.at(-1) ?? 0) / force.value).toBeCloseTo(1, 2);
    expect(guess.usableCrush.value).toBeCloseTo(0.0225, 4);
  });

  it('with gas is worked out from its chamber again', () => {
    const made = {
      kind: 'gas',
      name: 'air',
      from: 'gas',
      rodDiameter: 0.035,
      pressure: 7e5,
      column: 0.065,
      stroke: 0.05,
    } as const;
    expect(inOchre(estimateFragment(made, 'metric')).air.gas?.column.value).toBeCloseTo(0.065, 5);
  });
});

describe('a foam by its density', () => {
  const foam = (density: number, height = 0.06, diameter = 0.05): StopEstimate =>
    must(estimateStop({ kind: 'foam', density, solid: null, steps: [{ height, diameter, bore: 0.012 }] }));

  it('is a wide band that rises, and says that it is one', () => {
    const estimate = foam(300);
    estimate.crush.forEach((_, i) => {
      if (i === 0) return;
      expect(estimate.least[i]).toBeGreaterThan(estimate.least[i - 1]);
      expect(estimate.most[i]).toBeGreaterThan(estimate.most[i - 1]);
      // Open cells of the softest solid against closed ones of the hardest: no less than a factor of five.
      expect(estimate.most[i] / estimate.least[i]).toBeGreaterThan(5);
      expect(estimate.middle[i]).toBeCloseTo(Math.sqrt(estimate.least[i] * estimate.most[i]), 6);
    });
    expect(estimate.doubts).toEqual(['foam']);
    expect(estimate.energy[0]).toBeLessThan(estimate.energy[2]);
  });

  it('ends before dense cells close, and says so where the laws are not known', () => {
    const estimate = foam(500);
    const end = estimate.crush[estimate.crush.length - 1];
    expect(end).toBeCloseTo(0.85 * (1 - (1.4 * 500) / 1175) * 0.06, 9);
    expect(estimate.usableCrush.value).toBeLessThan(end);
    expect(estimate.doubts).toContain('foam-dense');
  });

  it('takes a modulus of its solid that is known, and is then narrower', () => {
    const steps = [{ height: 0.06, diameter: 0.05, bore: 0 }];
    const told = must(estimateStop({ kind: 'foam', density: 300, solid: [20e6, 22e6], steps }));
    const taken = must(estimateStop({ kind: 'foam', density: 300, solid: null, steps }));
    expect(told.most[6] / told.least[6]).toBeLessThan(0.5 * (taken.most[6] / taken.least[6]));
  });

  it.each([50, 900, -300, Number.NaN])('of %f kg/m³ is no foam', (density) => {
    const steps = [{ height: 0.06, diameter: 0.05, bore: 0 }];
    expect(estimateStop({ kind: 'foam', density, solid: null, steps })).toMatchObject({
      ok: false,
      problems: [{ code: 'stop-shape' }],
    });
  });

  it.each([
    ['500 kg/m3', 500],
    ['0,5 g/cm³', 500],
    ['31 lb/ft3', 496.6],
  ])('is read from %s', (text, value) => {
    const read = must(parseBulkDensity(text));
    expect(read).toBeCloseTo(value, 0);
  });

  it.each([
    ['500', 'quantity-unit-missing'],
    ['soft', 'quantity-not-understood'],
    ['500 psi', 'quantity-not-understood'],
    ['5 kg/m3', 'quantity-out-of-range'],
  ])('is not read from %s', (text, code) => {
    expect(parseBulkDensity(text)).toMatchObject({ ok: false, problems: [{ code }] });
  });
});
