import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { cellWidth } from '@lastinch/picture';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { BuiltProgram, CONTROL, OCHRE } from './program.ts';

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
