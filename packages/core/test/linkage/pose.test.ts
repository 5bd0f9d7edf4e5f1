import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { AxleGeometry, Link, PoseResult, Vector } from '../../src/linkage/geometry.ts';
import { movedPoint } from '../../src/linkage/geometry.ts';
import { poseOf } from '../../src/linkage/pose.ts';
import { fourLink, KINDS, leafPair, radiusArms, threeLink, triangulated } from './invented.ts';

const reached = (result: PoseResult) => {
  if (result.status !== 'reached') throw new Error(JSON.stringify(result));
  return result;
};
const lengthOf = (a: Vector, b: Vector) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

const somePose = fc.record({
  bump: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
  roll: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
});

/** Equal, parallel, level links: the axle moves along an arc without turning. */
const level = (length: number, panhard: Link): AxleGeometry => ({
  ...fourLink,
  links: [
    ...[0.45, -0.45].map(
      (y): Link => ({
        id: y > 0 ? 'lower-left' : 'lower-right',
        axle: [-2.6, y, 0.34],
        body: [-2.6 + length, y, 0.34],
      }),
    ),
    ...[0.3, -0.3].map(
      (y): Link => ({
        id: y > 0 ? 'upper-left' : 'upper-right',
        axle: [-2.6, y, 0.6],
        body: [-2.6 + length, y, 0.6],
      }),
    ),
    panhard,
  ],
});

describe('closed forms', () => {
  test('equal parallel links carry the axle along an arc without turning it', () => {
    const length = 0.9;
    // A Panhard that stands fore and aft of nothing: very long, so that its own arc is known and small.
    const bar: Link = { id: 'panhard', axle: [-2.7, -0.5, 0.5], body: [-2.7, 0.5, 0.5] };
    for (const bump of [-0.2, -0.05, 0.1, 0.25]) {
      const { pose, gives } = reached(poseOf(level(length, bar), bump, 0));
      // Panhard and links draw the axle at once: sideways by the bar, forward by links that then lean sideways too.
      const [x, y] = pose.shift;
      const links = gives.slice(0, 4).map(({ length: give }) => give);
      const barGive = gives[4].length;
      expect(Math.hypot(length - x, y, bump) - length).toBeCloseTo(links[0], 12);
      expect(Math.hypot(x, 1 - y, bump) - 1).toBeCloseTo(barGive, 12);
      // Nothing is over-constrained by a motion that turns nothing.
      expect(Math.max(...gives.map(({ length: give }) => Math.abs(give)))).toBeLessThan(1e-12);
      expect(pose.rotation).toEqual([1, 0, 0, 0, 1, 0, 0, 0, 1].map((one) => expect.closeTo(one, 11)));
    }
  });

  test('a Panhard across an axle that only moves up and down shifts it by the arc of the bar', () => {
    // Links so long that they guide straight up.
    const bar: Link = { id: 'panhard', axle: [-2.6, -0.5, 0.5], body: [-2.6, 0.52, 0.58] };
    const across = 1.02;
    const rise = 0.08;
    const length = Math.hypot(across, rise);
    for (const bump of [-0.15, 0.1]) {
      const { pose } = reached(poseOf(level(2000, bar), bump, 0));
      const arc = across - Math.sqrt(length ** 2 - (rise - bump) ** 2);
      // Links of 2 km sag by bump²/(2·2000) ≈ 6 µm forward; the bar sees that to second order only.
      expect(pose.shift[1]).toBeCloseTo(arc, 8);
    }
  });

  test('a symmetric triangulated axle heaves in the plane of its side view', () => {
    // The pair of lowers and the pair of uppers act as one rod each in the side view, with the sideways offset fixed.
    const { pose } = reached(poseOf(triangulated, 0.12, 0));
    expect(pose.shift[1]).toBeCloseTo(0, 12);
    const [, , , left] = triangulated.links;
    for (const link of [triangulated.links[0], left]) {
      const moved = movedPoint(pose, triangulated, link.axle);
      const across = link.axle[1] - link.body[1];
      const inPlane = Math.sqrt(lengthOf(link.axle, link.body) ** 2 - across ** 2);
      expect(Math.hypot(moved[0] - link.body[0], moved[2] - link.body[2])).toBeCloseTo(inPlane, 12);
      expect(moved[1]).toBeCloseTo(link.axle[1], 12);
    }
  });

  test('radius arms turn the axle about the line through their body joints, but for what the Panhard pushes', () => {
    const { pose } = reached(poseOf(radiusArms, 0.1, 0));
    // In the side view the hub line turns with the arms; the Panhard steers it a little, so left and right are halved.
    const turns = radiusArms.links.slice(0, 2).map(({ axle, body }) => {
      const moved = movedPoint(pose, radiusArms, axle);
      return (
        Math.atan2(moved[2] - body[2], body[0] - moved[0]) - Math.atan2(axle[2] - body[2], body[0] - axle[0])
      );
    });
    const wind = Math.asin(-pose.rotation[6]);
    expect(wind).toBeCloseTo((turns[0] + turns[1]) / 2, 8);
  });

  test('a leaf pair is guided straight up and turns about its own middle', () => {
    const { pose } = reached(poseOf(leafPair, 0.1, 0.2));
    expect(pose.shift).toEqual([0, 0, 0.1]);
    expect(pose.rotation[7]).toBeCloseTo(Math.sin(0.2), 15);
  });
});

