import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readRig } from '@lastinch/core/rigfile';
import { type Sheet, sheetOfRig } from '@lastinch/core/sheet';
import { PAPER_SIZES, type PaperSize, sheetTypst } from '@lastinch/paper';
import { extractText, getDocumentProxy } from 'unpdf';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pdfOf } from '../src/hosts/pdf.ts';
import { BuiltProgram, type Ended, OCHRE } from './program.ts';

const BUILT = 'soft-stop-seat-down';
let program: BuiltProgram;
let folder: string;
beforeAll(async () => {
  program = await BuiltProgram.make();
  folder = mkdtempSync(join(tmpdir(), 'lastinch-sheet-test-'));
});
afterAll(() => {
  program.remove();
  rmSync(folder, { recursive: true, force: true });
});

const sheet = (...options: readonly string[]): Promise<Ended> =>
  program.run(['sheet', OCHRE, '--setup', BUILT, '--course', 'ledge', ...options], { cwd: folder });

describe('lastinch sheet', () => {
  it('writes a page, and over an older one', async () => {
    for (const paper of ['a4', 'letter']) {
      expect(await sheet('-o', 'build.html', '--paper', paper)).toMatchObject({
        code: 0,
        err: '',
        out: 'Build sheet written to build.html.\n',
      });
      expect(readFileSync(join(folder, 'build.html'), 'utf8')).toMatch(/^<!doctype html>[\s\S]*<\/html>\n$/);
    }
    expect(readdirSync(folder)).toEqual(['build.html']);
  });

  it('gives the same sheet as data', async () => {
    const said = await sheet('--json');
    expect(said.code).toBe(0);
    expect(JSON.parse(said.out)).toMatchObject({ schema: 'lastinch/sheet/1', setup: BUILT, system: 'shop' });
  });

  it.each([
    [['-o', 'build.doc'], /--out.*build\.doc.*\.pdf or \.html/],
    [['--paper', 'legal'], /--paper.*legal.*a4, letter/],
    [['--against', 'nothing'], /nothing.*as-measured/],
    [['--course', 'wash'], /wash.*whoops/],
    [['-o', join('gone', 'build.html')], /gone/],
  ])('refuses %j in one line and writes nothing', async (options, said) => {
    const before = readdirSync(folder);
    const ended = await sheet(...options);
    expect(ended).toMatchObject({ code: 2, out: '' });
    expect(ended.err.trimEnd().split('\n')).toHaveLength(1);
    expect(ended.err).toMatch(said);
    expect(readdirSync(folder)).toEqual(before);
  });

  it('says what is missing where the typesetter is not installed, and what does instead', async () => {
    const ended = await sheet('-o', 'build.pdf');
    expect(ended.code).toBe(2);
    expect(ended.err).toMatch(/typst-ts-node-compiler.*\.html/);
    expect(existsSync(join(folder, 'build.pdf'))).toBe(false);
  });
});

describe.each(Object.keys(PAPER_SIZES) as PaperSize[])('the PDF on %s, read by another program', (size) => {
  let made: Sheet;
  let text: string;
  let width: number;
  beforeAll(async () => {
    const rig = readRig(readFileSync(OCHRE, 'utf8'), { file: 'ochre.rig.yaml' });
    if (!rig.ok) throw new Error(JSON.stringify(rig.problems));
    const one = sheetOfRig({ rig: rig.value, setup: BUILT, courses: ['ledge'], system: 'shop', trials: 2 });
    if (!one.ok) throw new Error(JSON.stringify(one.problems));
    made = one.value;
    const pdf = await pdfOf(sheetTypst(made, size));
    if (!pdf.ok) throw new Error(JSON.stringify(pdf.problems));
    const read = await getDocumentProxy(new Uint8Array(pdf.value));
    width = (await read.getPage(1)).getViewport({ scale: 1 }).width;
    text = squeezed((await extractText(read, { mergePages: true })).text);
  });

  it('has the width of its paper', () => {
    // ISO 216: A4 is 210 mm wide; US Letter is 8 1/2 in; 72 points to the inch.
    expect(width).toBeCloseTo(size === 'a4' ? (210 / 25.4) * 72 : 8.5 * 72, 1);
  });

  it('holds every sentence, box and figure of the sheet', () => {
    for (const { title, blocks } of made.sections) {
      expect(text).toContain(squeezed(title));
      for (const block of blocks) {
        if (block.kind === 'table')
          for (const cell of block.rows.flat()) expect(text).toContain(squeezed(cell));
        else if (block.kind === 'reading') expect(text).toContain(squeezed(block.expected));
        else if (block.kind !== 'columns') expect(text).toContain(squeezed(block.text));
      }
    }
  });
});

/** Lines are broken where paper ends, and words of a ligature may part. */
const squeezed = (words: string): string => words.normalize('NFKC').replace(/[\s\u00ad\u2044-]+/g, '');
