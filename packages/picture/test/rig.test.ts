import { readFileSync } from 'node:fs';
import {
  ENDS,
  gapsAt,
  resolveSetup,
  type Setup,
  SIDES,
  setupNames,
  type TravelResult,
  travelOf,
} from '@lastinch/core';
import { readRig } from '@lastinch/core/rigfile';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AT_REST, axlePose, poseAt, type RigPose } from '../src/pose.ts';
import { rearScene } from '../src/rig-rear.ts';
import { rigShapeOf } from '../src/rig-shape.ts';
import { sideScene } from '../src/rig-side.ts';
import { stopState } from '../src/rig-station.ts';
import type { Item, Scene } from '../src/scene.ts';
import { svgOf } from '../src/svg.ts';
import { SEED } from './sample/any-travel.ts';
import { inventedRig } from './sample/rig-shape.ts';
import { parseXml } from './sample/xml.ts';

const named = (scene: Scene, name: string): Item => {
  const item = scene.items.find((each) => each.name === name);
  if (item === undefined) throw new Error(`${name} is not drawn`);
  return item;
};
const heightOf = (item: Item): number => (item.kind === 'dimension' ? item.y2 - item.y1 : Number.NaN);
const span = (item: Item): { readonly bottom: number; readonly top: number } => {
  if (item.kind !== 'polygon') throw new Error(`${item.kind} has no points`);
  const ys = Array.from(item.points).filter((_, k) => k % 2 === 1);
  return { bottom: Math.min(...ys), top: Math.max(...ys) };
};

/** The demo rig of this house, invented, in each of its setups. */
const demo = (): readonly { readonly setup: Setup; readonly travel: TravelResult }[] => {
  const folder = new URL('../../../examples/ochre/', import.meta.url);
  const read = (path: string): string => readFileSync(new URL(path, folder), 'utf8');
  const rig = readRig(read('ochre.rig.yaml'), {
    file: 'ochre.rig.yaml',
    readBeside: (path) => ({ ok: true, value: read(path) }),
  });
  if (!rig.ok) throw new Error(JSON.stringify(rig.problems));
  return setupNames(rig.value).map((name) => {
    const setup = resolveSetup(rig.value, name);
    if (!setup.ok) throw new Error(JSON.stringify(setup.problems));
    return { setup: setup.value, travel: travelOf(setup.value) };
  });
};

const anyPose: fc.Arbitrary<RigPose> = fc
  .tuple(...Array.from({ length: 7 }, () => fc.double({ min: -0.12, max: 0.12, noNaN: true })))
  .map((coordinates) => poseAt(coordinates, 0));

describe('the rig from the side', () => {
  it('is to scale: wheelbase, wheel radius and gap are those of the rig', () => {
    const scene = sideScene(inventedRig, AT_REST, { width: 800 });
    const front = named(scene, 'front.tyre');
    const rear = named(scene, 'rear.tyre');
    if (front.kind !== 'circle' || rear.kind !== 'circle') throw new Error('a tyre is a circle');
    expect(front.x - rear.x).toBeCloseTo(inventedRig.wheelbase, 12);
    expect(front.radius).toBe(inventedRig.ends.front.tyreRadius);
    expect(front.y - front.radius).toBeCloseTo(0, 12); // stands on the ground
    expect(heightOf(named(scene, 'front.gap'))).toBeCloseTo(inventedRig.ends.front.stop.freeBump.right, 12);
  });

  it('drives to the right when it is looked at from the right, to the left from the left', () => {
    const x = (side: 'left' | 'right', name: string): number => {
      const item = named(sideScene(inventedRig, AT_REST, { width: 800, side }), name);
      return item.kind === 'circle' ? item.x : Number.NaN;
    };
    expect(x('right', 'front.tyre')).toBeGreaterThan(x('right', 'rear.tyre'));
    expect(x('left', 'front.tyre')).toBeLessThan(x('left', 'rear.tyre'));
  });

  it('dips the front of the frame when the nose goes down and closes the front gap by as much', () => {
    const pose: RigPose = { ...AT_REST, body: { heave: 0, pitch: 0.02, roll: 0 } };
    const still = sideScene(inventedRig, AT_REST, { width: 800 });
    const dipped = sideScene(inventedRig, pose, { width: 800 });
    const closes = heightOf(named(still, 'front.gap')) - heightOf(named(dipped, 'front.gap'));
    // The front axle is 1.1 m ahead of the centre of gravity: 1.1 · 0.02
    expect(closes).toBeCloseTo(1.1 * 0.02, 12);
    expect(heightOf(named(dipped, 'rear.gap'))).toBeGreaterThan(heightOf(named(still, 'rear.gap')));
  });

  it('puts each wheel on its own side: the right one sinks when the axle rolls right side down', () => {
    const pose = { ...AT_REST, axles: { ...AT_REST.axles, front: { heave: 0, roll: 0.05 } } };
    const scene = sideScene(inventedRig, pose, { width: 800, side: 'right' });
    const near = named(scene, 'front.tyre');
    const far = named(scene, 'front.far');
    if (near.kind !== 'circle' || far.kind !== 'circle') throw new Error('a tyre is a circle');
    expect(far.y - near.y).toBeCloseTo(0.05 * inventedRig.ends.front.track, 12);
  });

  it('lays the ground under the rig as it was given', () => {
    const near = [-4, 0.1, 0, 0.2, 2, -0.1];
    const ground = named(sideScene(inventedRig, AT_REST, { width: 800, ground: { near } }), 'ground');
    expect(ground.kind === 'polygon' && Array.from(ground.points).slice(0, 6)).toEqual(near);
    const mirrored = named(
      sideScene(inventedRig, AT_REST, { width: 800, side: 'left', ground: { near } }),
      'ground',
    );
    expect(mirrored.kind === 'polygon' && Array.from(mirrored.points).slice(0, 6)).toEqual([
      4, 0.1, -0, 0.2, -2, -0.1,
    ]);
  });
});

