import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
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
const ochre = (): string => readFileSync(OCHRE, 'utf8');

/** Input was refused: code 2, nothing on standard output, one line for each problem, no stack trace. */
const expectRefused = (ended: Ended, ...said: readonly (string | RegExp)[]): void => {
  expect(ended.code).toBe(2);
  expect(ended.out).toBe('');
  for (const part of said) expect(ended.err).toMatch(part);
  expect(ended.err).not.toMatch(/^\s+at .+:\d+:\d+\)?$/m);
  expect(ended.err).not.toContain('mistake of its own');
};
const linesOf = (text: string): string[] => text.trimEnd().split('\n');

describe('bad input ends with 2, one message, and the file as it was', () => {
  const check = (file: string, input?: string | Buffer) =>
    program.run(['check', file], input === undefined ? {} : { input });

  it('a missing file', async () => {
    const ended = await check(at('gone.yaml'));
    expectRefused(ended, 'gone.yaml');
    expect(linesOf(ended.err)).toHaveLength(1);
  });

  it('a folder instead of a file', async () => expectRefused(await check(folder), /folder/));

  it('a file that may not be read', async () => {
    const file = written('shut.yaml', ochre());
    chmodSync(file, 0);
    const rights = process.getuid?.() === 0 ? { uid: 65_534 } : {};
    chmodSync(folder, 0o755);
    const ended = await program.run(['check', file], { cwd: '/', ...rights });
    expectRefused(ended, 'shut.yaml', /permi/);
  });

  it.each<[string, string | Buffer, RegExp]>([
    ['a binary file', Buffer.from([0x7f, 0x45, 0x4c, 0x46, 0, 1, 2]), /UTF-8/],
    ['another encoding', Buffer.from('name: r\xe9sum\xe9', 'latin1'), /UTF-8/],
    ['ten megabytes', 'a: b\n'.repeat(2_000_000), /MB/],
    ['an empty file', '', /empty/],
    ['no YAML', 'rig: [1, 2\n: {', /:\d+/],
    ['anchors and aliases', 'schema: 1\nrig: &a [1]\nnotes: *a\n', /:[23]/],
    ['a plain sentence', 'hello', /\S/],
    ['a list', '- 1\n- 2\n', /\S/],
  ])('%s', async (_what, bytes, said) => {
    const file = written('rig.yaml', bytes);
    expectRefused(await check(file), 'rig.yaml', said);
    expect(readFileSync(file).equals(Buffer.from(bytes))).toBe(true);
    expectRefused(await check('-', bytes), 'standard input');
  });

  /** One line of the sound file changed: the message must name that line. */
  it.each([
    ['a wrong unit', /wheelbase: .*/, 'wheelbase: 94 lb'],
    ['a missing unit', /wheelbase: .*/, 'wheelbase: 94'],
    ['a negative length', /wheelbase: .*/, 'wheelbase: -94 in'],
    ['a crossed tolerance', /wheelbase: .*/, 'wheelbase: 94 in ± -1'],
    ['a key that nobody knows', /wheelbase: .*/, 'whelbase: 94 in'],
    ['a duplicate key', /(wheelbase: .*)/, '$1\n  wheelbase: 94 in'],
    ['a file from the future', /schema: 1/, 'schema: 99'],
  ])('%s', async (_what, from, to) => {
    const text = ochre().replace(from, to);
    expect(text).not.toBe(ochre());
    const ended = await check(written('rig.yaml', text));
    const place = /rig\.yaml:(\d+)/.exec(ended.err);
    expectRefused(ended, 'rig.yaml');
    const line = text.split('\n')[Number(place?.[1]) - 1] ?? '';
    expect(line, ended.err).toMatch(/wheelbase|whelbase|schema|measured/);
  });

  it('several mistakes are told in one pass, one line each', async () => {
    const text = ochre()
      .replace(/wheelbase: .*/, 'wheelbase: 94')
      .replace(/name: Ochre/, 'nam: Ochre');
    const ended = await check(written('rig.yaml', text));
    expectRefused(ended);
    expect(linesOf(ended.err).length).toBeGreaterThanOrEqual(2);
    for (const line of linesOf(ended.err)) expect(line).toMatch(/rig\.yaml/);
  });

  it.each<[string, string[], RegExp]>([
    ['a setup that is not there', ['check', OCHRE, '--setup', 'soft-stop-seat-dwn'], /soft-stop-seat-down/],
    ['the other setup is not there', ['check', OCHRE, '--against', 'as-its'], /as-it-is/],
    ['a name that every object has', ['check', OCHRE, '--setup', 'constructor'], /as-measured/],
    ['a course that is not there', ['ride', OCHRE, '--course', 'whops'], /whoops/],
    ['no course', ['ride', OCHRE], /--course/],
    ['a speed without unit', ['ride', OCHRE, '--course', 'whoops', '--speed', '30'], /mph/],
    ['an absurd speed', ['ride', OCHRE, '--course', 'whoops', '--speed', '3000 mph'], /mph/],
    ['no speed at all', ['ride', OCHRE, '--course', 'whoops', '--speed', '0 mph'], /mph/],
    ['a speed that is a length', ['ride', OCHRE, '--course', 'whoops', '--speed', '30 in'], /mph/],
    ['a misspelt option', ['ride', OCHRE, '--course', 'whoops', '--sped', '30 mph'], /--speed/],
    ['a misspelt command', ['chek', OCHRE], /check/],
    ['no file', ['check'], /FILE/],
    ['two files', ['check', OCHRE, OCHRE], /argument/],
    ['units that nobody knows', ['check', OCHRE, '--units', 'furlong'], /shop, metric/],
    ['a port that is none', ['open', OCHRE, '--no-open', '--port', 'http'], /65535/],
    ['a port beyond all', ['open', OCHRE, '--no-open', '--port', '70000'], /65535/],
    ['standard input to a workbench', ['open', '-', '--no-open'], /file/],
  ])('%s', async (_what, words, said) => expectRefused(await program.run(words), said));

  /** What is driven over and what is driven, each with one fault: one line, and it names the place. */
  it.each<[string, RegExp, string, RegExp]>([
    ['a speed of the course of zero', /speed: 20 mph/, 'speed: 0 mph', /courses\.whoops\.speed/],
    ['an absurd speed of the course', /speed: 20 mph/, 'speed: 900 mph', /courses\.whoops\.speed.*900 mph/],
    ['no distance a day', /perDay: 1 mi/, 'perDay: 0 mi', /courses\.whoops\.perDay/],
    ['an empty stop curve', / {4}curve:\n(?: {6}- .*\n)+/, '    curve: []\n', /front\.stop\.curve.*two rows/],
    ['a stop curve that jumps', /- \[1\/4 in, 1150 lb\]/, '- [1/8 in, 1150 lb]', /curve\.2.*1150 lb/],
    ['an empty shock table', / {6}trail:\n(?: {8}- .*\n)+/, '      trail: []\n', /settings\.trail.*two rows/],
    ['a shock table that jumps', /- \[5 in\/s, 70 lb\]/, '- [2 in/s, 70 lb]', /settings\.trail\.8/],
    [
      'a limit of the wrong kind',
      /(reserve: 3\/8 in\n {2}#)/,
      'seatDose: 9 W\n  $1',
      /limits\.seatDose.*m\/s/,
    ],
  ])('%s', async (_what, from, to, said) => {
    const text = ochre().replace(from, to);
    expect(text).not.toBe(ochre());
    const ended = await program.run(['ride', written('rig.yaml', text), '--course', 'whoops']);
    expectRefused(ended, said);
    expect(linesOf(ended.err)).toHaveLength(1);
  });

  it.each<[string, string, RegExp]>([
    ['ground that goes back', '0;0;0\n1;0;0\n0.5;0;0\n2;0;0\n', /wash\.csv:4.*does not rise/],
    ['ground with a step in no distance', '0;0;0\n0.5;0;0\n0.5;500;0\n1;0;0\n', /wash\.csv:4.*does not rise/],
    ['ground with a gap', '0;0;0\n0.25;0;0\n0.5;5;5\n30;0;0\n', /wash\.csv:5.*gap/],
    ['ground with a hole', '0;0;0\n0.25;;0\n0.5;5;5\n', /wash\.csv:3.*missing/],
    ['ground of nothing', '', /points.*too short/],
  ])('%s', async (_what, rows, said) => {
    const profile = 'courses: { wash: { kind: profile, points: { file: wash.csv }, speed: 10 mph } }\n';
    written('wash.csv', `distance [m]; left [mm]; right [mm]\n${rows}`);
    const file = written(
      'rig.yaml',
      ochre()
        .replace(/^courses:\n(?: .*\n)+/m, profile)
        .replace(/^choices:\n(?: .*\n)+/m, ''),
    );
    for (const sweep of [[], ['--sweep', '5..10mph']]) {
      const ended = await program.run(['ride', file, ...sweep]);
      expectRefused(ended, said);
      expect(linesOf(ended.err)).toHaveLength(1);
    }
  });

  it('a name in a file cannot steer the terminal', async () => {
    const text = ochre().replace(/name: Ochre/, 'name: "Ochre \\x1b[2J\\x07"');
    const { out } = await check(written('rig.yaml', text));
    expect(out).not.toMatch(CONTROL);
  });
});
