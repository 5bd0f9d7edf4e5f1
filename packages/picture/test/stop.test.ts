import type { Figure } from '@lastinch/core';
import type { StopNeed } from '@lastinch/core/stops';
import { describe, expect, it } from 'vitest';
import type { Item, Scene, TextItem } from '../src/scene.ts';
import { stopBandScene } from '../src/stop-band.ts';
import { type StopShape, sectionRings, stopSectionScene } from '../src/stop-section.ts';
import { textBox } from '../src/text-width.ts';

const figure = (dimension: Figure['dimension'], value: number): Figure => ({
  dimension,
  value,
  tolerance: 0,
});

/** Invented. */
const candidate = (id: string, isInSetup: boolean, full: number, touchesAfter = 0) => ({
  id,
  isInSetup,
  verdict: isInSetup ? ('does-not' as const) : ('open' as const),
  broken: [],
  near: [],
  spare: figure('length', 0.01),
  body: figure('acceleration', 10),
  force: figure('force', full),
  crush: figure('length', 0.03),
  usableCrush: 0.05,
  touchesAfter,
  curve: { crush: [0, 0.02, 0.05], force: [0, full / 4, full] },
});
const crush = Array.from({ length: 25 }, (_, k) => (0.05 * k) / 24);
const need = (least: number, most: number): StopNeed => ({
  rig: 'Ochre',
  setup: 'as-measured',
  end: 'front',
  demands: [],
  room: 0.05,
  limits: { body: figure('acceleration', 25), bracket: figure('force', 9000), keep: figure('length', 0.02) },
  crush,
  least: crush.map((c) => least * (c / 0.05) ** 2),
  most: crush.map((c) => most * (c / 0.05)),
  families: [],
  cures: null,
  candidates: [
    candidate('block', true, 8000),
    candidate('soft', false, 4000, -0.02),
    { id: 'odd', problems: [] },
  ],
  life: [],
});

const textsOf = ({ items }: Scene): readonly string[] =>
  items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
const wordsOf = (scene: Scene): readonly TextItem[] => scene.items.filter((item) => item.kind === 'text');
const named = (scene: Scene, name: string): Item | undefined =>
  scene.items.find((item) => item.name === name);

describe('the band of curves that an end needs', () => {
  it('says in the drawing what lies above, in and below it, with every stop and its verdict', () => {
    const said = textsOf(
      stopBandScene({ need: need(2500, 6000), other: 'soft', system: 'metric', width: 640 }),
    );
    expect(said).toEqual(
      expect.arrayContaining([
        'hits too hard',
        'does',
        'runs into metal',
        'reserve',
        'bracket bears',
        'a  block: over, on it now',
        'b  soft: open, on it in the other setup',
        'force, N',
      ]),
    );
    expect(said.join(' ')).not.toContain('odd');
  });

  it('points down where there is no room for words below, and cuts off what goes higher than matters', () => {
    const scene = stopBandScene({ need: need(30, 90_000), other: null, system: 'shop', width: 640 });
    expect(textsOf(scene)).toContain('↓ runs into metal');
    const area = named(scene, 'area');
    const top = Math.max(
      ...(area?.kind === 'polygon' ? Array.from(area.points).filter((_, k) => k % 2 === 1) : []),
    );
    expect(top).toBeLessThanOrEqual(scene.bounds.top);
  });

  it('keeps its words inside the picture, from a phone to a wide screen', () => {
    for (const width of [300, 390, 640, 1100])
      for (const system of ['metric', 'shop'] as const) {
        const scene = stopBandScene({ need: need(2500, 6000), other: 'soft', system, width });
        const boxes = wordsOf(scene).map((item) => ({ text: item.text, ...textBox(item, 1) }));
        for (const box of boxes) {
          expect(box.left, `${box.text} at ${width}`).toBeGreaterThanOrEqual(-1);
          expect(box.right, `${box.text} at ${width}`).toBeLessThanOrEqual(width + 1);
        }
      }
  });

  it('draws no band where no curve does', () => {
    const none = { ...need(1, 2), crush: [], least: [], most: [] };
    expect(
      named(stopBandScene({ need: none, other: null, system: 'metric', width: 640 }), 'area'),
    ).toBeUndefined();
  });
});

