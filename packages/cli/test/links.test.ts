import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { cellWidth } from '@lastinch/picture';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BuiltProgram, CONTROL, type Ended, OCHRE } from './program.ts';

const STORIES = resolve(import.meta.dirname, '../../core/test/travel/stories');
const S5 = join(STORIES, 's5-plus-forty.rig.yaml');
const S7 = join(STORIES, 's7-hose-in-space.rig.yaml');

let program: BuiltProgram;
let folder: string;
beforeAll(async () => {
  program = await BuiltProgram.make();
  folder = mkdtempSync(join(tmpdir(), 'lastinch-links-'));
}, 60_000);
afterAll(() => {
  program.remove();
  rmSync(folder, { recursive: true, force: true });
});

const links = (file: string, ...options: readonly string[]): Promise<Ended> =>
  program.run(['links', file, ...options]);
const linesOf = (text: string): readonly string[] => text.trimEnd().split('\n');
/** The first line that starts so. */
const row = (text: string, start: string): string => {
  const found = linesOf(text).find((line) => line.trim().startsWith(start));
  expect(found, `${start} in\n${text}`).toBeDefined();
  return found ?? '';
};

describe('S5: plus 40 mm at the rear, driveline', () => {
  let said: Ended;
  beforeAll(async () => {
    said = await links(S5, '--setup', 'plus-forty');
  }, 60_000);

  it('ends with 1, for the slip is too short and the joints are bent too much', () => {
    expect(said).toMatchObject({ code: 1, err: '' });
  });

  it('says the verdict first', () => {
    expect(linesOf(said.out).slice(0, 4).join(' ')).toMatch(
      /Do not build it like this: \d findings are over a limit/,
    );
  });

  it('has the joints before and after, and what they are held against', () => {
    for (const joint of ['case', 'pinion']) {
      const line = row(said.out, `Rear ${joint} joint, ride`);
      expect(line).toMatch(/12\.\d+ deg ± \S+ +14\.\d+ deg ± \S+ +7\.7 deg\* +OPEN/);
    }
  });

  it('names what fails before as after', () => {
    expect(said.out).toContain('STAYS AS IT WAS, and its limit is not kept');
    expect(row(said.out, 'Rear shaft plunge')).toMatch(/91\.\d mm ± \S+ +75 mm +OVER/);
  });

  it('says what to do', () => {
    const words = said.out.replace(/\s+/g, ' ');
    expect(words).toContain('Fit a double joint at the case and turn the pinion up');
    expect(words).toMatch(/Have a slip fitted that can change its length by 119 mm or more/);
  });

  it('has the curves of the axle at five poses', () => {
    expect(said.out).toContain('REAR AXLE OVER ITS TRAVEL');
    expect(row(said.out, 'case joint, deg')).toMatch(/22\.\d+ +18\.\d+ +14\.\d+ +11\.\d+ +7\.\d+/);
  });

  it('names what was not measured, and leaves brakes and law to others', () => {
    const words = said.out.replace(/[\s~!]+/g, ' ');
    expect(words).toContain('Front links: pinion, caster, steer');
    expect(words).toContain('qualified under your local rules');
    expect(words).toContain('set by the law where you drive');
  });

  it('ends with 0 once it is cured', async () => {
    const text = readFileSync(S5, 'utf8').replace('longer: 50 mm', 'longer: 38 mm');
    const cured = join(folder, 'cured.rig.yaml');
    writeFileSync(cured, text);
    const ended = await links(cured, '--setup', 'cured');
    expect(ended).toMatchObject({ code: 0, err: '' });
    expect(ended.out).not.toMatch(/^ +OVER {2}/m);
  });

  it('at 30 km/h has nothing against the angle', async () => {
    const slow = await links(S5, '--setup', 'plus-forty', '--speed', '30 km/h');
    expect(slow.code).toBe(1);
    expect(row(slow.out, 'Rear case joint, ride')).not.toContain('OPEN');
    expect(row(slow.out, 'Rear shaft plunge')).toContain('OVER');
  });
});

describe('S7: strap and hose', () => {
  it('fails on the strap, and tells what is left of the hose', async () => {
    const said = await links(S7);
    expect(said).toMatchObject({ code: 1, err: '' });
    expect(row(said.out, 'Front shock left in droop')).toMatch(/-12\.0 mm ± \S+ +12 mm +OVER/);
    expect(row(said.out, 'Front hose slack, left')).toMatch(/2[5-6]\.\d mm ± \S+ +25 mm\* +OPEN/);
    expect(said.out.replace(/\s+/g, ' ')).toContain('Use a strap of 376 mm or less');
  });

  it('is cured by the shorter strap, at the cost of droop', async () => {
    const said = await links(S7, '--setup', 'shorter');
    expect(said).toMatchObject({ code: 0, err: '' });
    expect(row(said.out, 'Front shock left in droop')).toMatch(/-12\.0 mm .*13\.9 mm ± \S+ +12 mm$/);
    expect(row(said.out, 'Front droop')).toMatch(/164\.0 mm .*138\.1 mm .*-25\.9\d? mm/);
  });
});

