import { CORNERS, formatFigure } from '@lastinch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnScene } from '../src/column.ts';
import { columnDescription } from '../src/column-words.ts';
import { type Box, type Item, metresPerPixel, type Scene, type TextItem } from '../src/scene.ts';
import { textBox } from '../src/text-width.ts';
import { anyTravel, SEED } from './sample/any-travel.ts';
import { failing, working } from './sample/travel.ts';

const texts = (scene: Scene): readonly TextItem[] =>
  scene.items.filter((item): item is TextItem => item.kind === 'text');
const named = (scene: Scene, name: string): Item | undefined =>
  scene.items.find((item) => item.name === name);
const heightOf = (item: Item | undefined): number => (item?.kind === 'rect' ? item.height : Number.NaN);

const overlaps = (a: Box, b: Box, least: number): boolean =>
  Math.min(a.right, b.right) - Math.max(a.left, b.left) > least &&
  Math.min(a.top, b.top) - Math.max(a.bottom, b.bottom) > least;

const collisions = (scene: Scene): readonly string[] => {
  const u = metresPerPixel(scene);
  const boxes = texts(scene).map((item) => ({ text: item.text, box: textBox(item, u) }));
  return boxes.flatMap((a, k) =>
    boxes.slice(k + 1).flatMap((b) => (overlaps(a.box, b.box, 0.01 * u) ? [`${a.text} × ${b.text}`] : [])),
  );
};

describe('the travel columns as a scene', () => {
  it('draws each part as tall as it is long, all four corners to one scale', () => {
    for (const width of [360, 700, 1200]) {
      const scene = columnScene(working, { width, system: 'shop' });
      for (const corner of CORNERS) {
        const { freeBump, crush, flex, droop, hardTravel } = working.corners[corner];
        expect(heightOf(named(scene, `${corner}.column.free`))).toBeCloseTo(freeBump.value, 12);
        expect(heightOf(named(scene, `${corner}.column.crush`))).toBeCloseTo(crush.value, 12);
        expect(heightOf(named(scene, `${corner}.column.droop`))).toBeCloseTo(droop[0]!.travel.value, 12);
        if (corner.startsWith('front')) {
          expect(heightOf(named(scene, `${corner}.column.flex`))).toBeCloseTo(flex.value, 12);
        }
        const parts = ['free', 'crush', 'clearance', 'reserve', 'flex'].map((part) =>
          heightOf(named(scene, `${corner}.column.${part}`)),
        );
        const sum = parts.filter(Number.isFinite).reduce((total, part) => total + part, 0);
        expect(sum).toBeCloseTo(hardTravel.value, 12);
      }
    }
  });

  it('draws the tolerance of each boundary as a band of that width, and a question mark where it is unknown', () => {
    const scene = columnScene(failing, { width: 1200, system: 'shop' });
    const { hardTravel } = failing.corners.frontLeft;
    const band = named(scene, 'frontLeft.column.metal.tolerance');
    expect(band).toMatchObject({ kind: 'band', plus: hardTravel.tolerance, minus: hardTravel.tolerance });
    expect(named(scene, 'rearRight.column.metal.tolerance')).toBeUndefined();
    expect(texts(scene).filter((item) => item.text === '?')).toHaveLength(4);
  });

  it('stands both setups side by side on one scale', () => {
    const scene = columnScene(working, { width: 1200, system: 'shop', against: failing });
    const metalAt = (which: string): number => {
      const item = named(scene, `frontLeft.${which}.metal`);
      return item?.kind === 'rect' ? item.y : Number.NaN;
    };
    // lowered by one inch
    expect(metalAt('column') - metalAt('against')).toBeCloseTo(0.0254, 12);
    expect(texts(scene).some((item) => item.text === 'seat and stop down 1 in')).toBe(true);
  });

  it('writes every figure as the core does, in the unit system asked for', () => {
    for (const system of ['shop', 'metric'] as const) {
      const words = texts(columnScene(working, { width: 1200, system })).map((item) => item.text);
      expect(words).toContain(formatFigure(working.corners.frontLeft.crush, { system }));
      expect(words).toContain(`spare ${formatFigure(working.corners.rearLeft.spare, { system })}`);
    }
  });

  it('cuts no name of a contact, on a phone and on a screen, in both systems', () => {
    for (const width of [390, 820, 1200])
      for (const system of ['shop', 'metric'] as const)
        for (const against of [undefined, failing]) {
          const scene = columnScene(working, { width, system, ...(against && { against }) });
          const words = texts(scene).filter((item) => item.name?.endsWith('.label'));
          expect(words.length).toBeGreaterThan(20);
          expect(words.filter((item) => item.text.includes('…'))).toEqual([]);
        }
  });

  it('lays no word over another and none outside the picture, from a phone to a wide screen', () => {
    fc.assert(
      fc.property(
        anyTravel,
        fc.option(anyTravel),
        fc.integer({ min: 320, max: 1600 }),
        fc.constantFrom('shop' as const, 'metric' as const),
        (travel, against, width, system) => {
          const scene = columnScene(travel, { width, system, ...(against === null ? {} : { against }) });
          expect(collisions(scene)).toEqual([]);
          const { left, right, bottom, top } = scene.bounds;
          const u = metresPerPixel(scene);
          for (const item of texts(scene)) {
            const box = textBox(item, u);
            expect(box.left, item.text).toBeGreaterThanOrEqual(left - u);
            expect(box.right, item.text).toBeLessThanOrEqual(right + u);
            expect(box.bottom, item.text).toBeGreaterThanOrEqual(bottom - u);
            expect(box.top, item.text).toBeLessThanOrEqual(top + u);
          }
        },
      ),
      { seed: SEED, numRuns: 100 },
    );
  }, 30_000);

  it('always labels metal, free bump, crush and what is to spare', () => {
    for (const width of [320, 360, 900, 1200]) {
      const words = texts(columnScene(working, { width, system: 'shop' })).map((item) => item.text);
      for (const name of ['free bump', 'stop crush', 'to spare']) {
        expect(words.filter((word) => word === name).length, `${name} at ${width}`).toBeGreaterThanOrEqual(4);
      }
    }
  });

  it('says in words what it shows', () => {
    const words = columnDescription(failing, { system: 'shop' });
    expect(words).toContain('Front right: verdict fail');
    expect(words).toContain('then coil solid at 5 in ± unknown');
    expect(words).toContain('until strap taut');
  });
});
