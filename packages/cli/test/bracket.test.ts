import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { cellWidth } from '@lastinch/picture';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BuiltProgram, CONTROL, OCHRE } from './program.ts';

const stories = resolve(import.meta.dirname, '../../core/test/travel/stories');
const STORY = resolve(stories, 's11-bracket.rig.yaml');

let program: BuiltProgram;
beforeAll(async () => {
  program = await BuiltProgram.make();
});
afterAll(() => program.remove());

describe('lastinch bracket', () => {
  it.each([80, 120])('fits %i columns, says what is not checked, and cautions', async (columns) => {
    const words = ['bracket', OCHRE, '--course', 'ledge'];
    const { out, err } = await program.run(words, { env: { COLUMNS: String(columns) } });
    expect(err).toBe('');
    for (const part of [
      'FRONT, STOP',
      'Factor',
      'One thing built otherwise',
      'not checked',
      'CAUTIONS',
      'certificate',
    ])
      expect(out).toContain(part);
    expect(out).not.toMatch(/undefined|NaN|Infinity|\[object/);
    expect(out).not.toMatch(CONTROL);
    for (const line of out.split('\n')) expect(cellWidth(line)).toBeLessThanOrEqual(columns);
  });

  it('S11: under 12 kN the outer one is too weak, the inner one holds, and it ends with 1', async () => {
    const { code, out } = await program.run(['bracket', STORY, '--force', '12 kN', '--json']);
    expect(code).toBe(1);
    const answer = JSON.parse(out);
    expect(answer).toMatchObject({ schema: 'lastinch/bracket/1', units: 'SI', force: 12000, wanted: 2 });
    const bending = answer.brackets.map(
      ({ ride }: { ride: { lines: { part: string; verdict: string; factor: { value: number } }[] } }) =>
        ride.lines.find(({ part }) => part === 'beam-bending'),
    );
    expect(bending[0]).toMatchObject({ verdict: 'short', factor: { value: expect.closeTo(1.58, 2) } });
    expect(bending[1]).toMatchObject({ verdict: 'holds', factor: { value: expect.closeTo(2.17, 2) } });
    expect(answer.brackets[0].notChecked).toContain('rail-wall');
  });

  it.each([
    [['--force', 'much'], '--force'],
    [['--force', '12 mm'], '--force'],
    [['--force', '0 N'], '--force'],
    [['--course', 'moon'], 'moon'],
  ])('refuses %o in one line', async (words, named) => {
    const { code, out, err } = await program.run(['bracket', STORY, ...words]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(named);
    expect(err.trim().split('\n')).toHaveLength(1);
  });

  it('asks a rig without brackets for one', async () => {
    const text = readFileSync(resolve(stories, 's7-strap-and-hose.rig.yaml'));
    const { code, err } = await program.run(['bracket', '-', '--force', '1 kN'], { input: text });
    expect(code).toBe(2);
    expect(err).toContain('front.bracket.stop');
  });
});
