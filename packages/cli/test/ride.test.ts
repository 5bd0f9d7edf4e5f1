import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { CORNERS } from '@lastinch/core';
import { cellWidth } from '@lastinch/picture';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { BuiltProgram, CONTROL, OCHRE } from './program.ts';

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

describe('lastinch ride', () => {
  it('drives a course at the speed that is asked for', async () => {
    const { code, out } = await program.run([
      'ride',
      OCHRE,
      '--course',
      'flat',
      '--speed',
      '20 mph',
      '--json',
    ]);
    const answer = JSON.parse(out);
    expect(code).toBe(0);
    expect(answer).toMatchObject({ schema: 'lastinch/ride/1', rig: 'Ochre', course: 'flat', speed: 8.9408 });
    for (const at of CORNERS) {
      const corner = answer.corners[at];
      for (const key of ['peakCrush', 'clearance', 'peakStopForce', 'airborneShare']) {
        expect(corner[key], `${at}.${key}`).toEqual(expect.any(Number));
        expect(corner.tolerance[key], `${at}.${key}`).toEqual(expect.any(Number));
      }
      expect(corner.contacts).toEqual({ stop: 0, metal: 0, droop: 0, shockClosed: 0, shockOpen: 0 });
      expect(corner.airborneShare).toBe(0);
    }
    expect(answer.body.peakAcceleration).toBeCloseTo(0, 2);
    expect(answer.body.tolerance.rmsAcceleration).toEqual(expect.any(Number));
    expect(answer.counters.steps).toBeGreaterThan(0);
    expect(answer.energy.relativeResidual).toBeLessThan(1e-3);
    expect(answer.status).toBe('finished');
  });

  it('takes the speed of the course when none is asked for, and shows both setups', async () => {
    const words = ['ride', OCHRE, '--course', 'ledge', '--setup', 'soft-stop-seat-down'];
    const { out, err } = await program.run([...words, '--against', 'as-it-is']);
    expect(err).toBe('');
    for (const part of ['soft-stop-seat-down', 'as-it-is', 'Deepest stop crush', 'Metal hit', 'CAUTIONS'])
      expect(out).toContain(part);
    expect(out).not.toMatch(/undefined|NaN|\[object/);
    expect(out).not.toMatch(CONTROL);
  });

  it('says what the seat takes, whose seat it is, and makes no medical claim', async () => {
    const { out } = await program.run(['ride', OCHRE, '--course', 'connecting-road']);
    for (const part of ['AT THE SEAT', 'Weighted r.m.s.', 'MTVV', 'VDV', 'Crest factor'])
      expect(out).toContain(part);
    for (const part of [
      'A(8) (10 mi a day)',
      'Until action value (A(8) 0.5)',
      'Absorbed power',
      'DRI',
      'Spinal dose (single source)',
      'ISO 2631-5:2004',
    ])
      expect(out.replace(/\s+/g, ' ')).toContain(part);
    expect(out).toContain('Of the driver on his seat');
    expect(out).not.toMatch(/undefined|NaN|\[object|health|injur/i);
    expect(out).not.toMatch(CONTROL);
  });

  it('gives the same as data, and no history', async () => {
    const { out } = await program.run(['ride', OCHRE, '--course', 'connecting-road', '--json']);
    const { exposure } = JSON.parse(out);
    expect(exposure).toMatchObject({
      seat: 'sitter',
      direction: 'vertical',
      leftOut: ['foreAndAft', 'sideways'],
      samplesPerSecond: 1000,
      doubts: [],
      day: { from: 'course' },
      singleSource: ['spinalDose', 'spinalStress'],
    });
    expect(Object.keys(exposure.figures)).toEqual([
      'rms',
      'maximumTransient',
      'dose',
      'crestFactor',
      'timeToAction',
      'timeToLimit',
      'dailyAcceleration',
      'dailyDose',
      'absorbedPower',
      'lowPassedPeak',
      'dynamicResponseIndex',
      'spinalDose',
      'spinalStress',
      'tilting',
    ]);
    for (const [name, figure] of Object.entries(exposure.figures))
      expect(figure, name).toEqual({ value: expect.any(Number), tolerance: expect.any(Number) });
    expect(exposure.times.toAction.byDose).toEqual({
      value: expect.any(Number),
      low: expect.any(Number),
      high: expect.any(Number),
    });
    expect(out.length).toBeLessThan(60_000);
  });

  it('drives several courses in one call, first all at a glance', async () => {
    const { code, out, err } = await program.run([
      'ride',
      OCHRE,
      '--course',
      'whoops, ledge,connecting-road',
    ]);
    expect([code, err]).toEqual([1, '']);
    expect(out).toMatch(/^Ochre: 3 courses at a glance/);
    for (const name of ['over whoops at 20 mph', 'over ledge at 8 mph', 'over connecting-road at 35 mph'])
      expect(out).toContain(name);
    expect(out.match(/^CAUTIONS$/gm)).toHaveLength(1);
    expect(out.match(/^AT THE SEAT$/gm)).toHaveLength(3);
    for (const line of out.split('\n')) expect(cellWidth(line), line).toBeLessThanOrEqual(80);

    const json = await program.run(['ride', OCHRE, '--course', 'ledge,flat', '--json']);
    const answer = JSON.parse(json.out);
    expect(answer.schema).toBe('lastinch/rides/1');
    expect(answer.rides.map(({ course }: { course: string }) => course)).toEqual(['ledge', 'flat']);
    expect(answer.rides[0].exposure.figures.rms.value).toBeGreaterThan(0);
  });

  it('refuses a list with a name that is not there, and several courses for a sweep', async () => {
    const unknown = await program.run(['ride', OCHRE, '--course', 'ledge,whops,']);
    expect([unknown.code, unknown.out]).toEqual([2, '']);
    expect(unknown.err.trim().split('\n')).toHaveLength(2);
    expect(unknown.err).toContain('whoops (the nearest)');
    const swept = await program.run(['ride', OCHRE, '--course', 'ledge,flat', '--sweep', '5..10mph']);
    expect([swept.code, swept.out]).toEqual([2, '']);
    expect(swept.err).toContain('one course together with --sweep');
  });

  it('says what the ground of the course is', async () => {
    const { out } = await program.run(['ride', OCHRE, '--course', 'ledge']);
    expect(out).toContain('The course: a ledge 5 in up within 10 in, under the left tyres only.');
  });

  it('lists the courses, each in a few words, when none is asked for', async () => {
    const { code, out, err } = await program.run(['ride', OCHRE]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('--course: a value is missing.');
    expect(err).toContain('drop (let go 12 in above flat ground)');
    expect(err.trim().split('\n')).toHaveLength(1);
  });

  it('drives the only course, measured ground in a file beside the rig', async () => {
    const text = readFileSync(OCHRE, 'utf8');
    const profile = 'courses: { wash: { kind: profile, points: { file: wash.csv }, speed: 10 mph } }\n';
    const file = join(folder, 'wash.rig.yaml');
    writeFileSync(
      file,
      text.replace(/^courses:\n(?: .*\n)+/m, profile).replace(/^choices:\n(?: .*\n)+/m, ''),
    );
    const rows = Array.from({ length: 60 }, (_, i) => `${i / 4}; ${(40 * Math.sin(i / 5)).toFixed(1)}; 0`);
    writeFileSync(join(folder, 'wash.csv'), `distance [m]; left [mm]; right [mm]\n${rows.join('\n')}\n`);
    const { code, out, err } = await program.run(['ride', file, '--units', 'metric']);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('over wash');
    expect(out).toContain('measured ground, 14.75 m, 60 points');

    writeFileSync(
      join(folder, 'wash.csv'),
      'distance [m]; left [mm]; right [mm]\n1; 0; 0\n0.5; 0; 0\n2; 0; 0\n',
    );
    const back = await program.run(['ride', file]);
    expect(back.code).toBe(2);
    expect(back.err).toMatch(/^wash\.csv:3: courses\.wash\.points: the table does not rise at .*0\.5 m/);
  });
});

it.each([40, 80])('keeps a ride to a terminal of %i cells', async (columns) => {
  const { out } = await program.run(['ride', OCHRE, '--course', 'ledge'], { env: { COLUMNS: `${columns}` } });
  for (const line of out.trimEnd().split('\n')) expect(cellWidth(line), line).toBeLessThanOrEqual(columns);
});

it('lets a rig fall without asking for a speed', async () => {
  const { out, err } = await program.run(['ride', OCHRE, '--course', 'drop']);
  expect(err).toBe('');
  expect(out.split('\n')[0]).not.toMatch(/ at /);
});

describe('the program itself', () => {
  it('tells its version and its usage', async () => {
    expect(await program.run(['--version'])).toMatchObject({ code: 0, out: '0.1.0\n', err: '' });
    const help = await program.run(['--help']);
    expect(help.code).toBe(0);
    for (const name of ['new', 'check', 'ride', 'open', 'Exit codes']) expect(help.out).toContain(name);
  });

  it('says what it can do when it is asked for nothing', async () => {
    const { code, err } = await program.run([]);
    expect(code).toBe(2);
    expect(err).toContain('Usage: lastinch');
  });
});

describe('how the tyres read the ground', () => {
  it('is a foot unless another way is asked for, and is told on the page and as data', async () => {
    const words = ['ride', OCHRE, '--course', 'ledge', '--units', 'metric'];
    const page = await program.run(words);
    expect(page.out).toMatch(/tyres average the ground over a foot\s+of 3\d0 mm/);
    const asPoint = JSON.parse((await program.run([...words, '--tyres', 'point', '--json'])).out);
    expect(asPoint.tyres).toMatchObject({ feel: 'point', used: 0 });
    const asFoot = JSON.parse((await program.run([...words, '--json'])).out);
    expect(asFoot.tyres.used).toBeCloseTo((asFoot.tyres.contact.front + asFoot.tyres.contact.rear) / 2, 12);
    expect(asFoot.body.rmsAcceleration).not.toBe(asPoint.body.rmsAcceleration);
  });
});