const shape = (density: number, level: number): StopShape => ({
  height: 0.06,
  radius: { at: [0, 0.06], value: [0.025, 0.025] },
  bore: 0,
  skin: 0,
  foot: 0,
  cap: 0,
  cell: 0.01,
  density: { at: [0, 0.06], value: [density, density] },
  level: [level, level],
});

const areaOf = (rings: readonly (readonly number[])[]): number =>
  rings.reduce((sum, ring) => {
    let twice = 0;
    for (let k = 0; k < ring.length; k += 2)
      twice += ring[k]! * ring[(k + 3) % ring.length]! - ring[(k + 2) % ring.length]! * ring[k + 1]!;
    return sum + twice / 2;
  }, 0);

describe('the cut through a printed stop', () => {
  it('has as much wall in it as the sheet has in that plane', () => {
    // Counted here, point by point: |sin X + sin Z cos X| ≤ t over whole cells of the plane Y = 0.
    const level = 0.45;
    let solid = 0;
    const count = 1000;
    for (let i = 0; i < count; i += 1)
      for (let j = 0; j < count; j += 1) {
        const [a, b] = [(2 * Math.PI * (i + 0.5)) / count, (2 * Math.PI * (j + 0.5)) / count];
        if (Math.abs(Math.sin(a) + Math.sin(b) * Math.cos(a)) <= level) solid += 1;
      }
    const share = areaOf(sectionRings(shape(0.3, level))) / (0.05 * 0.06);
    expect(share).toBeCloseTo(solid / count ** 2, 2);
  });

  it('is full where the level is, and holes and solid ends are told from it', () => {
    const full = { ...shape(1, 1.5), bore: 0.005 };
    expect(areaOf(sectionRings(full)) / (0.06 * (0.05 - 0.01))).toBeCloseTo(1, 2);
    const thin = shape(0.1, 0.1);
    const footed = { ...thin, foot: 0.01, cap: 0.005, skin: 0.002 };
    expect(areaOf(sectionRings(footed))).toBeGreaterThan(areaOf(sectionRings(thin)) + 0.05 * 0.015 * 0.7);
  });

  it('is as tall and as wide as it is on the paper, and shorter by its crush', () => {
    const rings = sectionRings(shape(0.3, 0.45));
    const slices = [0.01, 0.03, 0.05].map((at) => ({ at, strain: 0.25, closesAt: 0.7 }));
    const state = { crush: 0.015, slices };
    const sizes = (crushed: boolean) => {
      const scene = stopSectionScene(rings, {
        shape: shape(0.3, 0.45),
        state: crushed ? state : { crush: 0, slices: slices.map((slice) => ({ ...slice, strain: 0 })) },
        system: 'metric',
        width: 500,
      });
      const walls = named(scene, 'walls');
      const flat = walls?.kind === 'region' ? walls.rings.flatMap((ring) => Array.from(ring)) : [];
      const spread = (way: 0 | 1): number => {
        const along = flat.filter((_, k) => k % 2 === way);
        return Math.max(...along) - Math.min(...along);
      };
      return { wide: spread(0), tall: spread(1), said: textsOf(scene) };
    };
    const free = sizes(false);
    expect(free.tall / free.wide).toBeCloseTo(0.06 / 0.05, 1);
    const crushed = sizes(true);
    expect(crushed.tall / free.tall).toBeCloseTo(0.045 / 0.06, 2);
    expect(crushed.said.join(' ')).toContain('crushed 15 mm');
  });

  it('keeps its words inside the picture on a phone', () => {
    const slices = [0.01, 0.05].map((at) => ({ at, strain: 0.25, closesAt: 0.7 }));
    const scene = stopSectionScene(sectionRings(shape(0.3, 0.45)), {
      shape: shape(0.3, 0.45),
      state: { crush: 0.015, slices },
      system: 'shop',
      width: 320,
    });
    for (const item of wordsOf(scene)) {
      const box = textBox(item, 1);
      expect(box.left, item.text).toBeGreaterThanOrEqual(-1);
      expect(box.right, item.text).toBeLessThanOrEqual(321);
    }
  });
});
