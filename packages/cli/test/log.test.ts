import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BuiltProgram } from './program.ts';

let program: BuiltProgram;

const folder = mkdtempSync(join(tmpdir(), 'lastinch-log-'));
const file = (name: string, content: string | Uint8Array): string => {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
};

/** Five seconds of rest, then a knock of 5 g; a phone that lies flat. Invented. */
const rows = Array.from({ length: 2000 }, (_, k) => {
  const z = [3, 5, 4][k - 1501] ?? 1 + 0.001 * (k % 5);
  return `${(k / 200).toFixed(3).replace('.', ',')};0,001;0,002;${z.toFixed(3).replace('.', ',')}`;
});
const PHONE = `\uFEFFsome app\r\n\r\ntime;ax;ay;az\r\ns;g;g;g\r\n${rows.join('\r\n')}\r\n`;

describe('lastinch log', () => {
  let phone = '';
  beforeAll(async () => {
    program = await BuiltProgram.make();
    phone = file('phone.csv', PHONE);
  });
  afterAll(() => {
    program.remove();
    rmSync(folder, { recursive: true });
  });

  it('says how the columns are taken, what it holds, what is wrong, and what may be said from it', async () => {
    const { code, out, err } = await program.run(['log', phone], { env: { COLUMNS: '80' } });
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/4 az +acceleration\.z +g +by its name/);
    expect(out).toContain('Apart by semicolons, decimals with a comma.');
    expect(out).toMatch(/Accelerations +2000 rows in 9\.99 s, 200 a second/);
    expect(out).toMatch(/Hits of 2 g or more +1/);
    expect(out).toContain('a peak is a low-passed estimate');
    expect(out).toMatch(/7\.51 s .* 5 g/);
    expect(out.split('\n').every((line) => line.length <= 80)).toBe(true);
  });

  it('gives the same as data', async () => {
    const { code, out } = await program.run(['log', phone, '--json']);
    const { schema, logs } = JSON.parse(out);
    expect([code, schema, logs.length]).toEqual([0, 'lastinch/log/1', 1]);
    expect(logs[0].inspection.acceleration.hits[0].size).toBeCloseTo(5 * 9.80665, 3);
    expect(logs[0].use.peaks).toBe('low-passed');
    expect(logs[0].format.columns[3]).toMatchObject({ role: 'acceleration.z', unit: 'g', roleBy: 'name' });
  });

  it('takes a column for what it is told to be', async () => {
    const plain = file(
      'plain.csv',
      rows.map((row) => row.replaceAll(',', '.').replaceAll(';', ',')).join('\n'),
    );
    const { out } = await program.run(['log', plain, '--columns', 'time=1:s, x=4:g', '--json']);
    const [{ format }] = JSON.parse(out).logs;
    expect(format.columns.map(({ role }: { role: string }) => role)).toEqual([
      'time',
      'ignored',
      'ignored',
      'acceleration.x',
    ]);
  });

  it('refuses what is no log with one line for each file, and says nothing else', async () => {
    const photo = file('photo.csv', Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 0, 16));
    const empty = file('empty.csv', '');
    const { code, out, err } = await program.run([
      'log',
      phone,
      photo,
      empty,
      join(folder, 'none.csv'),
      folder,
    ]);
    expect([code, out]).toEqual([2, '']);
    const lines = err.trim().split('\n');
    expect(lines).toHaveLength(4);
    expect(lines[0]).toContain('photo.csv: this is “a JPEG photo”, not a log of a drive');
    expect(lines[1]).toContain('empty.csv: this is “an empty file”');
  });

  it.each([
    ['nonsense', '“nonsense” was not understood'],
    ['time=9', 'there is no column “9”'],
  ])('refuses --columns %s', async (columns, said) => {
    const { code, err } = await program.run(['log', phone, '--columns', columns]);
    expect(code).toBe(2);
    expect(err).toContain(said);
  });
});