describe('every pose', () => {
  test.each(KINDS.map((rig) => [rig.kind, rig] as const))(
    '%s: rods keep their lengths but for what their bushes are said to give',
    (_, rig) => {
      fc.assert(
        fc.property(somePose, ({ bump, roll }) => {
          const { pose, gives } = reached(poseOf(rig, bump, roll));
          expect(pose.residual).toBeLessThan(1e-9);
          expect(pose.shift[2]).toBe(bump);
          expect(pose.rotation[7]).toBeCloseTo(Math.sin(roll), 14);
          rig.links.forEach((link, i) => {
            const now = lengthOf(movedPoint(pose, rig, link.axle), link.body);
            expect(Math.abs(now - lengthOf(link.axle, link.body) - gives[i].length)).toBeLessThan(1e-9);
          });
        }),
        { seed: 4, numRuns: 60 },
      );
    },
  );

  test.each(KINDS.map((rig) => [rig.kind, rig] as const))('%s: the turn is a rotation', (_, rig) => {
    fc.assert(
      fc.property(somePose, ({ bump, roll }) => {
        const r = reached(poseOf(rig, bump, roll)).pose.rotation;
        for (let i = 0; i < 3; i += 1)
          for (let j = 0; j < 3; j += 1)
            expect(r[i] * r[j] + r[3 + i] * r[3 + j] + r[6 + i] * r[6 + j]).toBeCloseTo(i === j ? 1 : 0, 13);
      }),
      { seed: 4, numRuns: 30 },
    );
  });

  test.each(KINDS.map((rig) => [rig.kind, rig] as const))(
    '%s: a mirrored axle moves as the mirror image',
    (_, rig) => {
      const flip = ([x, y, z]: Vector): Vector => [x, -y, z];
      const other = (id: string) =>
        id.endsWith('left') ? id.replace('left', 'right') : id.replace('right', 'left');
      const mirrored: AxleGeometry = {
        ...rig,
        links: rig.links.map(({ id, axle, body }) => ({ id: other(id), axle: flip(axle), body: flip(body) })),
      };
      fc.assert(
        fc.property(somePose, ({ bump, roll }) => {
          const here = reached(poseOf(rig, bump, roll));
          const there = reached(poseOf(mirrored, bump, -roll));
          expect(there.pose.shift[0]).toBeCloseTo(here.pose.shift[0], 11);
          expect(there.pose.shift[1]).toBeCloseTo(-here.pose.shift[1], 11);
          expect(there.pose.rotation[6]).toBeCloseTo(here.pose.rotation[6], 11);
          expect(there.pose.rotation[3]).toBeCloseTo(-here.pose.rotation[3], 11);
        }),
        { seed: 4, numRuns: 30 },
      );
    },
  );

  test('moving every point of the rig alike changes nothing', () => {
    const by: Vector = [3.1, 0, -0.7];
    const moved = ([x, y, z]: Vector): Vector => [x + by[0], y + by[1], z + by[2]];
    for (const rig of KINDS) {
      const elsewhere: AxleGeometry = {
        ...rig,
        centre: moved(rig.centre),
        links: rig.links.map(({ id, axle, body }) => ({ id, axle: moved(axle), body: moved(body) })),
      };
      const here = reached(poseOf(rig, 0.1, 0.15)).pose;
      const there = reached(poseOf(elsewhere, 0.1, 0.15)).pose;
      here.rotation.forEach((entry, i) => {
        expect(there.rotation[i]).toBeCloseTo(entry, 11);
      });
      here.shift.forEach((entry, i) => {
        expect(there.shift[i]).toBeCloseTo(entry, 11);
      });
    }
  });

  test('a rig of twice the size moves twice as far', () => {
    const twice = ([x, y, z]: Vector): Vector => [2 * x, 2 * y, 2 * z];
    for (const rig of KINDS) {
      const large: AxleGeometry = {
        ...rig,
        centre: twice(rig.centre),
        links: rig.links.map(({ id, axle, body }) => ({ id, axle: twice(axle), body: twice(body) })),
      };
      const here = reached(poseOf(rig, 0.1, 0.15)).pose;
      const there = reached(poseOf(large, 0.2, 0.15)).pose;
      expect(there.shift[1]).toBeCloseTo(2 * here.shift[1], 11);
      expect(there.rotation[3]).toBeCloseTo(here.rotation[3], 11);
    }
  });
});

