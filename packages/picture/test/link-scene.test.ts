import { type AxleGeometry, movedPoint } from '@lastinch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DrawnAxle, linkHandles } from '../src/link-axle.ts';
import { linkBounds, linkScene } from '../src/link-scene.ts';
import { LINK_VIEWS, type LinkView, offPaper, onPaper } from '../src/link-view.ts';
import type { Item, Scene } from '../src/scene.ts';
import { svgOf } from '../src/svg.ts';
import { textBox } from '../src/text-width.ts';
import { SEED } from './sample/any-travel.ts';
import { drawnAxle, threeLink } from './sample/drawn-axle.ts';
import { parseXml } from './sample/xml.ts';

const SCALE = { length: 0.2, text: '200 mm' };
const sceneOf = (axles: readonly DrawnAxle[], view: LinkView, width = 680): Scene =>
  linkScene(axles, { view, width, bounds: linkBounds(axles, view), scale: SCALE });
const named = (scene: Scene, name: string): Item => {
  const item = scene.items.find((each) => each.name === name);
  if (item === undefined) throw new Error(`${name} is not drawn`);
  return item;
};
const ends = (item: Item): readonly [number, number, number, number] => {
  if (item.kind !== 'line') throw new Error(`${item.kind} has no two ends`);
  return [item.x1, item.y1, item.x2, item.y2];
};

/** The same axle with the frame ends of its lower links moved down. */
const lowered: AxleGeometry = {
  ...threeLink,
  links: threeLink.links.map((link) =>
    link.id.startsWith('lower') ? { ...link, body: [link.body[0], link.body[1], link.body[2] - 0.05] } : link,
  ),
};
const still = drawnAxle('now', threeLink, 0, 0);
const other = drawnAxle('proposed', lowered, 0, 0);