describe('an axle from behind', () => {
  it('is to scale: track, spread of the stops and gaps, left on the left', () => {
    const scene = rearScene(inventedRig, AT_REST, { width: 500, end: 'front' });
    const centre = (name: string): number => {
      const item = named(scene, name);
      return item.kind === 'rect' ? item.x + item.width / 2 : Number.NaN;
    };
    expect(centre('right.tyre') - centre('left.tyre')).toBeCloseTo(inventedRig.ends.front.track, 12);
    expect(centre('right.pad') - centre('left.pad')).toBeCloseTo(inventedRig.ends.front.stop.spread, 12);
    for (const side of SIDES) {
      expect(heightOf(named(scene, `${side}.gap`))).toBeCloseTo(
        inventedRig.ends.front.stop.freeBump[side],
        12,
      );
    }
  });

  it('shortens a stop by its crush, lets it bulge, and marks metal only where it is reached', () => {
    const at = (heave: number) =>
      rearScene(inventedRig, axlePose('front', { heave, roll: 0 }), { width: 500, end: 'front' });
    const free = inventedRig.ends.front.stop.freeBump.left;
    const length = ({ bottom, top }: ReturnType<typeof span>): number => top - bottom;
    const before = length(span(named(at(0), 'left.stop')));
    const after = length(span(named(at(free + 0.03), 'left.stop')));
    expect(before - after).toBeCloseTo(0.03, 12);
    const marks = (heave: number): number => at(heave).items.filter((item) => item.name === 'metal').length;
    expect(marks(inventedRig.ends.front.hardTravel.left - 0.001)).toBe(0);
    expect(marks(inventedRig.ends.front.hardTravel.left)).toBe(1); // the right one has 5 mm more
    expect(marks(inventedRig.ends.front.hardTravel.right)).toBe(2);
  });

  it('leaves a coil at its free length when droop goes further', () => {
    const long = (heave: number): number => {
      const item = named(
        rearScene(inventedRig, axlePose('front', { heave, roll: 0 }), { width: 500, end: 'front' }),
        'left.coil',
      );
      if (item.kind !== 'polyline') throw new Error('a coil is a line');
      return item.points[item.points.length - 1]! - item.points[1]!;
    };
    const { perch, seat, slack } = inventedRig.ends.front.coil;
    expect(long(-0.05)).toBeCloseTo(seat - perch + 0.05, 12);
    expect(long(-0.2)).toBeCloseTo(seat - perch + slack!, 12);
  });
});

describe('the shape of a real setup', () => {
  const setups = demo();

  it('agrees with the gaps that the core works out for any heave and roll, in every setup of the demo rig', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...setups),
        fc.constantFrom(...ENDS),
        fc.double({ min: -0.15, max: 0.15, noNaN: true }),
        fc.double({ min: -0.15, max: 0.15, noNaN: true }),
        ({ setup, travel }, end, heave, roll) => {
          const shape = rigShapeOf(setup, travel);
          const gaps = gapsAt(setup, end, { heave, roll });
          for (const side of SIDES) {
            const drawn = stopState(shape, axlePose(end, { heave, roll }), end, side);
            expect(drawn.travel).toBeCloseTo(gaps[side].travel, 12);
            expect(drawn.gap).toBeCloseTo(gaps[side].stopGap, 12);
            expect(drawn.crush * setup.ends[end].base.stopMount.ratio.value).toBeCloseTo(
              gaps[side].stopCrush,
              12,
            );
          }
        },
      ),
      { seed: SEED, numRuns: 100 },
    );
  });

  it('raises the frame by the lift of the setup and fills the room with solid pieces', () => {
    const shape = (id: string) => {
      const found = setups.find(({ setup }) => setup.id === id)!;
      return rigShapeOf(found.setup, found.travel).ends.front;
    };
    const before = shape('as-it-is');
    const after = shape('soft-stop-seat-down');
    expect(after.frame - before.frame).toBeCloseTo(0.0254, 9);
    expect(after.stop.spacer).toBeCloseTo(0.0254, 9);
    expect(after.coil.seat).toBeCloseTo(before.coil.seat, 9);
  });

  it('draws every pose of every setup without a number that is not one', () => {
    fc.assert(
      fc.property(fc.constantFrom(...setups), anyPose, ({ setup, travel }, pose) => {
        const shape = rigShapeOf(setup, travel);
        for (const scene of [
          sideScene(shape, pose, { width: 360 }),
          ...ENDS.map((end) => rearScene(shape, pose, { width: 360, end })),
        ]) {
          const svg = svgOf(scene, { title: 'rig', idPrefix: 'r', style: false });
          parseXml(svg);
          expect(svg).not.toMatch(/NaN|Infinity|undefined/);
        }
      }),
      { seed: SEED, numRuns: 40 },
    );
  });
});

describe('a pose out of a history', () => {
  it('reads the seven coordinates of the sample asked for', () => {
    const coordinates = Float64Array.of(...[0, 0, 0, 0, 0, 0, 0], ...[1, 2, 3, 4, 5, 6, 7]);
    expect(poseAt(coordinates, 1)).toEqual({
      body: { heave: 1, pitch: 2, roll: 3 },
      axles: { front: { heave: 4, roll: 5 }, rear: { heave: 6, roll: 7 } },
    });
  });
});
