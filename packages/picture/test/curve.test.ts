import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellWidth } from '../src/cells.ts';
import { curveScene } from '../src/curve.ts';
import { decimate } from '../src/decimate.ts';
import { historyText } from '../src/history-text.ts';
import { textBox } from '../src/text-width.ts';
import { SEED } from './sample/any-travel.ts';

const spiky = (count: number, at: number): { x: Float64Array; y: Float64Array } => {
  const x = Float64Array.from({ length: count }, (_, k) => k / 1000);
  const y = Float64Array.from({ length: count }, (_, k) => (k === at ? 25 : Math.sin(k / 300)));
  return { x, y };
};

describe('a long history thinned to pixels', () => {
  it('keeps the lowest and the highest sample of every pixel column', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ noNaN: true, min: -1e6, max: 1e6 }), { minLength: 1, maxLength: 400 }),
        fc.integer({ min: 1, max: 50 }),
        (y, pixels) => {
          const x = y.map((_, k) => k);
          const to = Math.max(1, y.length - 1);
          const points = decimate({ x, y }, 0, to, pixels).flat();
          const kept = new Map<number, number[]>();
          for (let k = 0; k < points.length; k += 2) {
            const column = Math.floor((points[k]! * pixels) / to);
            kept.set(column, [...(kept.get(column) ?? []), points[k + 1]!]);
          }
          const all = new Map<number, number[]>();
          for (const k of x) {
            const column = Math.floor((k * pixels) / to);
            all.set(column, [...(all.get(column) ?? []), y[k]!]);
          }
          expect(kept.size).toBe(all.size);
          for (const [column, values] of all) {
            const drawn = kept.get(column)!;
            expect(drawn.length).toBeLessThanOrEqual(4);
            expect(Math.max(...drawn)).toBe(Math.max(...values));
            expect(Math.min(...drawn)).toBe(Math.min(...values));
          }
        },
      ),
      { seed: SEED, numRuns: 200 },
    );
  });

  it('breaks the line where a value is missing', () => {
    expect(decimate({ x: [0, 1, 2, 3], y: [1, Number.NaN, 2, 3] }, 0, 3, 100)).toEqual([
      [0, 1],
      [2, 2, 3, 3],
    ]);
  });
});

describe('the range about a line', () => {
  const x = [0, 1, 2, 3];
  const scene = curveScene({
    series: [
      { name: 'now', x, y: [1, 2, 3, 4], spread: { low: [0, 1, Number.NaN, -7], high: [2, 3, 4, 9] } },
    ],
    xLabel: 'speed, mph',
    yLabel: 'left, in',
    width: 400,
  });
  const lines = scene.items.filter((item) => item.kind === 'polyline');

  it('is two faint lines of the same kind under it, broken where nothing is known', () => {
    expect(lines.map(({ weight, role }) => [weight, role])).toEqual([
      ['faint', 'first'],
      ['faint', 'first'],
      ['faint', 'first'],
      [undefined, 'first'],
    ]);
    expect(lines.map(({ points }) => points.length / 2)).toEqual([2, 1, 4, 4]);
  });

  it('is inside the picture', () => {
    for (const { points } of lines)
      for (let k = 1; k < points.length; k += 2) {
        expect(points[k]).toBeGreaterThanOrEqual(scene.bounds.bottom);
        expect(points[k]).toBeLessThanOrEqual(scene.bounds.top);
      }
  });
});

