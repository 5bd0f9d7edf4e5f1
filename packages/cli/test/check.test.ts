import { spawn } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { CORNERS } from '@lastinch/core';
import { cellWidth } from '@lastinch/picture';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { BuiltProgram, CONTROL, type Ended, OCHRE } from './program.ts';

let program: BuiltProgram;
let folder: string;
beforeAll(async () => {
  program = await BuiltProgram.make();
  chmodSync(program.file, 0o755);
});
afterAll(() => program.remove());
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lastinch-cli-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const at = (name: string): string => join(folder, name);
const written = (name: string, bytes: string | Buffer): string => {
  writeFileSync(at(name), bytes);
  return at(name);
};

/** Input was refused: code 2, nothing on standard output, one line for each problem, no stack trace. */
const expectRefused = (ended: Ended, ...said: readonly (string | RegExp)[]): void => {
  expect(ended.code).toBe(2);
  expect(ended.out).toBe('');
  for (const part of said) expect(ended.err).toMatch(part);
  expect(ended.err).not.toMatch(/^\s+at .+:\d+:\d+\)?$/m);
  expect(ended.err).not.toContain('mistake of its own');
};
const linesOf = (text: string): string[] => text.trimEnd().split('\n');

describe('lastinch new', () => {
  it('writes a starter file that check reads without a question', async () => {
    const made = await program.run(['new', at('my.rig.yaml')]);
    expect(made).toMatchObject({ code: 0, err: '' });
    const checked = await program.run(['check', at('my.rig.yaml'), '--json']);
    expect(checked.err).toBe('');
    expect(JSON.parse(checked.out).schema).toBe('lastinch/check/1');
  });

  it('takes a usual name when none is given', async () => {
    await program.run(['new'], { cwd: folder });
    expect(existsSync(at('my.rig.yaml'))).toBe(true);
  });

  it('writes to standard output for -, and the text can be piped into check', async () => {
    const made = await program.run(['new', '-']);
    const checked = await program.run(['check', '-'], { input: made.out });
    expect(checked.err).toBe('');
    expect(checked.out).toContain('My rig');
  });

  it('never overwrites', async () => {
    written('my.rig.yaml', 'mine');
    expectRefused(await program.run(['new', at('my.rig.yaml')]), 'my.rig.yaml');
    expect(readFileSync(at('my.rig.yaml'), 'utf8')).toBe('mine');
  });

  it('says so when the folder is not there', async () => {
    expectRefused(await program.run(['new', at('gone/my.rig.yaml')]), 'gone');
  });
});

