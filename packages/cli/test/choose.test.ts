import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BuiltProgram, OCHRE } from './program.ts';

let program: BuiltProgram;
const folder = mkdtempSync(join(tmpdir(), 'lastinch-choose-'));
const at = (name: string) => join(folder, name);

/** Small enough to be searched in seconds. */
const CHOICES = `choices:
  money: EUR
  budget: 150
  front:
    stop: { soft: { price: 95, hours: 1 } }
    seatAndStopDrop: { sizes: [1 in ± 1/32], price: 60, hours: 8 }
    trail: { shockSetting: [trail, road] }
  drive:
    - { course: ledge, trim: trail }
`;
const rigWith = (choices: string) =>
  readFileSync(OCHRE, 'utf8').replace(/^choices:\n(?: .*\n)+/m, () => choices);
const SAMPLES = ['--samples', '4'];

/** GNU parallel, where it is installed: the way of the guide; else the same commands one after the other. */
function hasParallel(): boolean {
  try {
    return execFileSync('parallel', ['--version'], { stdio: 'pipe' }).toString().includes('GNU parallel');
  } catch {
    return false;
  }
}

beforeAll(async () => {
  program = await BuiltProgram.make();
  writeFileSync(at('rig.yaml'), rigWith(CHOICES));
});
afterAll(() => {
  program.remove();
  rmSync(folder, { recursive: true });
});

describe('lastinch choose', () => {
  it('tells the few that none beats, why, and what it all costs', async () => {
    const { code, out, err } = await program.run(['choose', at('rig.yaml'), ...SAMPLES]);
    expect([code, err]).toEqual([0, '']);
    for (const said of [
      'the best few of 8 candidates',
      'the budget (choices.budget)',
      'Against as it is',
      'not a certificate',
    ])
      expect(out).toContain(said);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  }, 120_000);

  it('in shards, taken up again, and in one run: the same answer to the last digit', async () => {
    const whole = await program.run(['choose', at('rig.yaml'), ...SAMPLES, '--json']);
    if (hasParallel())
      execFileSync(
        'parallel',
        [
          '-j',
          '2',
          process.execPath,
          program.file,
          'choose',
          at('rig.yaml'),
          ...SAMPLES,
          '--shard',
          '{}/2',
          '-o',
          at('part{}.json'),
          ':::',
          '1',
          '2',
        ],
        { cwd: folder },
      );
    else
      for (const i of [1, 2])
        await program.run([
          'choose',
          at('rig.yaml'),
          ...SAMPLES,
          '--shard',
          `${i}/2`,
          '-o',
          at(`part${i}.json`),
        ]);
    const merged = await program.run(['choose', 'merge', at('part2.json'), at('part1.json'), '--json']);
    expect(merged.out).toBe(whole.out);
    const again = await program.run(['choose', at('rig.yaml'), ...SAMPLES, '-o', at('part1.json'), '--json']);
    expect(again.out).toBe(whole.out);
    const { members } = JSON.parse(whole.out) as { members: { trims: { patch: unknown }[] }[] };
    expect(members.length).toBeGreaterThan(0);
  }, 240_000);

  it('one member in full comes with the text for the rig file', async () => {
    const { code, out } = await program.run(['choose', 'merge', at('part1.json'), '--show', 'a']);
    expect(code).toBe(0);
    expect(out).toContain('FOR THE RIG FILE');
    expect(out).toMatch(/choice-\d+-trail:/);
  }, 60_000);

  it('parts of another study, text that is none, and parts that nobody did are refused', async () => {
    await program.run([
      'choose',
      at('rig.yaml'),
      ...SAMPLES,
      '--seed',
      '2',
      '--shard',
      '1/9',
      '-o',
      at('other.json'),
    ]);
    const other = await program.run(['choose', 'merge', at('part1.json'), at('other.json')]);
    expect([other.code, other.err]).toEqual([2, expect.stringContaining('another study')]);
    writeFileSync(at('none.json'), '{"schema": "lastinch/choose-parts/1", "done": [');
    const none = await program.run(['choose', 'merge', at('none.json')]);
    expect([none.code, none.err]).toEqual([2, expect.stringContaining('no file of a study')]);
    const kept = JSON.parse(readFileSync(at('part2.json'), 'utf8')) as { done: unknown[] };
    writeFileSync(at('short.json'), JSON.stringify({ ...kept, done: kept.done.slice(1) }));
    const missing = await program.run(['choose', 'merge', at('short.json')]);
    expect([missing.code, missing.err]).toEqual([2, expect.stringContaining('scout 1')]);
  }, 120_000);

  it('no candidate left: each limit, and how many it takes away', async () => {
    const none = rigWith(
      CHOICES.replace('  budget: 150\n', '  from: soft-stop-seat-down\n  liftAtMost: 0 in\n'),
    );
    writeFileSync(at('none.yaml'), none);
    const { code, out, err } = await program.run(['choose', at('none.yaml'), ...SAMPLES]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('8 of 8 break the highest lift (choices.liftAtMost)');
  }, 60_000);

  it.each([
    [['--samples', '1'], 'samples'],
    [['--samples', 'many'], '--samples'],
    [['--shard', '3/2', '-o', 'x.json'], '--shard'],
    [['--shard', '1/2'], '-o'],
    [['--seed', '-1'], '--seed'],
  ])('%s is refused', async (words, named) => {
    const { code, out, err } = await program.run(['choose', at('rig.yaml'), ...words], { cwd: folder });
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(named);
  });
});
