import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnScene } from '../src/column.ts';
import { ROLES } from '../src/role.ts';
import type { Item, Scene } from '../src/scene.ts';
import { svgItems, svgOf } from '../src/svg.ts';
import { pictureStyle } from '../src/svg-style.ts';
import { SEED } from './sample/any-travel.ts';
import { failing, working } from './sample/travel.ts';
import { allOf, parseXml } from './sample/xml.ts';

const scene = (...items: readonly Item[]): Scene => ({
  bounds: { left: -1, right: 1, bottom: 0, top: 0.5 },
  items,
  layoutWidth: 400,
});

const drawn = (items: readonly Item[]) => {
  const root = parseXml(svgOf(scene(...items), { title: 't', idPrefix: 'p', style: false, paper: false }));
  return root.children.filter(({ tag }) => !['title', 'desc', 'defs', 'style'].includes(tag));
};

/** Extensible Markup Language (XML) 1.0, fifth edition, production [2] Char, as its list of ranges. */
const allowed = (code: number): boolean =>
  [0x9, 0xa, 0xd].includes(code) ||
  (code >= 0x20 && code <= 0xd7ff) ||
  (code >= 0xe000 && code <= 0xfffd) ||
  (code >= 0x10000 && code <= 0x10ffff);

describe('a scene as SVG', () => {
  it('draws one metre as so many pixels in both directions, y upward', () => {
    const [rect] = drawn([{ kind: 'rect', role: 'free', x: 0, y: 0.1, width: 0.5, height: 0.25 }]);
    // 400 px for 2 m is 200 px a metre; the picture is 0.5 m, so 100 px, high
    expect(rect?.attributes).toMatchObject({ x: '200', y: '30', width: '100', height: '50' });
  });

  it('is as high as its bounds ask for at any width', () => {
    const root = parseXml(svgOf(scene(), { title: 't', idPrefix: 'p', width: 1000 }));
    expect(root.attributes).toMatchObject({ width: '1000', height: '250', viewBox: '0 0 400 100' });
  });

  it('is an image with a title and a description for a screen reader', () => {
    const root = parseXml(
      svgOf(scene(), { title: 'Travel', description: 'Front left: pass', idPrefix: 'one' }),
    );
    expect(root.attributes).toMatchObject({
      xmlns: 'http://www.w3.org/2000/svg',
      role: 'img',
      'aria-labelledby': 'one-title one-desc',
    });
    expect(root.children.slice(0, 2).map(({ attributes, text }) => [attributes.id, text])).toEqual([
      ['one-title', 'Travel'],
      ['one-desc', 'Front left: pass'],
    ]);
  });

  it('stays well formed and keeps every letter whatever a name holds', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary', maxLength: 30 }),
        fc.string({ maxLength: 10 }),
        (text, prefix) => {
          const items: Item[] = [
            { kind: 'text', role: 'note', x: 0, y: 0, text, size: 12, anchor: 'start', name: text },
          ];
          const root = parseXml(svgOf(scene(...items), { title: text, description: text, idPrefix: prefix }));
          const [words] = allOf(root).filter(({ tag }) => tag === 'text');
          const kept = [...text].filter((c) => allowed(c.codePointAt(0)!));
          expect(words?.text).toBe(kept.join(''));
          expect(words?.attributes['data-name']).toBe(kept.join(''));
        },
      ),
      { seed: SEED, numRuns: 150 },
    );
  }, 30_000);

  it('has every id once and begins each with the prefix, so that two pictures fit on a page', () => {
    const root = parseXml(
      svgOf(columnScene(failing, { width: 360, system: 'shop' }), { title: 't', idPrefix: 'a b"' }),
    );
    const ids = allOf(root).flatMap(({ attributes }) => attributes.id ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.every((id) => id.startsWith('a-b--'))).toBe(true);
    const used = allOf(root).flatMap(
      ({ attributes }) => /^url\(#(.*)\)$/.exec(attributes.fill ?? '')?.[1] ?? [],
    );
    expect(used.length).toBeGreaterThan(0);
    expect(used.every((id) => ids.includes(id))).toBe(true);
  });

  it('lays a texture over what must be told apart without colour', () => {
    const textured = (role: 'crush' | 'metal' | 'flex' | 'reserve' | 'droop' | 'overlap' | 'clearance') =>
      drawn([{ kind: 'rect', role, x: 0, y: 0, width: 0.1, height: 0.1 }])[1]?.attributes.fill;
    const fills = (['crush', 'metal', 'flex', 'reserve', 'droop', 'overlap', 'clearance'] as const).map(
      textured,
    );
    expect(fills.every((fill) => fill?.startsWith('url(#p-'))).toBe(true);
    expect(new Set(fills).size).toBe(fills.length);
  });

  it('has a look for every role and names no colour outside the tones of its three schemes', () => {
    for (const role of ROLES) expect(pictureStyle).toContain(`.lp-${role}{`);
    const outside = pictureStyle
      .split('\n')
      .filter((line) => !line.includes('--lp-paper:'))
      .join('\n');
    expect(outside).not.toMatch(/#[0-9a-f]{3,6}\b|rgb/i);
  });

  it('gives the items alone for the next frame of an animation', () => {
    const picture = columnScene(working, { width: 360, system: 'metric' });
    const whole = svgOf(picture, { title: 't', idPrefix: 'p' });
    expect(whole).toContain(svgItems(picture, 'p'));
  });

  it('draws no arrow on a dimension without length', () => {
    expect(
      drawn([{ kind: 'dimension', role: 'figure', x1: 0, y1: 0, x2: 0, y2: 0 }]).map(({ tag }) => tag),
    ).toEqual(['line']);
    expect(drawn([{ kind: 'dimension', role: 'figure', x1: 0, y1: 0, x2: 0, y2: 0.1 }])).toHaveLength(3);
  });

  it('draws an arc from angle to angle on its circle', () => {
    const [arc] = drawn([
      { kind: 'arc', role: 'axis', x: 0, y: 0.25, radius: 0.1, from: 0, to: Math.PI / 2 },
    ]);
    // centre at (200, 50) px, radius 20 px: from the right of it to above it, the short way
    expect(arc?.attributes.d).toBe('M220 50A20 20 0 0 0 200 30');
  });
});
