import { describe, expect, it } from 'vitest';
import { type ScatterPoint, scatterPlaces, scatterScene } from '../src/scatter.ts';
import { svgOf } from '../src/svg.ts';
import { textWidth } from '../src/text-width.ts';

const at = (letter: string, x: number, y: number, change: Partial<ScatterPoint> = {}): ScatterPoint => ({
  name: `choice.${letter}`,
  letter,
  x: { low: x - 1, middle: x, high: x + 1 },
  y: { low: y, middle: y, high: y },
  kind: 'member',
  isChosen: false,
  isFaint: false,
  ...change,
});

const options = (points: readonly ScatterPoint[], width = 600) => ({
  points,
  xLabel: 'lift, in',
  yLabel: 'seat, g',
  width,
});

/** Many in one place, as candidates of the same lift are. */
const crowd = Array.from({ length: 12 }, (_, k) => at(String.fromCharCode(65 + k), k % 3, (k % 4) / 10));

describe('candidates by two things that are wanted', () => {
  it.each([320, 600, 1200])(
    'letters overlap neither marks nor each other, and stay inside, at %s px',
    (width) => {
      const { items, bounds } = scatterScene(options(crowd, width));
      const places = scatterPlaces(options(crowd, width));
      const letters = items.flatMap((item) =>
        item.kind === 'text' && item.bold === true
          ? [{ x: item.x, y: item.y, half: textWidth(item.text, item.size, true) / 2, tall: item.size / 2 }]
          : [],
      );
      expect(letters.length).toBeGreaterThan(9);
      letters.forEach((one, k) => {
        expect(one.x - one.half).toBeGreaterThanOrEqual(0);
        expect(one.x + one.half).toBeLessThanOrEqual(bounds.right);
        expect(one.y + one.tall).toBeLessThanOrEqual(bounds.top);
        for (const mark of places)
          expect(Math.abs(mark.x - one.x) >= 5 + one.half || Math.abs(mark.y - one.y) >= 5 + one.tall).toBe(
            true,
          );
        for (const other of letters.slice(k + 1))
          expect(
            Math.abs(other.x - one.x) >= other.half + one.half ||
              Math.abs(other.y - one.y) >= other.tall + one.tall,
          ).toBe(true);
      });
    },
  );

  it('marks stand where their values are, and can be found again', () => {
    const points = [at('A', 0, 0), at('B', 10, 1)];
    const [first, second] = scatterPlaces(options(points));
    expect(second.x).toBeGreaterThan(first.x);
    expect(second.y).toBeGreaterThan(first.y);
    const marks = scatterScene(options(points)).items.filter(({ name }) => name !== undefined);
    expect(marks.map(({ name }) => name)).toEqual(['choice.A', 'choice.B']);
    expect(svgOf(scatterScene(options(points)), { title: 'two', idPrefix: 's' })).toContain(
      'data-name="choice.A"',
    );
  });

  it('an interval is a bar from end to end; none is drawn where there is none', () => {
    const { items } = scatterScene(options([at('A', 0, 0), at('B', 10, 1)]));
    const bars = items.filter((item) => item.kind === 'polyline');
    // In x only: in y nothing is uncertain.
    expect(bars).toHaveLength(2);
  });

  it('the chosen one has a ring, who is compared with a square, who is filtered out no bar', () => {
    const scene = scatterScene(
      options([
        at('A', 0, 0, { isChosen: true }),
        at('B', 5, 1, { kind: 'other' }),
        at('C', 9, 2, { isFaint: true }),
      ]),
    );
    const rings = scene.items.filter((item) => item.kind === 'circle' && item.role === 'second');
    expect(rings).toHaveLength(2);
    expect(scene.items.filter((item) => item.kind === 'rect')).toHaveLength(1);
    expect(scene.items.filter((item) => item.kind === 'polyline')).toHaveLength(2);
  });

  it('one alone, or all alike, still has an axis', () => {
    for (const points of [[], [at('A', 3, 3)], [at('A', 3, 3), at('B', 3, 3)]])
      expect(svgOf(scatterScene(options(points)), { title: 'few', idPrefix: 's' })).not.toContain('NaN');
  });
});
