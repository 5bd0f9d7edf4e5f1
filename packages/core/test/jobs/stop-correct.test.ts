import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CORRECT_DOUBTS, type CorrectRequest, correctMaterial } from '../../src/jobs/stop-correct.ts';
import { couponPlan } from '../../src/jobs/stop-coupons.ts';
import { designStop, type StopDesignRequest } from '../../src/jobs/stop-design.ts';
import { printableRange } from '../../src/jobs/stop-design-faults.ts';
import { latticeLaw } from '../../src/stopdesign/lattice-law.ts';
import { PRINT_MATERIALS, usualMaterial } from '../../src/stopdesign/print-material.ts';
import { correctDoubtText, couponTexts, togetherText, toldText } from '../../src/words/print-materials.ts';
import { must } from './ochre.ts';

const TRUTH = { ...usualMaterial('tpu-85a').middle, solidModulus: 20e6, densityPower: -0.2, closing: 1.25 };
const plan = must(couponPlan({ cell: 0.01, wall: 0.0008, material: 'tpu-85a' }));

/** The planned coupons, pressed as they would answer with a material. */
const pressedCoupons = (gain = 1, material = TRUTH): CorrectRequest['coupons'] =>
  plan.coupons.map(({ name, density, readings }, k) => {
    const law = latticeLaw(material, density);
    const crush = readings.map((one) => one.crush).filter((c) => c < 0.95 * plan.height * law.locksAt);
    const area = (Math.PI / 4) * plan.diameter ** 2;
    return {
      name,
      density,
      height: plan.height,
      diameter: plan.diameter,
      crush,
      force: crush.map((c) => gain * area * law.stress(c / plan.height)),
      where: crush.map((_, i) => ({ file: 'form.csv', line: 10 * k + i + 4 })),
    };
  });
const ask = (change: Partial<CorrectRequest> = {}): CorrectRequest => ({
  name: 'mine',
  before: 'tpu-85a',
  coupons: pressedCoupons(),
  stops: [],
  ...change,
});
const fault = (change: Partial<CorrectRequest['coupons'][number]>) => {
  const [first, ...rest] = pressedCoupons();
  return correctMaterial(ask({ coupons: [{ ...first, ...change }, ...rest] }));
};

describe('the coupons to print', () => {
  it.each(PRINT_MATERIALS)(
    'of %s lie in what prints, two of each of three densities, told to close',
    (material) => {
      const { coupons, densities, diameter, height } = must(
        couponPlan({ cell: 0.008, wall: 0.0008, material }),
      );
      const { least, most } = printableRange(0.008, 0.0008);
      expect(densities).toHaveLength(3);
      expect(coupons.map(({ name }) => name)).toEqual(['A1', 'A2', 'B1', 'B2', 'C1', 'C2']);
      expect([diameter, height]).toEqual([0.024, 0.024]);
      for (const { density, readings } of coupons) {
        expect(density).toBeGreaterThanOrEqual(least);
        expect(density).toBeLessThanOrEqual(most);
        readings.forEach(({ crush, least: low, most: high }, i) => {
          expect(crush).toBeGreaterThan(i === 0 ? 0 : readings[i - 1].crush);
          expect(low).toBeGreaterThanOrEqual(i === 0 ? 1 : readings[i - 1].least);
          if (high !== null) expect(high).toBeGreaterThan(low);
        });
        // Deep enough that closing shows.
        expect(readings[readings.length - 1].crush / height).toBeGreaterThan(0.6 * (1 - 1.2 * density));
      }
      expect(
        couponTexts(must(couponPlan({ cell: 0.008, wall: 0.0008, material })), 'shop').join(' '),
      ).toContain('in across');
    },
  );

  it('cannot be of walls too thick for their cell', () => {
    expect(couponPlan({ cell: 0.004, wall: 0.0008, material: 'tpu-85a' })).toMatchObject({
      ok: false,
      problems: [{ code: 'stop-design-range' }],
    });
  });
});

