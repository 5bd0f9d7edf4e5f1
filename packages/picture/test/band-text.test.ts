import { describe, expect, it } from 'vitest';
import { type BandTextOptions, bandText } from '../src/band-text.ts';
import { cellWidth } from '../src/cells.ts';

const asked = (change: Partial<BandTextOptions> = {}): BandTextOptions => ({
  band: { x: [0, 1], low: [0, 2], high: [4, 8] },
  lines: [{ mark: 'a', x: [0, 1], y: [0, 10] }],
  top: 10,
  width: 42,
  height: 10,
  xText: (value) => `${value} mm`,
  yText: (value) => `${value} N`,
  ...change,
});

describe('a band in characters', () => {
  it('is as wide as asked and names both ends of both axes', () => {
    const lines = bandText(asked());
    expect(lines).toHaveLength(11);
    for (const line of lines) expect(cellWidth(line)).toBeLessThanOrEqual(42);
    expect(lines[0]).toContain('10 N');
    expect(lines[9]).toContain('0 N');
    expect(lines[10]).toMatch(/0 mm +1 mm$/);
  });

  it('shades between least and most, and nowhere else', () => {
    const rows = bandText(asked({ lines: [] })).slice(0, 10);
    const shaded = rows.map((row) => [...row].filter((cell) => cell === '░').length);
    // At 9.5 and 8.5 nothing; at 7.5 only near the end; at 0.5 from the start until the least rises past it.
    expect(shaded.slice(0, 2)).toEqual([0, 0]);
    expect(shaded[2]).toBeGreaterThan(0);
    expect(shaded[2]).toBeLessThan(shaded[4] ?? 0);
    expect(rows[9]).toMatch(/┤░+$/);
  });

  it('draws each curve with its letter from end to end, the first one on top', () => {
    const rows = bandText(
      asked({
        lines: [
          { mark: 'a', x: [0, 1], y: [0, 10] },
          { mark: 'b', x: [0, 1], y: [0, 10] },
        ],
      }),
    );
    expect(rows[0]).toMatch(/a$/);
    expect(rows[9]).toMatch(/┤a/);
    expect(rows.join('')).not.toContain('b');
  });

  it('leaves out what lies above the top, and begins where the earliest curve does', () => {
    const rows = bandText(asked({ lines: [{ mark: 'a', x: [-1, 1], y: [0, 100] }] }));
    expect(rows[10]).toMatch(/-1 mm/);
    expect(rows.join('')).toContain('a');
  });

  it('keeps to ASCII when asked', () => {
    expect(bandText(asked({ unicode: false })).join('\n')).toMatch(/^[ -~\n]+$/);
  });
});
