import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { cellWidth } from '@lastinch/picture';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { BuiltProgram } from './program.ts';

let program: BuiltProgram;
let folder: string;
beforeAll(async () => {
  program = await BuiltProgram.make();
});
afterAll(() => program.remove());
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lastinch-print-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('lastinch stop coupons and correct', () => {
  /** The form as it would be filled in by somebody whose prints follow a plain law. */
  const filled = async (change = (text: string) => text): Promise<string> => {
    const form = join(folder, 'form.csv');
    expect((await program.run(['stop', 'coupons', '--material', 'tpu-85a', '--form', form])).code).toBe(0);
    const rows = readFileSync(form, 'utf8').split('\n');
    const lines = rows.map((row) => {
      if (!/^[A-C]\d/.test(row)) return row;
      const [, density, height, diameter, crush] = row.split(',').map(Number) as [
        number,
        number,
        number,
        number,
        number,
      ];
      const rho = density / 100;
      const strain = crush / height;
      const area = (Math.PI / 4) * diameter ** 2;
      const modulus = 20 * rho * (0.2989 + rho * (0.1221 + rho * 0.5052));
      return `${row} ${((area * modulus * strain) / (1 + strain) / (1 - strain / (1 - 1.25 * rho))).toFixed(1)}`;
    });
    writeFileSync(form, change(lines.join('\n')));
    return form;
  };

  it('plan what to print, with solids and a form, on a page of 80 columns', async () => {
    const solids = join(folder, 'coupons.3mf');
    const words = ['stop', 'coupons', '--cell', '6 mm', '--wall', '0.6 mm', '-o', solids];
    const { code, out, err } = await program.run(words, { env: { COLUMNS: '80' } });
    expect(err).toBe('');
    expect(code).toBe(0);
    for (const part of ['A1, A2', 'may close', 'Three strokes', 'Written:', 'CAUTIONS'])
      expect(out).toContain(part);
    for (const line of out.split('\n')) expect(cellWidth(line)).toBeLessThanOrEqual(80);
    expect(readFileSync(solids).subarray(0, 2).toString()).toBe('PK');
  });

  it('make a material that the next design takes, surer than before', async () => {
    const material = join(folder, 'mine.yaml');
    const words = ['stop', 'correct', '--coupons', await filled(), '--material', 'tpu-85a', '-o', material];
    const { code, out, err } = await program.run(words, { env: { COLUMNS: '80' } });
    expect(err).toBe('');
    expect(code).toBe(0);
    for (const part of ['Modulus of the print', 'MPa', 'off the law', 'Written:'])
      expect(out).toContain(part);
    expect(out).not.toMatch(/undefined|NaN|\[object|Infinity/);
    for (const line of out.split('\n')) expect(cellWidth(line)).toBeLessThanOrEqual(80);
    const width = async (name: string): Promise<number> => {
      const design = [
        'stop',
        'design',
        '--height',
        '70 mm',
        '--diameter',
        '60 mm',
        '--density',
        '40 %',
        '--json',
      ];
      const answer = JSON.parse((await program.run([...design, '--material', name])).out);
      return answer.curve[5].high / answer.curve[5].low;
    };
    expect(await width(material)).toBeLessThan(0.7 * (await width('tpu-85a')));
  });

  it('read a press of the printed stop itself beside its design', async () => {
    const design = join(folder, 'design.json');
    const words = ['stop', 'design', '--height', '70 mm', '--diameter', '60 mm', '--density', '50 %, 35 %'];
    const made = await program.run([...words, '--material', 'tpu-85a', '--json']);
    writeFileSync(design, made.out);
    const press = join(folder, 'press.csv');
    const points: { crush: number; force: number }[] = JSON.parse(made.out).curve;
    writeFileSync(
      press,
      `travel [mm], force [N]\n${points.map(({ crush, force }) => `${1000 * crush}, ${1.2 * force}`).join('\n')}\n`,
    );
    const correct = [
      'stop',
      'correct',
      '--stop',
      press,
      '--design',
      design,
      '--material',
      'tpu-85a',
      '--json',
    ];
    const { code, out } = await program.run(correct);
    expect(code).toBe(0);
    const { numbers } = JSON.parse(out);
    // Forces a fifth higher are walls a fifth stiffer.
    expect(numbers[0].value / numbers[0].before).toBeCloseTo(1.2, 2);
  });

  it.each<[string, (text: string) => string, string]>([
    ['an empty form', (text) => text.replace(/, [\d.]+$/gm, ','), 'form.csv: '],
    ['a negative crush', (text) => text.replace(/, (\S+), (\S+)$/m, ', -1, $2'), 'form.csv:4: '],
    ['forces in kilonewtons', (text) => text.replace('[N]', '[kN]'), 'mixed up'],
    ['a density beyond the material', (text) => text.replace(/^(A1), \d+,/gm, '$1, 95,'), '95 %'],
    ['a coupon of no height', (text) => text.replace(/^(A1, \d+), 30,/gm, '$1, 0,'), 'a coupon of 0 mm'],
  ])('refuse %s with file and line', async (_, change, part) => {
    const { code, out, err } = await program.run([
      'stop',
      'correct',
      '--coupons',
      await filled(change),
      '--name',
      'x1',
    ]);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(part);
    expect(err).not.toMatch(/\n\s+at /);
  });

  it.each([
    [['correct'], '--coupons'],
    [['correct', '--stop', 'a.csv'], '--design'],
    [['correct', '--coupons', 'nothing.csv'], 'nothing.csv'],
    [['coupons', '--cell', '0 mm'], 'cells'],
    [['coupons', '--wall', '3 mm'], 'cannot be printed'],
    [['coupons', '-o', 'coupons.obj'], '.3mf'],
    [
      [
        'design',
        '--height',
        '70 mm',
        '--diameter',
        '60 mm',
        '--density',
        '40 %',
        '--material',
        './none.yaml',
      ],
      'none.yaml',
    ],
  ])('refuse %j', async (words, part) => {
    const { code, out, err } = await program.run(['stop', ...words]);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(part);
  });
});