describe('out of reach', () => {
  test('a short Panhard runs out of length, and the gap is what it is short of', () => {
    const short = threeLink.links.map(
      (link): Link =>
        link.id === 'panhard' ? { id: 'panhard', axle: [-2.6, -0.08, 0.5], body: [-2.6, 0.12, 0.5] } : link,
    );
    const result = poseOf({ ...threeLink, links: short }, 0.3, 0);
    expect(result.status).toBe('unreachable');
    if (result.status === 'reached') return;
    expect(result.unreachable.why).toBe('short');
    expect(result.unreachable.links).toEqual(['panhard']);
    expect(result.unreachable.bump).toBeCloseTo(0.2, 2);
    // Upright above its body joint the bar would have to be 0.3 m, and it is 0.2 m; the links pull it off upright.
    expect(result.unreachable.gap).toBeGreaterThan(0.1);
    expect(result.unreachable.gap).toBeLessThan(0.12);
  });

  test('lowers that come into line with the uppers jam over centre', () => {
    const result = poseOf(triangulated, 1.5, 0);
    expect(result.status).toBe('unreachable');
    if (result.status === 'reached') return;
    expect(result.unreachable.links).toEqual(expect.arrayContaining(['lower-left', 'lower-right']));
    expect(result.unreachable.bump).toBeLessThan(1.5);
    expect(poseOf(triangulated, result.unreachable.bump - 0.01, 0).status).toBe('reached');
    expect(poseOf(triangulated, result.unreachable.bump + 0.01, 0).status).toBe('unreachable');
  });

  test('a pose that is no number is out of reach, not without end', () => {
    expect(poseOf(threeLink, Number.NaN, 0).status).toBe('unreachable');
    expect(poseOf(threeLink, 0, Number.POSITIVE_INFINITY).status).toBe('unreachable');
  });

  test('a geometry that nobody checked is our own mistake', () => {
    expect(() => poseOf({ ...threeLink, links: threeLink.links.slice(1) }, 0, 0)).toThrow(/geometryProblems/);
  });
});
