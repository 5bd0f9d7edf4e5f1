import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FrontArchive } from '../../src/choose/archive.ts';
import { beats, type Point } from '../../src/choose/dominance.ts';
import { frontOf, layersOf, roomOf } from '../../src/choose/pareto.ts';

const SEED = { seed: 6, numRuns: 200 };

/** Points on a coarse grid, so that many are alike in some or all objectives. */
const clouds = fc.integer({ min: 1, max: 5 }).chain((width) =>
  fc.array(fc.array(fc.integer({ min: -4, max: 4 }), { minLength: width, maxLength: width }), {
    maxLength: 160,
  }),
);

/** Straight from the definition: nobody beats it. */
const byDefinition = (points: readonly Point[]): number[] =>
  points.map((_, i) => i).filter((i) => !points.some((other) => beats(other, points[i])));

describe('front', () => {
  test('is who nobody beats, alike ones together', () => {
    fc.assert(
      fc.property(clouds, (points) => {
        expect(frontOf(points)).toEqual(byDefinition(points));
      }),
      SEED,
    );
  });

  test('kept one by one is the same whatever the order of coming', () => {
    fc.assert(
      fc.property(clouds, fc.integer(), (points, turn) => {
        const archive = new FrontArchive<number>();
        const shift = points.length === 0 ? 0 : Math.abs(turn) % points.length;
        for (let i = 0; i < points.length; i += 1) {
          const at = (i + shift) % points.length;
          const isBeaten = points.some(
            (other, k) => beats(other, points[at]) && (k - shift + points.length) % points.length < i,
          );
          expect(archive.beats(points[at])).toBe(isBeaten);
          expect(archive.offer(points[at], at)).toBe(!isBeaten);
        }
        expect(archive.entries().sort((a, b) => a - b)).toEqual(byDefinition(points));
        expect(archive.size).toBe(byDefinition(points).length);
      }),
      SEED,
    );
  });

  test('of thousands of points in six objectives needs far fewer looks than one for each pair', () => {
    let looked = 0;
    const counted = (values: number[]): Point =>
      new Proxy(values, {
        get(target, key) {
          if (key === '0') looked += 1;
          return Reflect.get(target, key);
        },
      });
    let state = 1;
    const random = (): number => {
      state = (state * 48_271) % 2_147_483_647;
      return state / 2_147_483_647;
    };
    const points = Array.from({ length: 4000 }, () => counted([1, 2, 3, 4, 5, 6].map(random)));
    const front = frontOf(points);
    expect(front.length).toBeGreaterThan(300);
    expect(looked).toBeLessThan((points.length * front.length) / 2);
  });
});

describe('layers', () => {
  test('each layer is the front of what the layers before leave', () => {
    fc.assert(
      fc.property(clouds, (points) => {
        const layers = layersOf(points);
        const last = Math.max(-1, ...layers);
        for (let layer = 0; layer <= last; layer += 1) {
          const left = points.map((_, i) => i).filter((i) => layers[i] >= layer);
          const front = new Set(byDefinition(left.map((i) => points[i])).map((i) => left[i]));
          for (const i of left) expect(layers[i] === layer).toBe(front.has(i));
        }
      }),
      SEED,
    );
  });

  test('the ends have room without end, the others what lies between their neighbours', () => {
    expect(
      roomOf([
        [0, 8],
        [1, 4],
        [4, 0],
      ]),
    ).toEqual([Number.POSITIVE_INFINITY, 2, Number.POSITIVE_INFINITY]);
  });
});
