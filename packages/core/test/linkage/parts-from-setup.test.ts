import { describe, expect, it } from 'vitest';
import type { End } from '../../src/finding/place.ts';
import { linksOf } from '../../src/linkage/from-setup.ts';
import { dragLinkOf, hosesOf } from '../../src/linkage/lines-from-setup.ts';
import { reachOf } from '../../src/linkage/reach.ts';
import { shaftIn } from '../../src/linkage/shaft.ts';
import { shaftOf } from '../../src/linkage/shaft-from-setup.ts';
import { shaftOver } from '../../src/linkage/shaft-travel.ts';
import { posesOn, sampleRange } from '../../src/linkage/travel-range.ts';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';
import { readRig } from '../../src/rigfile/index.ts';
import { NOMINAL_DRAWS } from '../../src/stance/draws.ts';
import { movesOf } from '../../src/stance/moves.ts';
import { changed, LINKED } from '../rigfile/linked-rig.ts';
import { must, storyText } from '../travel/stories/story.ts';

const INCH = 0.0254;
const DEGREES = 180 / Math.PI;
const STILL = { shift: [0, 0, 0], rotation: [1, 0, 0, 0, 1, 0, 0, 0, 1], residual: 0 } as const;

function at(text: string, name: string, end: End) {
  const setup = must(resolveSetup(must(readRig(text)), name));
  const height = (of: End) => movesOf(setup, of, NOMINAL_DRAWS).height[0] ?? 0;
  const links = must(linksOf(setup, { lift: { front: height('front'), rear: height('rear') } }));
  const here = links.ends[end];
  if (!here) throw new Error(`no links at the ${end}`);
  return { setup, links, geometry: here.geometry };
}

describe('S5 with the shaft itself', () => {
  const text = storyText('s5-plus-forty');
  const shaftAt = (name: string) => {
    const { setup, links, geometry } = at(text, name, 'rear');
    const shaft = shaftOf(setup, 'rear', links);
    if (!shaft) throw new Error('the story has a shaft');
    const sampled = sampleRange(geometry, { bump: 0.115, droop: 0.14, lock: 0 }, posesOn(geometry), {
      across: 3,
    });
    return { shaft, state: shaftIn(shaft, geometry, STILL), travel: shaftOver(shaft, geometry, sampled) };
  };

  it('parallel joints stand at 12.2 degrees, and at 14.6 after the lift, both alike', () => {
    for (const [name, angle] of [
      ['as-measured', 12.2],
      ['plus-forty', 14.6],
    ] as const) {
      const { state } = shaftAt(name);
      expect(Math.abs(DEGREES * state.caseAngle - angle)).toBeLessThan(0.15);
      expect(state.pinionAngle).toBeCloseTo(state.caseAngle, 9);
    }
  });

  it('the slip that is left to go in grows by what the shaft has become longer', () => {
    const before = shaftAt('as-measured');
    const after = shaftAt('plus-forty');
    const grown = after.state.length - before.state.length;
    expect(grown).toBeGreaterThan(0.009);
    expect((after.shaft.slip?.inAtRide ?? 0) - 0.037).toBeCloseTo(grown, 9);
  });

  it('swings by about 91 mm where 75 are there', () => {
    const { travel, shaft } = shaftAt('plus-forty');
    expect(shaft.slip?.usable).toBe(0.075);
    // One wheel up and the other down is in it too, and adds little on parallel links.
    expect(Math.abs((travel?.swing ?? 0) - 0.091)).toBeLessThan(0.004);
  });

  it('cured: double joint at the case, pinion one to two and a half degrees below the shaft line', () => {
    const { shaft, state } = shaftAt('cured');
    expect(shaft.caseJoint.kind).toBe('double');
    const low = DEGREES * state.pinionAngle;
    expect(low).toBeGreaterThan(1);
    expect(low).toBeLessThan(2.5);
  });
});

describe('pinion and case in front', () => {
  it('look at each other: a nose up by the slope of the shaft leaves no angle at the pinion', () => {
    // 34 in back and 25 − 17.93 in up: the shaft rises by its slope; tube height is the assumed radius.
    const text = changed(LINKED, ['pinionAngle: 6 deg', 'pinionAngle: 0 deg']);
    const flat = at(text, 'as-measured', 'front');
    const shaft = shaftOf(flat.setup, 'front', flat.links);
    if (!shaft) throw new Error('no shaft');
    const { shaftSlope } = shaftIn(shaft, flat.geometry, STILL);
    const aimed = at(
      changed(
        LINKED,
        ['pinionAngle: 6 deg', `pinionAngle: ${DEGREES * shaftSlope} deg`],
        ['left: 2 in', 'left: 4 in'],
      ),
      'as-measured',
      'front',
    );
    const aimedShaft = shaftOf(aimed.setup, 'front', aimed.links);
    expect(shaftSlope).toBeGreaterThan(0);
    expect(aimedShaft && DEGREES * shaftIn(aimedShaft, aimed.geometry, STILL).pinionAngle).toBeLessThan(0.05);
  });
});

describe('hoses and drag link', () => {
  it('steer about kingpins that lean back by caster and in by inclination', () => {
    const { setup, links } = at(LINKED, 'as-measured', 'front');
    const [left, right] = hosesOf(setup, 'front', links);
    expect(left?.tieTo).toBe('lower-left');
    expect(left?.line.kingpin?.point[1]).toBeCloseTo(27 * INCH, 9);
    const axis = left?.line.kingpin?.axis ?? [0, 0, 0];
    expect(Math.atan2(-axis[0], axis[2]) * DEGREES).toBeCloseTo(6, 9);
    expect(right?.line.axle[1]).toBeCloseTo(-25 * INCH, 9);
    expect(right?.freeLength).toBeCloseTo(26 * INCH, 9);
  });

  it('a drag link whose ball is ahead of its kingpin has its lever ahead', () => {
    const { setup, links } = at(LINKED, 'as-measured', 'front');
    expect(dragLinkOf(setup, 'front', links)?.arm).toBeCloseTo(6 * INCH, 9);
    const behind = changed(LINKED, [
      'axle: { ahead: 6 in, right: 24 in',
      'axle: { behind: 6 in, right: 24 in',
    ]);
    const other = at(behind, 'as-measured', 'front');
    expect(dragLinkOf(other.setup, 'front', other.links)?.arm).toBeCloseTo(-6 * INCH, 9);
  });

  it('S7: with its ends in space the hose has 535 mm at stretched droop and full lock', () => {
    const text = storyText('s7-hose-in-space');
    const { setup, links, geometry } = at(text, 'as-measured', 'front');
    const [hose] = hosesOf(setup, 'front', links);
    if (!hose) throw new Error('the story has a hose');
    const lock = setup.ends.front.base.points.steering?.lock?.value ?? 0;
    const sampled = sampleRange(geometry, { bump: 0.09, droop: 0.164, lock }, posesOn(geometry));
    const reach = reachOf(hose.line, geometry, sampled);
    expect(Math.abs((reach?.longest.value ?? 0) - 0.535)).toBeLessThan(0.003);
    expect(reach?.longest.place).toMatchObject({ left: -0.164 });
    expect(hose.freeLength - (reach?.longest.value ?? 0)).toBeCloseTo(0.025, 2);
  });
});