describe('a line chart', () => {
  const chart = (width: number) =>
    curveScene({
      series: [
        { name: 'as mounted', ...spiky(20000, 7003) },
        { name: 'lowered', ...spiky(20000, 12) },
      ],
      xLabel: 'time, s',
      yLabel: 'crush, mm',
      bands: [{ axis: 'y', from: 30, to: 30, role: 'limit', label: 'metal' }],
      width,
    });

  it('still shows a peak that lasts for one sample of twenty thousand', () => {
    const { items } = chart(400);
    const line = items.find((item) => item.kind === 'polyline' && item.name === 'as mounted');
    const limit = items.find((item) => item.kind === 'line' && item.role === 'limit');
    const zero = items.find((item) => item.kind === 'line' && item.role === 'axis' && item.y1 === item.y2);
    if (line?.kind !== 'polyline' || limit?.kind !== 'line' || zero?.kind !== 'line')
      throw new Error('not drawn');
    const ys = Array.from(line.points).filter((_, k) => k % 2 === 1);
    expect(line.points.length).toBeLessThan(2 * 4 * 401);
    // 25 of 30 between zero and the limit: the axis is linear
    expect((Math.max(...ys) - zero.y1) / (limit.y1 - zero.y1)).toBeCloseTo(25 / 30, 9);
  });

  it('keeps its words inside and apart at phone and desktop width', () => {
    for (const width of [320, 360, 800, 1200]) {
      const { items, bounds } = chart(width);
      const boxes = items.flatMap((item) =>
        item.kind === 'text' ? [{ box: textBox(item, 1), text: item.text }] : [],
      );
      for (const { box, text } of boxes) {
        expect(box.left, text).toBeGreaterThanOrEqual(bounds.left - 1);
        expect(box.right, text).toBeLessThanOrEqual(bounds.right + 1);
      }
      boxes.forEach((a, k) => {
        for (const b of boxes.slice(k + 1)) {
          const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
          const high = Math.min(a.box.top, b.box.top) - Math.max(a.box.bottom, b.box.bottom);
          expect(wide > 0.5 && high > 0.5, `${a.text} × ${b.text} at ${width}`).toBe(false);
        }
      });
    }
  });

  it('draws an axis also for a series that never changes and for none at all', () => {
    const flat = curveScene({
      series: [{ name: 'flat', x: [1, 1], y: [0, 0] }],
      xLabel: 'x',
      yLabel: 'y',
      width: 300,
    });
    const none = curveScene({ series: [], xLabel: 'x', yLabel: 'y', width: 300 });
    for (const scene of [flat, none]) {
      const numbers = scene.items.flatMap((item) =>
        item.kind === 'line' ? [item.x1, item.y1, item.x2, item.y2] : [],
      );
      expect(numbers.length).toBeGreaterThan(0);
      expect(numbers.every(Number.isFinite)).toBe(true);
    }
  });
});

describe('a history in characters', () => {
  it('looks like this', () => {
    const x = Array.from({ length: 41 }, (_, k) => k / 10);
    const y = x.map((t) => (t >= 2 && t < 2.1 ? 3 : 1 - Math.abs((t % 2) - 1)));
    expect(
      historyText({ series: [{ name: 'crush', x, y }], width: 32, height: 4, xText: (v) => `${v} s` }),
    ).toMatchInlineSnapshot(`
      "crush
      3┤              ⢸⡇
       ┤              ⢸⡇
       ┤     ⣀⣠⠤⣄⣀    ⡼⢧    ⣀⣠⠤⣄⣀
      0┤⣠⠤⠖⠚⠉⠁   ⠈⠉⠓⠲⠤⡇⢸⠤⠖⠚⠉⠁   ⠈⠉⠓⠲⠤⣄
        0 s                        4 s"
    `);
    expect(
      historyText({ series: [{ name: 'crush', x, y }], width: 32, height: 4, unicode: false }),
    ).toMatchInlineSnapshot(`
      "crush
      3|              ##
       |              ##
       |    ########  ##  ########
      0|#####      ########      #####
        0                            4"
    `);
  });

  it('fits its width and reaches its top row at the peak', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 30, max: 200 }),
        fc.integer({ min: 1, max: 4998 }),
        fc.boolean(),
        (width, at, unicode) => {
          const text = historyText({ series: [{ name: 'stop force', ...spiky(5000, at) }], width, unicode });
          const lines = text.split('\n');
          for (const line of lines) expect(cellWidth(line)).toBeLessThanOrEqual(width);
          expect(lines[1]?.split(unicode ? '┤' : '|')[1]?.trim()).not.toBe('');
        },
      ),
      { seed: SEED, numRuns: 100 },
    );
  });
});
