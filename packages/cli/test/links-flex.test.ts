import { cellWidth } from '@lastinch/picture';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BuiltProgram, type Ended, OCHRE } from './program.ts';

let program: BuiltProgram;
let said: Ended;
const TRIMS = ['links', OCHRE, '--setup', 'trail-trim', '--against', 'road-trim'] as const;
beforeAll(async () => {
  program = await BuiltProgram.make();
  said = await program.run(TRIMS);
}, 60_000);
afterAll(() => program.remove());

const linesOf = (text: string): readonly string[] => text.trimEnd().split('\n');
/** From a heading to the empty line before the next one in capitals. */
function part(text: string, head: string): readonly string[] {
  const lines = linesOf(text);
  const from = lines.findIndex((line) => line.startsWith(head));
  expect(from, head).toBeGreaterThanOrEqual(0);
  const length = lines.slice(from + 1).findIndex((line) => /^[A-Z]{3}/.test(line));
  return lines.slice(from, length < 0 ? undefined : from + 1 + length);
}

describe('one wheel up, the other down', () => {
  it('has a section of its own, both setups one below the other', () => {
    const flex = part(said.out, 'FLEX: one wheel up, the other down');
    expect(flex.filter((line) => /Before, road-trim|After, trail-trim/.test(line))).toHaveLength(2);
    for (const corner of ['Front left', 'Front right', 'Rear left', 'Rear right'])
      expect(flex.filter((line) => line.trim().startsWith(`${corner} up`))).toHaveLength(2);
    const words = flex.join(' ').replace(/\s+/g, ' ');
    expect(words).toMatch(/Front left: ends on shock fully open, low side; stop tip whole on its pad\./);
    expect(words).toMatch(/Ramp index \d+ ± \d+ \(20 deg ramp, front (left|right) wheel .* up\): both axles/);
  });

  it('shows what the bar takes from the low tyre', () => {
    const loads = part(said.out, 'FLEX').flatMap((line) => /front left up (\d+) lb/.exec(line)?.[1] ?? []);
    expect(loads).toHaveLength(2);
    expect(Number(loads[1])).toBeGreaterThan(Number(loads[0]));
  });

  it.each([40, 80, 110])('keeps to %i cells', async (columns) => {
    const { out } = await program.run(TRIMS, { env: { COLUMNS: `${columns}` } });
    for (const line of linesOf(out)) expect(cellWidth(line), line).toBeLessThanOrEqual(columns);
  });

  it('says once what no change touches', async () => {
    const { out } = await program.run(['links', OCHRE, '--setup', 'as-it-is', '--against', 'as-measured']);
    const flex = part(out, 'FLEX');
    expect(flex.filter((line) => line.includes('Before and after alike'))).toHaveLength(1);
    expect(flex.filter((line) => line.trim().startsWith('Front left up'))).toHaveLength(1);
  });

  it('stands in --json, with figures and words', async () => {
    const answer = JSON.parse((await program.run([...TRIMS, '--json'])).out);
    const { before, after } = answer.articulation;
    expect([before.setup, after.setup]).toEqual(['road-trim', 'trail-trim']);
    expect(after.flex.frontLeft).toMatchObject({
      up: 'left',
      limits: [{ id: 'shock-open', side: 'right' }],
      pad: { stands: 'whole' },
      text: expect.stringMatching(/^ends on shock fully open/),
    });
    expect(after.flex.rearRight.angle).toMatchObject({
      value: expect.any(Number),
      tolerance: expect.any(Number),
    });
    expect(after.ramps.frontLeft).toMatchObject({ ends: true, lifts: null });
  });
});

describe('road trim and trail trim side by side', () => {
  it('stand in one table at 80 cells, in either system', async () => {
    for (const units of ['shop', 'metric']) {
      const { out } = await program.run([...TRIMS, '--units', units]);
      const list = part(out, 'KNOCK-ON LIST');
      expect(list.filter((line) => /^ +before +after +change$/.test(line))).toHaveLength(1);
      for (const name of [
        'Slope, a tyre lifts',
        'Slope, it tips',
        'Lean per g',
        'Front load transfer',
        'Front roll, bar',
        'Rear roll, tyres',
        'Rear ride frequency',
        'Rear/front frequency',
        'Front packs down',
      ])
        expect(
          list.filter((line) => line.startsWith(`  ${name} `)),
          name,
        ).toHaveLength(1);
    }
  });
});