describe('the page', () => {
  it.each([40, 64, 80, 110])('keeps to %i cells, with every name whole', async (columns) => {
    const said = await program.run(['links', S5, '--setup', 'plus-forty'], {
      env: { COLUMNS: `${columns}` },
    });
    for (const line of linesOf(said.out)) {
      expect(cellWidth(line), line).toBeLessThanOrEqual(columns);
      expect(line).not.toMatch(CONTROL);
    }
    for (const name of ['Rear speed shaft allows', 'Rear roll centre', 'Rear slip left to go in'])
      expect(said.out).toContain(name);
  });

  it('keeps the knock-on list in one table at 80', async () => {
    // A whole rig, in fractions: the widest there is.
    const said = await links(OCHRE, '--setup', 'soft-stop-seat-down');
    expect(linesOf(said.out).filter((line) => /^ +before +after +limit$/.test(line))).toHaveLength(1);
    expect(linesOf(said.out).filter((line) => /^ +before +after +change$/.test(line))).toHaveLength(1);
  });

  it('speaks in the units of the file, or in those asked for', async () => {
    expect((await links(S7)).out).toContain('25 mm*');
    expect((await links(S7, '--units', 'shop')).out).toContain('1 in*');
  });

  it('looks at a rig without links, and says what it leaves out', async () => {
    const said = await links(join(STORIES, 's3-which-hits-first.rig.yaml'));
    expect(said.err).toBe('');
    expect(said.out).toContain('Front links: pinion, caster, steer');
    expect(said.out).toContain('Front travel to spare');
  });

  it('says that nothing changes where nothing does', async () => {
    const said = await links(OCHRE, '--setup', 'as-it-is');
    expect(said.out.replace(/\s+/g, ' ')).toContain('Nothing changes against as-measured.');
  });

  it('reads the rig from standard input', async () => {
    const said = await program.run(['links', '-', '--setup', 'plus-forty'], { input: readFileSync(S5) });
    expect(said).toMatchObject({ code: 1, err: '' });
  });
});

describe('--json', () => {
  let answer: {
    readonly schema: string;
    readonly knockOn: readonly Record<string, unknown>[];
    readonly steady: readonly Record<string, unknown>[];
    readonly ends: Record<string, { readonly curves: Record<string, unknown> } | null>;
    readonly findings: readonly { readonly text: string }[];
    readonly missing: readonly { readonly text: string }[];
  };
  beforeAll(async () => {
    answer = JSON.parse((await links(S5, '--setup', 'plus-forty', '--json')).out);
  }, 60_000);

  it('names its shape and holds the list, nearest to its limit first', () => {
    expect(answer).toMatchObject({
      schema: 'lastinch/links/1',
      units: 'SI',
      setup: 'plus-forty',
      against: 'as-measured',
      sampling: { trials: 256, seed: 1 },
      roadSpeed: { from: 'course' },
    });
    expect(answer.knockOn[0]).toMatchObject({
      id: expect.stringMatching(/^joint-ride\.rear\./),
      kept: 'unproven',
      limitOf: 'practice',
      findings: ['shaft-angle-speed'],
    });
  });

  it('has the same keys in every line', () => {
    const keys = [
      'id',
      'line',
      'place',
      'part',
      'name',
      'meaning',
      'before',
      'after',
      'change',
      'limit',
      'limitOf',
      'room',
      'used',
      'kept',
      'findings',
      'remedies',
    ];
    for (const line of [...answer.knockOn, ...answer.steady]) expect(Object.keys(line)).toEqual(keys);
  });

  it('draws each end: curves with a row a bump and an entry a roll', () => {
    expect(answer.ends.front).toBeNull();
    const curves = answer.ends.rear?.curves;
    expect(curves?.bumps).toHaveLength(25);
    expect(curves?.rolls).toHaveLength(9);
    expect(curves?.rollCentreHeight).toHaveLength(25);
    expect(curves?.rollCentreHeight).toContainEqual(expect.toSatisfy((row: unknown[]) => row.length === 9));
    expect(curves?.wheelSteer).toBeNull();
  });

  it('says each finding and what is missing in words', () => {
    for (const { text } of [...answer.findings, ...answer.missing]) expect(text.length).toBeGreaterThan(10);
  });
});

describe('what was not understood', () => {
  const refused = async (...words: readonly string[]): Promise<string> => {
    const ended = await program.run(['links', ...words]);
    expect(ended).toMatchObject({ code: 2, out: '' });
    expect(ended.err).not.toMatch(/^\s+at .+:\d+:\d+\)?$/m);
    return ended.err;
  };

  it('a setup that is not there, with the nearest one that is', async () => {
    expect(await refused(S5, '--setup', 'plus-fourty')).toMatch(/plus-fourty.*plus-forty \(the nearest\)/);
    expect(await refused(S5, '--against', 'nowhere')).toContain('nowhere');
  });

  it('units and speeds', async () => {
    expect(await refused(S5, '--units', 'cubits')).toContain('shop, metric');
    expect(await refused(S5, '--speed', '80')).toContain('--speed');
  });

  it('a lift that the links do not reach names them', async () => {
    const text = readFileSync(S5, 'utf8').replace(
      'rear: { springSpacer: 40 mm',
      'rear: { springSpacer: 1100 mm',
    );
    const high = join(folder, 'high.rig.yaml');
    writeFileSync(high, text);
    const said = await refused(high, '--setup', 'plus-forty');
    expect(said).toMatch(/rear\.links\./);
    expect(said).toContain('mm off');
  });
});
