import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { cellWidth } from '@lastinch/picture';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { BuiltProgram, CONTROL } from './program.ts';

let program: BuiltProgram;
let folder: string;
beforeAll(async () => {
  program = await BuiltProgram.make();
});
afterAll(() => program.remove());
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lastinch-solid-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const SHAPE = ['--height', '36 mm', '--diameter', '30 mm, 26 mm', '--cell', '8 mm', '--wall', '0.6 mm'];
const SOLID = ['stop', 'solid', ...SHAPE, '--density', '50 %, 30 %'];
const run = (words: readonly string[], env = {}) => program.run([...SOLID, ...words], { cwd: folder, env });
/** Triangles of a binary STL file, by its count and by its length. */
const stlCount = (bytes: Buffer) => ({ said: bytes.readUInt32LE(80), held: (bytes.length - 84) / 50 });

describe('lastinch stop solid', () => {
  it.each(['80', '120'])('tells what it wrote, on %s columns', async (columns) => {
    const { code, out, err } = await run(['--stud', 'M6', '-o', 'stop.3mf'], { COLUMNS: columns });
    expect(err).toBe('');
    expect(code).toBe(0);
    for (const part of [
      'Written: stop.3mf',
      'One closed body',
      'Weighs',
      'Thinnest wall',
      'DENSITY ABOVE THE PLATE',
      'Pause the print',
      '100 % fill',
      'only with solid metal contact behind it',
      'carry a spare',
    ])
      expect(out.replace(/\s+/g, ' ')).toContain(part);
    expect(out).not.toMatch(/undefined|NaN|\[object/);
    expect(out).not.toMatch(CONTROL);
    for (const line of out.split('\n')) expect(cellWidth(line)).toBeLessThanOrEqual(Number(columns));
    // A package of the kind that 3MF is: it begins as any zip does, and nothing else was left behind.
    expect(readFileSync(join(folder, 'stop.3mf')).subarray(0, 4).toString('latin1')).toBe('PK\u0003\u0004');
    expect(readdirSync(folder)).toEqual(['stop.3mf']);
  });

  it('writes STL with as many triangles as it says, and says that STL knows no unit', async () => {
    const { code, out } = await run(['--json', '-o', 'stop.stl']);
    expect(code).toBe(0);
    const said = JSON.parse(out);
    expect(said.schema).toBe('lastinch/stop-solid/1');
    const { said: count, held } = stlCount(readFileSync(join(folder, 'stop.stl')));
    expect(count).toBe(said.triangles);
    expect(held).toBe(count);
    for (const { asked, made } of said.slices) expect(Math.abs(made / asked - 1)).toBeLessThan(0.03);
    expect(said.height).toBeCloseTo(0.036, 9);
    expect((await run(['-o', 'again.stl'])).out).toContain('tell the slicer millimetres');
  });

  it('takes inch threads, an insert by its maker, and a bore for a screw', async () => {
    for (const seat of [
      ['--stud', '1/4-20'],
      ['--insert', '8 mm, 9 mm'],
      ['--stud', 'M6', '--seat', 'clearance', '--bore', '13 mm'],
    ]) {
      const { code, out, err } = await run([
        ...seat,
        '-o',
        `${seat[1]?.replace(/\W/g, '')}${seat.length}.stl`,
      ]);
      expect(err).toBe('');
      expect(code).toBe(0);
      expect(out).toContain('SEAT');
    }
  });

  it('skin, cap and vents: no hollow is left shut; without vents it says so', async () => {
    const skin = ['--skin', '1.2 mm', '--cap', '2 mm'];
    const open = await run([...skin, '--vents', '4 x 5 mm', '--json', '-o', 'open.stl']);
    expect(open.err).toBe('');
    expect(JSON.parse(open.out).hollows.count).toBe(0);
    const shut = await run([...skin, '-o', 'shut.stl']);
    expect(shut.out.replace(/\s+/g, ' ')).toContain('2 hollows without a way out hold air');
  });
});

describe('lastinch stop solid refuses', () => {
  const CASES: [string, readonly string[], string][] = [
    ['a file of another kind', ['-o', 'stop.obj'], '.3mf'],
    ['a thread that it has no measures of', ['--stud', 'M9', '-o', 'a.3mf'], 'M6, M8, M10'],
    ['a seat without a thread', ['--seat', 'nut', '-o', 'a.3mf'], '--stud'],
    ['a seat of another kind', ['--stud', 'M6', '--seat', 'glue', '-o', 'a.3mf'], 'nut, clearance, insert'],
    ['an insert without its measures', ['--seat', 'insert', '-o', 'a.3mf'], 'as its maker says'],
    ['a screw from the tip without a bore', ['--stud', 'M6', '--seat', 'clearance', '-o', 'a.3mf'], 'bore'],
    ['a plate too thin for its nut', ['--stud', 'M6', '--foot', '4 mm', '-o', 'a.3mf'], '11.6 mm'],
    ['vents in no skin', ['--vents', '4 x 5 mm', '-o', 'a.3mf'], 'skin'],
    ['a folder that is not there', ['-o', 'nowhere/a.3mf'], 'nowhere'],
  ];
  it.each(CASES)('%s, in one line, and writes nothing', async (_what, words, said) => {
    const { code, out, err } = await run(words);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(said);
    expect(err).not.toMatch(/ {4}at /);
    expect(readdirSync(folder)).toEqual([]);
  });

  it('a file that is there already, and leaves it as it is', async () => {
    writeFileSync(join(folder, 'a.3mf'), 'mine');
    const { code, err } = await run(['-o', 'a.3mf']);
    expect(code).toBe(2);
    expect(err).toContain('a.3mf');
    expect(readFileSync(join(folder, 'a.3mf'), 'utf8')).toBe('mine');
    expect(existsSync(join(folder, 'a.3mf'))).toBe(true);
  });
});
