import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCoupons } from '../../src/rigfile/coupon-form.ts';
import { type MaterialFile, materialText, readMaterial } from '../../src/rigfile/material-file.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyMaterial: fc.Arbitrary<MaterialFile> = fc
  .tuple(
    number(1e6, 400e6),
    number(-2, 2),
    number(0, 20),
    number(0.6, 2),
    number(0.01, 0.6),
    number(-0.99, 0.99),
  )
  .map(([solidModulus, densityPower, softening, closing, half, by]) => ({
    name: 'my-tpu',
    middle: { structure: 'sheet-gyroid' as const, solidModulus, densityPower, softening, closing },
    half: { solidModulus: half, densityPower: half, softening: half, closing: half / 2 },
    correlation: [1, 0, by, 0, 0, 1, 0, 0, by, 0, 1, 0, 0, 0, 0, 1],
    told: ['solidModulus', 'softening'] as const,
  }));

describe('the file of a printed material', () => {
  it('reads back what was written', () => {
    fc.assert(
      fc.property(anyMaterial, (material) => {
        const read = readMaterial(materialText(material, ['Read from a form.']), 'mine.yaml');
        if (!read.ok) throw new Error(JSON.stringify(read.problems));
        const { middle, half, correlation, told, name } = read.value;
        expect([name, told]).toEqual(['my-tpu', material.told]);
        for (const key of ['solidModulus', 'densityPower', 'softening', 'closing'] as const) {
          expect(Math.abs(middle[key] - material.middle[key])).toBeLessThanOrEqual(
            1e-5 * Math.abs(material.middle[key]),
          );
          expect(half[key] / material.half[key]).toBeCloseTo(1, 2);
        }
        correlation.forEach((value, i) => {
          expect(Math.abs(value - material.correlation[i])).toBeLessThan(0.006);
        });
      }),
    );
  });

  const GOOD = materialText(fc.sample(anyMaterial, { seed: 1, numRuns: 1 })[0], []);
  it.each([
    ['a missing version', (text: string) => text.replace('schema: 1\n', ''), 'rig-schema-version', 'schema'],
    [
      'a newer version',
      (text: string) => text.replace('schema: 1', 'schema: 9'),
      'rig-schema-from-the-future',
      'schema',
    ],
    ['an unknown key', (text: string) => `${text}softning: 3\n`, 'rig-key-unknown', 'softning'],
    ['a missing number', (text: string) => text.replace(/^closing:.*\n/m, ''), 'rig-key-missing', 'closing'],
    [
      'a modulus without unit',
      (text: string) => text.replace(/ MPa/, ''),
      'quantity-unit-missing',
      'solidModulus',
    ],
    [
      'a modulus of steel',
      (text: string) => text.replace(/solidModulus: .*/, 'solidModulus: 200000 MPa ± 10'),
      'quantity-out-of-range',
      'solidModulus',
    ],
    [
      'a number without half-width',
      (text: string) => text.replace(/closing: .*/, 'closing: 1.2'),
      'quantity-out-of-range',
      'closing',
    ],
    [
      'another lattice',
      (text: string) => text.replace('sheet-gyroid', 'honeycomb'),
      'rig-wrong-shape',
      'structure',
    ],
    [
      'a pair of one',
      (text: string) => `${text.replace(/together:[\s\S]*/, '')}together:\n  closing: 0.5\n`,
      'rig-wrong-shape',
      'together.closing',
    ],
  ])('refuses %s, with file, line and key', (_, change, code, key) => {
    const read = readMaterial(change(GOOD), 'mine.yaml');
    expect(read).toMatchObject({ ok: false, problems: [{ code, where: { file: 'mine.yaml', key } }] });
  });
});

describe('a form of coupons', () => {
  const HEAD = 'coupon [name], density [%], height [mm], diameter [mm], crush [mm], force [N]\n';
  it('leaves out rows without a force, and knows the line of each reading', () => {
    const read = readCoupons(
      `${HEAD}A1, 30, 30, 29.8, 1.5, 100\nA1, 30, 30, 29.8, 3, \nB1, 40, 30, 30, 2, 200\n`,
      'f.csv',
    );
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.value).toMatchObject([
      {
        name: 'A1',
        density: 0.3,
        diameter: 0.0298,
        crush: [0.0015],
        force: [100],
        where: [{ file: 'f.csv', line: 2 }],
      },
      { name: 'B1', where: [{ line: 4 }] },
    ]);
  });

  it.each([
    ['nothing filled in', `${HEAD}A1, 30, 30, 30, 1.5, \n`, 'stop-press-too-short', undefined],
    ['five cells', `${HEAD}A1, 30, 30, 30, 1.5\n`, 'rig-wrong-shape', 2],
    [
      'two heights of one coupon',
      `${HEAD}A1, 30, 30, 30, 1.5, 10\nA1, 30, 31, 30, 3, 20\n`,
      'rig-wrong-shape',
      3,
    ],
    ['a force that is a length', `${HEAD}A1, 30, 30, 30, 1.5, 10 mm\n`, 'quantity-unit-wrong-kind', 2],
  ])('refuses %s at its line', (_, text, code, line) => {
    const read = readCoupons(text, 'f.csv');
    expect(read).toMatchObject({
      ok: false,
      problems: [{ code, where: { file: 'f.csv', ...(line && { line }) } }],
    });
  });
});