describe('lastinch check', () => {
  it('draws four columns, says what it means, what is assumed and what to beware of', async () => {
    const { code, out, err } = await program.run(['check', OCHRE]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    for (const part of ['Front left', 'Front right', 'Rear left', 'Rear right', 'ride height'])
      expect(out).toContain(part);
    for (const part of ['FINDINGS', 'WHAT IS HIT', 'STATICS', 'ASSUMED', 'To measure:', 'CAUTIONS'])
      expect(out).toContain(part);
    expect(out).toMatch(/ in ± /);
    expect(out).not.toMatch(CONTROL);
    expect(out).not.toMatch(/undefined|NaN|\[object/);
  });

  it.each([40, 60, 80, 100])('keeps to a terminal of %i cells', async (columns) => {
    const { out } = await program.run(['check', OCHRE], { env: { COLUMNS: `${columns}` } });
    for (const line of linesOf(out)) expect(cellWidth(line), line).toBeLessThanOrEqual(columns);
  });

  it('keeps to ASCII where the locale has nothing else', async () => {
    const { out } = await program.run(['check', OCHRE], { env: { LANG: 'C' } });
    expect(out).toMatch(/^[\n -~]+$/);
    expect(out).toContain('+-');
  });

  it('answers in the units of the tape, or in those that are asked for', async () => {
    const asTyped = await program.run(['check', OCHRE]);
    const metric = await program.run(['check', OCHRE, '--units', 'metric']);
    expect(asTyped.out).toMatch(/\d in ±/);
    expect(asTyped.out).not.toMatch(/\d mm ±/);
    expect(metric.out).toMatch(/\d mm ±/);
    expect(metric.out).not.toMatch(/\d in ±/);
  });

  it('gives the same as data, in SI', async () => {
    const { code, out } = await program.run(['check', OCHRE, '--json']);
    const answer = JSON.parse(out);
    expect(code).toBe(0);
    expect(answer).toMatchObject({ schema: 'lastinch/check/1', rig: 'Ochre', setup: 'as-measured' });
    for (const at of CORNERS) {
      const corner = answer.corners[at];
      for (const key of ['hardTravel', 'freeBump', 'crush', 'clearance', 'spare'])
        expect(corner[key], `${at}.${key}`).toEqual({
          value: expect.any(Number),
          tolerance: expect.toSatisfy((one: unknown) => one === null || typeof one === 'number'),
        });
      const { hardTravel, freeBump, crush, clearance } = corner;
      expect(clearance.value).toBeCloseTo(hardTravel.value - freeBump.value - crush.value, 12);
      const travels = corner.contacts.map((contact: { travel: number }) => contact.travel);
      expect(travels.length).toBeGreaterThan(1);
      expect(travels).toEqual([...travels].sort((a: number, b: number) => a - b));
      expect(hardTravel.value).toBe(travels[0]);
      expect(['pass', 'not-proven', 'fail']).toContain(corner.verdict);
      expect(corner.probability.metal).toBeGreaterThanOrEqual(0);
      expect(corner.probability.metal).toBeLessThanOrEqual(1);
      expect(corner.blame[0]).toEqual({ key: expect.any(String), share: expect.any(Number) });
    }
    for (const finding of answer.findings) expect(finding.text).toMatch(/^\S.*\.$/s);
    for (const assumption of answer.assumptions) expect(assumption.howToMeasure).toMatch(/\S/);
    expect(answer.stance.sprungMass.value).toBeGreaterThan(0);
    expect(answer.against).toBeUndefined();
  });

  it('gives the same numbers every time', async () => {
    const [one, two] = await Promise.all([
      program.run(['check', OCHRE, '--json']),
      program.run(['check', OCHRE, '--json']),
    ]);
    expect(one.out).toBe(two.out);
  });

  it('ends with 1 for a proposal that breaks a limit, whatever it is held against', async () => {
    const words = ['check', OCHRE, '--setup', 'soft-stop-bolted-in', '--against', 'as-it-is'];
    const page = await program.run(words);
    expect(page.code).toBe(1);
    expect(page.out).toContain('OVER');
    const { code, out } = await program.run([...words, '--json']);
    expect(code).toBe(1);
    const { corners, against, differences, verdict } = JSON.parse(out);
    expect(verdict).toBe('fail');
    expect(against.setup).toBe('as-it-is');
    for (const at of CORNERS) {
      expect(Object.keys(against.corners[at]).sort()).toEqual(Object.keys(corners[at]).sort());
      expect(differences[at].clearance.value).toBeCloseTo(
        corners[at].clearance.value - against.corners[at].clearance.value,
        12,
      );
    }
    const turned = await program.run([
      'check',
      OCHRE,
      '--setup',
      'as-it-is',
      '--against',
      'soft-stop-bolted-in',
    ]);
    expect(turned.code).toBe(0);
  });

  it('ends in silence when its reader had enough', async () => {
    const pipe = spawn('sh', ['-c', `"${process.execPath}" "${program.file}" check "${OCHRE}" | head -1`]);
    let err = '';
    pipe.stderr.on('data', (part: Buffer) => {
      err += part.toString();
    });
    const code = await new Promise((done) => pipe.on('close', done));
    expect({ code, err }).toEqual({ code: 0, err: '' });
  });
});