describe('an axle with its links', () => {
  it('shows each link between its two joints, to scale, in each view', () => {
    expect(ends(named(sceneOf([still], 'side'), 'now.upper'))).toEqual([-2.58, 0.62, -1.78, 0.6]);
    // From behind left is on the left, so a point 0.12 m right of the centre line stands 0.12 m right of it.
    expect(ends(named(sceneOf([still], 'rear'), 'now.upper'))).toEqual([0.12, 0.62, 0.16, 0.6]);
    // From above forward is to the right, and left is up.
    expect(ends(named(sceneOf([still], 'top'), 'now.upper'))).toEqual([-2.58, -0.12, -1.78, -0.16]);
  });

  it('moves what sits on the axle with the pose, and leaves what sits on the frame', () => {
    const posed = drawnAxle('now', threeLink, 0.08, 0.1);
    const [x1, y1, x2, y2] = ends(named(sceneOf([posed], 'rear'), 'now.panhard'));
    const [, y, z] = movedPoint(posed.pose, threeLink, [-2.72, -0.5, 0.5]);
    expect([x1, y1]).toEqual([-y, z]);
    expect([x2, y2]).toEqual([-0.52, 0.56]);
  });

  it('stands the posed tyres on the ground: level in bump, sloping with the roll', () => {
    const ground = (axle: DrawnAxle): readonly number[] => {
      const item = named(sceneOf([axle], 'rear'), 'ground');
      return item.kind === 'polygon' ? Array.from(item.points) : [];
    };
    const [, left, , right] = ground(drawnAxle('now', threeLink, 0.06, 0));
    expect(left).toBeCloseTo(0.06, 9);
    expect(right).toBeCloseTo(0.06, 9);
    const [x1, up, x2, down] = ground(drawnAxle('now', threeLink, 0, 0.1)) as [
      number,
      number,
      number,
      number,
    ];
    // Left side up: the slope of the ground under the two patches is the tangent of the roll of the hub line.
    expect((up - down) / (x2 - x1)).toBeCloseTo(Math.tan(0.1), 2);
  });

  it('keeps the ground on the paper at full droop, when room was asked for it', () => {
    for (const view of ['side', 'rear'] as const) {
      const bounds = linkBounds([still], view, { bump: 0.1, droop: 0.15 });
      const scene = linkScene([drawnAxle('now', threeLink, -0.15, 0)], {
        view,
        width: 680,
        bounds,
        scale: SCALE,
      });
      const ground = named(scene, 'ground');
      const top = ground.kind === 'polygon' ? ground.points[1]! : Number.NaN;
      expect(top).toBeCloseTo(-0.15, 9);
      expect(bounds.bottom).toBeLessThan(top - 0.05);
    }
  });

  it('draws the first setup round and unbroken, the second square and broken', () => {
    const scene = sceneOf([still, other], 'side');
    expect(named(scene, 'now.upper.axle').kind).toBe('circle');
    expect(named(scene, 'proposed.upper.axle').kind).toBe('rect');
    expect(named(scene, 'now.upper').role).toBe('first');
    expect(named(scene, 'proposed.upper').role).toBe('second');
    const style = svgOf(scene, { title: 'links', idPrefix: 'l' });
    expect(style).toMatch(/\.lp-second\{[^}]*--d:7 3/);
    expect(style).toMatch(/\.lp-first\{[^}]*--d:none/);
  });

  it('leads the line of the tyre towards an instant centre that lies off the paper', () => {
    const far: DrawnAxle = { ...still, instant: { x: 40, z: 4 } };
    const scene = sceneOf([far], 'side');
    expect(scene.items.some(({ name }) => name === 'now.instant-centre')).toBe(false);
    const [x1, y1, x2, y2] = ends(named(scene, 'now.instant-line'));
    expect((y2 - y1) / (x2 - x1)).toBeCloseTo((4 - y1) / (40 - x1), 9);
    expect(x2).toBeLessThanOrEqual(scene.bounds.right + 1e-12);
  });

  it('has the roll centre of a Panhard bar with level links where the bar crosses the middle', () => {
    const level: AxleGeometry = {
      ...threeLink,
      links: threeLink.links.map((link) =>
        link.id === 'panhard' ? link : { ...link, body: [link.body[0], link.axle[1], link.axle[2]] },
      ),
    };
    const mark = named(sceneOf([drawnAxle('now', level, 0, 0)], 'rear'), 'now.roll-centre');
    // From (−0.5, 0.5) to (0.52, 0.56): at the middle 0.5 + 0.06 · 0.5 ÷ 1.02
    expect(mark.kind === 'circle' && mark.y).toBeCloseTo(0.5 + (0.06 * 0.5) / 1.02, 6);
  });

  it('lays no word over another, and none outside, at any width and in any pose', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...LINK_VIEWS),
        fc.integer({ min: 300, max: 900 }),
        fc.double({ min: -0.1, max: 0.1, noNaN: true }),
        fc.double({ min: -0.15, max: 0.15, noNaN: true }),
        (view, width, bump, roll) => {
          const axles = [drawnAxle('now', threeLink, bump, roll), drawnAxle('proposed', lowered, bump, roll)];
          const scene = linkScene(axles, {
            view,
            width,
            bounds: linkBounds([still, other], view),
            scale: SCALE,
          });
          const pixel = (scene.bounds.right - scene.bounds.left) / width;
          const boxes = scene.items.flatMap((item) => (item.kind === 'text' ? [textBox(item, pixel)] : []));
          boxes.forEach((one, k) => {
            expect(one.left).toBeGreaterThanOrEqual(scene.bounds.left);
            expect(one.right).toBeLessThanOrEqual(scene.bounds.right);
            for (const next of boxes.slice(k + 1))
              expect(
                one.left < next.right &&
                  next.left < one.right &&
                  one.bottom < next.top &&
                  next.bottom < one.top,
              ).toBe(false);
          });
          const svg = svgOf(scene, { title: 'links', idPrefix: 'l', style: false });
          parseXml(svg);
          expect(svg).not.toMatch(/NaN|Infinity|undefined/);
        },
      ),
      { seed: SEED, numRuns: 60 },
    );
  });

  it('offers each joint where it is drawn, and the joint of the shaft at the case', () => {
    const handles = linkHandles(still, 'side');
    expect(handles.map(({ id }) => id)).toEqual([
      'lower-left.axle',
      'lower-left.frame',
      'lower-right.axle',
      'lower-right.frame',
      'upper.axle',
      'upper.frame',
      'panhard.axle',
      'panhard.frame',
      'case',
    ]);
    expect(handles[4]?.at).toEqual([-2.58, 0.62]);
  });
});

describe('the paper of a view', () => {
  it('gives back the move that it shows, in the directions that it shows', () => {
    for (const view of LINK_VIEWS) {
      const move = offPaper(view, [0.03, -0.02]);
      expect(onPaper(view, move)).toEqual([0.03, -0.02]);
      expect(move.filter((part) => part === 0)).toHaveLength(1);
    }
  });
});
