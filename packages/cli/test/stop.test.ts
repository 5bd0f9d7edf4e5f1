import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { cellWidth } from '@lastinch/picture';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { BuiltProgram, CONTROL, OCHRE } from './program.ts';

const STORY = resolve(import.meta.dirname, '../../core/test/travel/stories/s2-stop-swap.rig.yaml');

let program: BuiltProgram;
let folder: string;
beforeAll(async () => {
  program = await BuiltProgram.make();
});
afterAll(() => program.remove());
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lastinch-stop-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('lastinch stop need', () => {
  const NEED = ['stop', 'need', OCHRE, '--end', 'front', '--course'];

  it('shows the band, every stop of the rig on it, and cautions', async () => {
    const { code, out, err } = await program.run([...NEED, 'ledge'], { env: { COLUMNS: '80' } });
    expect(err).toBe('');
    expect(code).toBe(0);
    for (const part of [
      'THE BAND',
      'a as-fitted, b soft',
      'At least',
      'on this end now',
      'CAUTIONS',
      'press',
    ])
      expect(out).toContain(part);
    expect(out).not.toMatch(/undefined|NaN|\[object/);
    expect(out).not.toMatch(CONTROL);
    for (const line of out.split('\n')) expect(cellWidth(line)).toBeLessThanOrEqual(80);
  });

  it('ends with 1 and what must change where no stop does', async () => {
    const { code, out } = await program.run([...NEED, 'whoops,ledge']);
    expect(code).toBe(1);
    for (const part of ['NO STOP DOES', 'Slower:', 'More travel:', 'Damping:', 'OVER'])
      expect(out).toContain(part);
    expect(out).not.toContain('THE BAND');
  });

  it('in story S2 at 2 m/s of closing no stop does: slower, more travel or more damping', async () => {
    const words = ['--setup', 'foam', '--end', 'front', '--course', 'closing', '--speed', '50 m/s'];
    const { code, out } = await program.run(['stop', 'need', STORY, ...words]);
    expect(code).toBe(1);
    for (const part of ['NO STOP DOES', 'Slower: some stop does with closing', 'More travel:', 'Damping:'])
      expect(out).toContain(part);
    // (c) a printed spacer is no load path.
    expect(out.replace(/\s+/g, ' ')).toContain('only with solid metal contact behind it');
  });

  it('answers with data', async () => {
    const { code, out } = await program.run([...NEED, 'ledge', '--speed', '8 mph', '--json']);
    const answer = JSON.parse(out);
    expect(code).toBe(0);
    expect(answer).toMatchObject({
      schema: 'lastinch/stop-need/1',
      rig: 'Ochre',
      end: 'front',
      demands: [{ name: 'ledge', speed: expect.closeTo(3.57632, 5) }],
      cures: null,
      candidates: [
        { id: 'as-fitted', verdict: 'does', spare: { tolerance: expect.any(Number) } },
        { id: 'soft', text: expect.stringContaining('1 in earlier') },
      ],
    });
    expect(answer.band.length).toBeGreaterThan(10);
  });

  it.each([
    [['stop', 'need', OCHRE], '--end'],
    [['stop', 'need', OCHRE, '--end', 'left'], 'front, rear'],
    [['stop', 'need', OCHRE, '--end', 'front', '--course', 'whopps'], 'whoops'],
    [['stop', 'need', OCHRE, '--end', 'front', '--course', 'ledge', '--speed', '8'], '8'],
    [['stop', 'need', 'nothing.yaml', '--end', 'front'], 'nothing.yaml'],
  ])('refuses %j in one line', async (words, part) => {
    const { code, out, err } = await program.run(words);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(err).toContain(part);
  });
});

/** Invented readings: a press zeroed before touch, down and back. */
const PRESS = [
  'travel [mm], force [N]',
  ...[0, 1, 2, 3].map((mm) => `${mm}, 5`),
  ...Array.from({ length: 20 }, (_, k) => `${4 + k}, ${5 + 30 * (k + 1) ** 2}`),
  ...Array.from({ length: 20 }, (_, k) => `${22 - k}, ${5 + 22 * (19 - k) ** 2}`),
].join('\n');

describe('lastinch stop fit', () => {
  const written = (text: string): string => {
    const file = join(folder, 'soft block.csv');
    writeFileSync(file, text);
    return file;
  };

  it('shows curve, loss and doubts, and the text for the rig file', async () => {
    const { code, out, err } = await program.run(['stop', 'fit', written(PRESS), '--material', 'foam'], {
      env: { COLUMNS: '80' },
    });
    expect(err).toBe('');
    expect(code).toBe(0);
    for (const part of [
      'soft-block:',
      'THE CURVE',
      'Usable crush',
      'assumed from the material',
      'hysteresis:',
      'CAUTIONS',
    ])
      expect(out).toContain(part);
    expect(out).not.toMatch(/undefined|NaN|\[object/);
    expect(out).not.toMatch(CONTROL);
    for (const line of out.split('\n')) expect(cellWidth(line)).toBeLessThanOrEqual(80);
  });

  it('writes a file that a rig can take its stop from, and never over another one', async () => {
    const file = join(folder, 'stop.yaml');
    const words = ['stop', 'fit', written(PRESS), '--length', '60 mm', '-o', file];
    expect((await program.run(words)).code).toBe(0);
    const text = readFileSync(file, 'utf8');
    const rig = join(folder, 'with.rig.yaml');
    const body = text.replace(/^parts:\n {2}stops:\n/, '');
    writeFileSync(
      rig,
      readFileSync(OCHRE, 'utf8').replace('parts:\n  stops:\n', (head) => head + body),
    );
    const need = await program.run(['stop', 'need', rig, '--end', 'front', '--course', 'ledge', '--json']);
    expect(need.err).toBe('');
    expect(JSON.parse(need.out).candidates.map(({ id }: { id: string }) => id)).toContain('soft-block');
    const again = await program.run(words);
    expect(again.code).toBe(2);
    expect(readFileSync(file, 'utf8')).toBe(text);
  });

  it('reads standard input and answers with data', async () => {
    const { code, out } = await program.run(['stop', 'fit', '-', '--name', 'piped', '--json'], {
      input: PRESS,
    });
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ schema: 'lastinch/stop-fit/1', name: 'piped', doubts: [] });
  });

  it.each([
    ['readings too few', '0 mm, 0 N\n1 mm, 3 N\n', [], 'too few'],
    ['inches for millimetres', PRESS.replace('[mm]', '[in]'), [], 'mixed up'],
    ['a line that is no reading', `${PRESS}\nhello, world`, [], 'csv:46'],
    ['an unknown material', PRESS, ['--material', 'cheese'], 'rubber'],
    ['a name with a dot', PRESS, ['--name', 'a.b'], '--name'],
    ['a press that counts the other way', PRESS.replace(/^([\d.]+), /gm, '$1, -'), [], 'csv:'],
    ['a length shorter than its crush', PRESS, ['--length', '10 mm'], '--length'],
  ])('refuses %s', async (_, text, more, part) => {
    const { code, out, err } = await program.run(['stop', 'fit', written(text), ...more]);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(part);
    expect(err).not.toMatch(/\n\s+at /);
  });
});