describe('a material corrected by presses', () => {
  it('comes back from the planned coupons, each number within the half-width that it states', () => {
    const share = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        share(10e6, 25e6),
        share(-0.4, 0.4),
        share(0.5, 3.5),
        share(1.05, 1.35),
        (e, power, soft, closing) => {
          const truth = { ...TRUTH, solidModulus: e, densityPower: power, softening: soft, closing };
          const { numbers, misfit } = must(correctMaterial(ask({ coupons: pressedCoupons(1, truth) })));
          expect(misfit).toBeLessThan(1e-3);
          for (const { number, value, half, isTold } of numbers) {
            expect(isTold).toBe(true);
            expect(Math.abs(value - truth[number])).toBeLessThan(Math.max(0.1 * half, 1e-3));
          }
        },
      ),
      { numRuns: 15 },
    );
  });

  it('makes the next design surer, and nearer to what the stop will do', () => {
    const design = (material: StopDesignRequest['material']) =>
      must(
        designStop({
          height: 0.07,
          diameters: [0.06, 0.06],
          bore: 0,
          cell: 0.01,
          wall: 0.0008,
          material,
          target: null,
          density: [0.5, 0.35],
          trials: 60,
          seed: 1,
        }),
      );
    const { material } = must(correctMaterial(ask()));
    const [before, after] = [design('tpu-85a'), design(material)];
    const width = ({ curve }: typeof before) => (curve[5].high ?? Infinity) / (curve[5].low ?? 0);
    expect(width(before)).toBeGreaterThan(2);
    expect(width(after)).toBeLessThan(1.35);
    expect(before.doubts).toContain('no-coupon');
    expect(after.doubts).not.toContain('no-coupon');
    expect(after.doubts).not.toContain('untold');
  });

  it('of one density leaves the power of density as wide as it was, and says so', () => {
    const some = pressedCoupons().filter(({ density }) => density === plan.densities[0]);
    const one = must(correctMaterial(ask({ coupons: some })));
    expect(one.numbers[1]).toMatchObject({ number: 'densityPower', isTold: false, value: 0, half: 0.5 });
    expect(one.doubts).toContain('one-density');
    expect(one.material.told).not.toContain('densityPower');
  });

  it('says which numbers it cannot tell apart, and every doubt in words', () => {
    const { together, numbers } = must(correctMaterial(ask()));
    expect(together.length).toBeGreaterThan(0);
    for (const pair of together) expect(togetherText(pair)).toContain('correlation');
    for (const one of numbers) expect(toldText(one, 'metric').now).toMatch(/±/);
    expect(toldText(numbers[0], 'metric').now).toMatch(/^20\.\d? ?.*MPa$|^20.*MPa$/);
    for (const doubt of CORRECT_DOUBTS) expect(correctDoubtText(doubt)).toMatch(/^[A-Z].*\.$/);
  });

  it.each([
    ['of no height', { height: 0 }, 'stop-shape', 4],
    ['of a density beyond a lattice', { density: 0.9 }, 'stop-design-range', 4],
    [
      'with a negative force',
      { force: [10, -20, 30, 40], crush: [0.001, 0.002, 0.003, 0.004] },
      'stop-press-sign',
      5,
    ],
    [
      'with a crush that goes back',
      { crush: [0.001, 0.003, 0.002, 0.004], force: [1, 2, 3, 4] },
      'stop-press-strokes',
      6,
    ],
    ['with two readings', { crush: [0.001, 0.002], force: [100, 200] }, 'stop-press-too-short', 4],
    ['crushed flat', { crush: [0.01, 0.02, 0.029], force: [100, 200, 300] }, 'stop-shape', 6],
  ])('refuses a coupon %s, at its line', (_, change, code, line) => {
    expect(fault(change)).toMatchObject({
      ok: false,
      problems: [{ code, where: { file: 'form.csv', line } }],
    });
  });

  it('refuses units that were mixed up, either way', () => {
    for (const gain of [1000, 1e-3])
      expect(correctMaterial(ask({ coupons: pressedCoupons(gain) }))).toMatchObject({
        ok: false,
        problems: expect.arrayContaining([expect.objectContaining({ code: 'stop-press-units' })]),
      });
  });

  it('refuses a stop that is not the one of the design', () => {
    const body = {
      height: 0.06,
      radius: { at: [0, 0.06], value: [0.03, 0.03] },
      bore: 0,
      skin: 0,
      density: { at: [0, 0.06], value: [0.5, 0.3] },
    };
    const where = { file: 'press.csv' };
    const stop = (crush: number[], force: number[]) =>
      correctMaterial(ask({ coupons: [], stops: [{ body, crush, force, where }] }));
    expect(stop([0.02, 0.05, 0.07], [1e3, 4e3, 9e3])).toMatchObject({
      ok: false,
      problems: [{ code: 'stop-shape', where }],
    });
    expect(stop([0.003, 0.006, 0.01], [1, 2, 4])).toMatchObject({
      ok: false,
      problems: [{ code: 'stop-press-units', where }],
    });
  });

  it('refuses to say anything without readings', () => {
    expect(correctMaterial(ask({ coupons: [] }))).toMatchObject({
      ok: false,
      problems: [{ code: 'stop-press-too-short' }],
    });
  });
});
