import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { cellWidth } from '@lastinch/picture';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BuiltProgram, CONTROL, OCHRE } from './program.ts';

let program: BuiltProgram;
let folder: string;
beforeAll(async () => {
  program = await BuiltProgram.make();
  chmodSync(program.file, 0o755);
  folder = mkdtempSync(join(tmpdir(), 'lastinch-sweep-'));
});
afterAll(() => {
  program.remove();
  rmSync(folder, { recursive: true, force: true });
});

const MPH = 0.44704;
/** The ledge: short runs. */
const sweep = (words: readonly string[], env?: Record<string, string>) =>
  program.run(['ride', OCHRE, '--course', 'ledge', ...words], { env });

describe('lastinch ride --sweep', { timeout: 60_000 }, () => {
  it('gives the first break of each criterion of both setups as data', async () => {
    const words = ['--sweep', '5..15mph', '--step', '5 mph', '--setup', 'soft-stop-seat-down'];
    const { code, out, err } = await sweep([...words, '--against', 'as-it-is', '--json']);
    expect(err).toBe('');
    const answer = JSON.parse(out);
    expect(answer).toMatchObject({ schema: 'lastinch/sweep/1', units: 'SI', rig: 'Ochre', course: 'ledge' });
    expect(answer.speeds).toHaveLength(3);
    expect(answer.speeds[1]).toBeCloseTo(10 * MPH, 10);
    expect(answer.wantedSpeed).toBeCloseTo(8 * MPH, 10);
    expect(answer.sampling).toEqual({ trials: 39, seed: 1, coverage: 0.95 });
    expect(answer.setup).toBe('soft-stop-seat-down');
    expect(answer.against.setup).toBe('as-it-is');
    for (const side of [answer, answer.against]) {
      expect(side.criteria.map(({ id }: { id: string }) => id)).toEqual([
        'metal-contact',
        'clearance',
        'body-shock',
        'seat-shock',
        'absorbed-power',
        'seat-dose',
        'bracket-load',
        'tyre-contact',
      ]);
      for (const one of side.criteria) {
        for (const key of ['states', 'values', 'low', 'high', 'brokenShare'])
          expect(one[key], `${one.id}.${key}`).toHaveLength(3);
        if (one.first.low !== null && one.first.high !== null)
          expect(one.first.low).toBeLessThanOrEqual(one.first.high);
      }
      expect(side.criteria[6].first).toEqual({
        kind: 'no-limit',
        speed: null,
        low: null,
        high: null,
        neverShare: null,
        place: null,
      });
    }
    expect(answer.assumptions.length).toBeGreaterThan(0);
    const over = answer.findings.some(({ severity }: { severity: string }) => severity === 'over');
    expect(code).toBe(over ? 1 : 0);
  });

  it.each([
    [40, 'C'],
    [80, 'C.UTF-8'],
  ])('shows table and strips within a terminal of %i cells', async (columns, LANG) => {
    const { out, err } = await sweep(['--sweep', '5..45mph', '--step', '8mph', '--against', 'as-it-is'], {
      COLUMNS: `${columns}`,
      LANG,
    });
    expect(err).toBe('');
    for (const line of out.trimEnd().split('\n')) expect(cellWidth(line), line).toBeLessThanOrEqual(columns);
    for (const part of [
      'FIRST BROKEN AT',
      'AT EACH SPEED',
      'no limit given',
      'FINDINGS: as-it-is',
      'CAUTIONS',
    ])
      expect(out).toContain(part);
    expect(out).not.toMatch(/undefined|NaN|Infinity|\[object/);
    expect(out).not.toMatch(CONTROL);
    // Six speeds, one cell each.
    const strips = out.split('\n').filter((line) => /^ {4}[·░█?.+#]{3,}( |$)/u.test(line));
    expect(strips.length).toBeGreaterThanOrEqual(10);
    for (const strip of strips) expect(strip.trim().split(' ')[0]).toHaveLength(6);
  });

  it('holds a sweep against limits that are written in the file', async () => {
    const text = readFileSync(OCHRE, 'utf8').replace(
      /^limits:$/m,
      'limits:\n  bracketForce: 20 lb\n  tyreContact: 100 %',
    );
    const file = join(folder, 'limited.rig.yaml');
    writeFileSync(file, text);
    const words = ['ride', file, '--course', 'ledge', '--sweep', '6..8mph', '--step', '2mph', '--json'];
    const { code, out } = await program.run(words);
    const [bracket, tyre] = JSON.parse(out).criteria.slice(6);
    expect(bracket.limit).toBeCloseTo(20 * 4.4482216152605, 9);
    expect(bracket.first.kind).toBe('broken-at-once');
    expect(tyre.limit).toBe(1);
    expect(code).toBe(1);
  });

  it('gives the same data with worker threads and without', async () => {
    const words = ['--sweep', '5..9mph', '--step', '2 mph', '--json'];
    const shared = await sweep(words);
    const worker = join(dirname(program.file), 'lastinch-worker.js');
    expect(existsSync(worker)).toBe(true);
    const kept = readFileSync(worker);
    rmSync(worker);
    const alone = await sweep(words);
    writeFileSync(worker, kept);
    expect(alone.out).toBe(shared.out);
    expect(alone.code).toBe(shared.code);
  });
});

describe('a sweep that cannot be driven', () => {
  it.each([
    [['--sweep', ''], '--sweep', 'two speeds'],
    [['--sweep', '30mph'], '--sweep', 'two speeds'],
    [['--sweep', '5..45'], '--sweep', 'no unit'],
    [['--sweep', '45..5mph'], '--sweep', 'no range of speeds'],
    [['--sweep', '20..20mph'], '--sweep', 'no range of speeds'],
    [['--sweep', '0..20mph'], '--sweep', 'no range of speeds'],
    [['--sweep', '-5..20mph'], '--sweep', 'no range of speeds'],
    [['--sweep', '5..900mph'], '--sweep', 'no range of speeds'],
    [['--sweep', '5..20kg'], '--sweep', 'another kind'],
    [['--sweep', '5..20mph', '--step', '0mph'], '--step', 'does not go through'],
    [['--sweep', '5..20mph', '--step', '30mph'], '--step', 'does not go through'],
    [['--sweep', '5..20mph', '--step', '1e-6mph'], '--step', 'does not go through'],
    [['--sweep', '5..20mph', '--step', 'small'], '--step', 'not understood'],
    [['--sweep', '5..20mph', '--speed', '10mph'], '--speed', 'either --speed or --sweep'],
    [['--step', '1mph'], '--step', 'together with --sweep'],
    [['--sweep', '5..20mph', '--tyres', 'soft'], '--tyres', 'footprint, two-cams, point'],
    [['--tyres', 'round'], '--tyres', 'footprint, two-cams, point'],
  ])('%j is refused in one line', async (words, key, said) => {
    const { code, out, err } = await sweep(words);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(err.startsWith(`${key}: `)).toBe(true);
    expect(err).toContain(said);
    expect(err).toContain('Accepted: ');
  });

  it('on a course that knows no speed says so', async () => {
    const { code, err } = await program.run(['ride', OCHRE, '--course', 'drop', '--sweep', '5..20mph']);
    expect(code).toBe(2);
    expect(err).toMatch(/drop.*knows no speed/);
  });
});