describe('lastinch stop estimate', () => {
  const BLOCK = ['stop', 'estimate', '--kind', 'rubber', '--hardness', '60 A', '--diameter', '50 mm'];

  const FOAM = [
    'stop',
    'estimate',
    '--kind',
    'foam',
    '--density',
    '480 kg/m3',
    '--height',
    '60 mm',
    '--diameter',
    '50 mm',
  ];

  it('gives a foam by its density as a wide guess, with what is not known of it', async () => {
    const { code, out } = await program.run(FOAM, { env: { COLUMNS: '80' } });
    expect(code).toBe(0);
    for (const part of [
      'THE BAND',
      'material: foam',
      'forceAtFullCrush: ~',
      'factor of several',
      'three tenths',
    ])
      expect(out.replace(/\n\s+/g, ' ')).toContain(part);
    expect(out).not.toMatch(/undefined|NaN|\[object|Infinity/);
    for (const line of out.split('\n')) expect(cellWidth(line)).toBeLessThanOrEqual(80);
  });

  it('shows the band of a block, and text that a rig takes as a guess', async () => {
    const words = [...BLOCK, '--height', '60 mm', '--bore', '12 mm', '--ends', 'bonded'];
    const { code, out, err } = await program.run(words, { env: { COLUMNS: '80' } });
    expect(err).toBe('');
    expect(code).toBe(0);
    for (const part of ['nothing was pressed', 'THE BAND', 'least', 'forceAtFullCrush: ~', 'CAUTIONS'])
      expect(out).toContain(part);
    expect(out).not.toMatch(/undefined|NaN|\[object/);
    for (const line of out.split('\n')) expect(cellWidth(line)).toBeLessThanOrEqual(80);
  });

  it('answers with data for gas', async () => {
    const gas = [
      '--rod',
      '1.375 in',
      '--pressure',
      '100 psi',
      '--column',
      '65 mm',
      '--stroke',
      '50 mm',
      '--json',
    ];
    const { code, out } = await program.run(['stop', 'estimate', '--kind', 'gas', ...gas]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ schema: 'lastinch/stop-estimate/1', kind: 'gas', assumed: true });
  });

  it.each([
    [[...BLOCK], '--height'],
    [[...BLOCK, '--height', '40 mm, 20 mm'], 'as many as heights'],
    [[...BLOCK.slice(0, 5), '99 A', '--height', '60 mm', '--diameter', '50 mm'], 'press it'],
    [['stop', 'estimate', '--kind', 'foam'], '--density'],
    [['stop', 'estimate', '--kind', 'cork'], 'rubber, polyurethane, foam, gas'],
    [[...BLOCK, '--height', '0 mm'], 'no size'],
    [[...BLOCK.slice(0, 6), '--height', '40 mm, 0 mm', '--diameter', '50 mm, 30 mm'], 'no size'],
    [[...FOAM.slice(0, 4), '--density', '9 kg/m3', ...FOAM.slice(6)], '--density'],
    [[...BLOCK, '--height', '60 mm', '--ends', 'loose'], 'bonded, greased, dry'],
  ])('refuses %j', async (words, part) => {
    const { code, out, err } = await program.run(words);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(part);
  });
});

describe('lastinch stop design', () => {
  const DESIGN = ['stop', 'design', '--height', '70 mm', '--diameter', '60 mm, 50 mm'];
  const wanted = (text: string): string => {
    const file = join(folder, 'want.csv');
    writeFileSync(file, text);
    return file;
  };
  const WANTED = 'crush [mm], force [N]\n0, 0\n10, 900\n20, 2600\n27, 5200\n';

  it('shows density from the foot up, the curve with its interval, and what it misses', async () => {
    const words = [...DESIGN, '--target', wanted(WANTED), '--material', 'tpu-85a'];
    const { code, out, err } = await program.run(words, { env: { COLUMNS: '80' } });
    expect(err).toBe('');
    expect(code).toBe(0);
    for (const part of ['DENSITY, FROM THE FOOT UP', 'wanted', 'at least', 'coupon', 'solid metal contact'])
      expect(out).toContain(part);
    expect(out).not.toMatch(/undefined|NaN|\[object|Infinity/);
    for (const line of out.split('\n')) expect(cellWidth(line)).toBeLessThanOrEqual(80);
  });

  it('takes its curve from the band that an end of a rig needs, and drives what it designed', async () => {
    const words = [...DESIGN.slice(0, 3), '90 mm', ...DESIGN.slice(4), '--material', 'tpu-85a'];
    const need = ['--need', OCHRE, '--end', 'front', '--course', 'ledge'];
    const { code, out, err } = await program.run([...words, ...need], { env: { COLUMNS: '80' } });
    expect(err).toBe('');
    expect(code).toBe(0);
    for (const part of ['FOR THE RIG', 'Followed:', 'Driven over ledge', 'tip has to stand'])
      expect(out).toContain(part);
    expect(out).not.toMatch(/undefined|NaN|\[object|Infinity/);
    for (const line of out.split('\n')) expect(cellWidth(line)).toBeLessThanOrEqual(80);
  });

  it('tells of skin, solid ends and vents', async () => {
    const solid = ['--skin', '1 mm', '--foot', '4 mm', '--cap', '3 mm', '--vents', '4 x 5 mm'];
    const { code, out } = await program.run([...DESIGN, '--density', '40 %', ...solid]);
    expect(code).toBe(0);
    for (const part of ['skin 1 mm', 'solid foot 4 mm', 'folds into rings', 'through the vents'])
      expect(out).toContain(part);
  });

  it('answers with data for densities that are given', async () => {
    const { code, out } = await program.run([...DESIGN, '--density', '50 %, 30 %', '--json']);
    expect(code).toBe(0);
    const answer = JSON.parse(out);
    expect(answer).toMatchObject({
      schema: 'lastinch/stop-design/1',
      density: [
        { height: 0, density: 0.5 },
        { height: 0.07, density: 0.3 },
      ],
      tooSoft: null,
    });
  });

  it.each([
    ['neither curve nor density', [], 'one of --target'],
    ['a curve and densities', ['--target', 'a.csv', '--density', '40 %'], 'one of --target'],
    ['a rig without an end', ['--need', OCHRE, '--course', 'ledge'], '--end'],
    ['vents without a skin', ['--density', '40 %', '--vents', '2 x 4 mm'], 'vents without a skin'],
    ['vents that are no holes', ['--density', '40 %', '--skin', '1 mm', '--vents', 'many'], '2 x 4 mm'],
    ['a height of zero', ['--density', '40 %', '--height', '0 mm'], 'a height of 0 mm'],
    ['a negative skin', ['--density', '40 %', '--skin', '-1 mm'], 'a skin of -1 mm'],
    ['a density beyond the material', ['--density', '90 %, 40 %'], '90 %” cannot be printed'],
    ['a density that its walls do not allow', ['--density', '5 %'], 'cannot be printed'],
    ['a file that is not there', ['--target', 'nothing.csv'], 'nothing.csv'],
    ['an unknown material', ['--density', '40 %', '--material', 'cheese'], 'tpu-95a'],
  ])('refuses %s', async (_, more, part) => {
    const { code, out, err } = await program.run([...DESIGN, ...more]);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(part);
  });

  it.each([
    ['falls', '0 mm, 0 N\n10 mm, 900 N\n20 mm, 800 N\n', 'want.csv:3: the wanted curve cannot'],
    ['does not rise', '0 mm, 0 N\n10 mm, 900 N\n10 mm, 950 N\n', 'want.csv:3: '],
    ['has a negative crush', '0 mm, 0 N\n-5 mm, 200 N\n10 mm, 900 N\n', 'want.csv:2: '],
    ['is in other units', '0 mm, 0 kN\n10 mm, 900 kN\n20 mm, 2600 kN\n', 'look at the units of both columns'],
    ['begins under load', '0 mm, 50 N\n10 mm, 900 N\n20 mm, 2600 N\n', 'want.csv:1: '],
    ['is longer than the stop', '0 mm, 0 N\n30 mm, 900 N\n60 mm, 2600 N\n', 'four fifths'],
  ])('refuses a wanted curve that %s, with its file', async (_, text, part) => {
    const { code, err } = await program.run([...DESIGN, '--target', wanted(text)]);
    expect(code).toBe(2);
    expect(err).toContain(part);
    expect(err.trim().split('\n')).toHaveLength(1);
  });
});
