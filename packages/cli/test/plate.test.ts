import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BuiltProgram, type Ended } from './program.ts';

let program: BuiltProgram;
let folder: string;
beforeAll(async () => {
  program = await BuiltProgram.make();
  folder = mkdtempSync(join(tmpdir(), 'lastinch-plate-'));
});
afterAll(() => {
  program.remove();
  rmSync(folder, { recursive: true, force: true });
});

const plate = (...words: readonly string[]): Promise<Ended> =>
  program.run(['plate', ...words], { cwd: folder });
const TOP = ['top', '--length', '4 in', '--width', '3 in', '--thickness', '1/4 in'] as const;

describe('lastinch plate', () => {
  it('writes a drawing and says what it weighs', async () => {
    const said = await plate(
      ...TOP,
      '--radius',
      '3/8 in',
      '--stud',
      '7/16 in',
      '--kerf',
      '1.2 mm',
      '-o',
      'top.dxf',
    );
    expect(said).toMatchObject({ code: 0, err: '' });
    expect(said.out).toMatch(/^Top plate, 1\/4 in thick, 4 in × 3 in\n/);
    expect(said.out).toMatch(/Stud hole: 7\/16 in, in the middle\./);
    expect(said.out).toContain('Written to top.dxf');
    expect(readFileSync(join(folder, 'top.dxf'), 'utf8')).toMatch(/^0\r?\nSECTION/m);
    expect((await plate('pad', '--length', '80 mm', '--thickness', '10 mm', '-o', 'pad.svg')).out).toMatch(
      /^Strike pad, 10 mm thick, 80 mm × 80 mm\n/,
    );
    expect(readFileSync(join(folder, 'pad.svg'), 'utf8')).toMatch(/^<svg /);
  });

  it('asks to look at a rim that is thin', async () => {
    expect(
      (await plate(...TOP, '--bolt', '1/2 in', '--bolt-along', '3.4 in', '--bolt-across', '2 in')).out,
    ).toMatch(/LOOK AT[\s\S]*EN 1993-1-8/);
  });

  it.each([
    [['wing', '--length', '4 in'], /KIND.*wing.*top, gusset, standoff, pad/],
    [['gusset', '--foot', '4 in'], /--thickness[\s\S]*--height/],
    [[...TOP, '--stud', '5 in'], /--stud.*over the edge/],
    [[...TOP, '--stud', '4'], /--stud.*no unit/],
    [[...TOP, '--stud', '-1 in'], /--stud.*zero or more/],
    [[...TOP, '-o', 'top.step'], /--out.*\.dxf, \.svg or \.pdf/],
    [
      ['top', '--length', '20 in', '--width', '3 in', '--thickness', '1/4 in', '-o', 'top.pdf'],
      /--paper.*larger/,
    ],
  ])('refuses %j and writes nothing', async (words, said) => {
    const before = readdirSync(folder);
    const ended = await plate(...words);
    expect(ended).toMatchObject({ code: 2, out: '' });
    expect(ended.err).toMatch(said);
    expect(readdirSync(folder)).toEqual(before);
  });
});
