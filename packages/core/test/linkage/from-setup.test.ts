import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linkProblemsOf, linksOf, type RigLinks } from '../../src/linkage/from-setup.ts';
import type { Link, Vector } from '../../src/linkage/geometry.ts';
import { placed } from '../../src/linkage/rigid-motion.ts';
import { nominal } from '../../src/rig/reading.ts';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';
import { frontWith, RAIL, THREE_LINK } from '../rigfile/linked-rig.ts';
import { must, rigOf, SMALLEST } from '../rigfile/smallest-rig.ts';

const INCH = 0.0254;
const LEVEL = { front: 0, rear: 0 };
/** A parallel four-link, its frame ends 5 in above its axle ends and 36 in behind: all four alike. */
const PARALLEL = `  links:
    kind: four-link
    lower:
      axle: { ahead: 0 in, spread: 36 in, aboveFloor: 14 in }
      frame: { behind: 36 in, spread: 36 in, aboveFloor: 19 in }
    upper:
      axle: { ahead: 0 in, spread: 24 in, aboveFloor: 23 in }
      frame: { behind: 36 in, spread: 24 in, aboveFloor: 28 in }
    panhard:
      axle: { ahead: 4 in, right: 20 in, aboveFloor: 21 in }
      frame: { ahead: 4 in, left: 20 in, aboveFloor: 21 in }
`;
const TYRE = '  tyre: { radius: 17 in }\n';

function links(text: string, lift = LEVEL, setup = 'as-measured'): RigLinks {
  return must(linksOf(must(resolveSetup(rigOf(text), setup)), { lift }));
}
const length = ({ axle, body }: Pick<Link, 'axle' | 'body'>) =>
  Math.hypot(axle[0] - body[0], axle[1] - body[1], axle[2] - body[2]);
const inches = (v: Vector) => v.map((metres) => Math.round((metres / INCH) * 1e6) / 1e6);
function frontOf(rig: RigLinks) {
  if (!rig.ends.front) throw new Error('no links in front');
  return rig.ends.front.geometry;
}
function linkOf(rig: RigLinks, id: string): Link {
  const link = frontOf(rig).links.find((each) => each.id === id);
  if (!link) throw new Error(`no ${id}`);
  return link;
}

describe('links at the ride height at which they were measured', () => {
  const text = frontWith(`${RAIL}${THREE_LINK}${TYRE}`);

  it('stand where they were taped: x from the front hub line, y left, z up', () => {
    const rig = links(text);
    expect(rig.pitch).toBe(0);
    expect(inches(linkOf(rig, 'lower-left').axle)).toEqual([-2, 19, 14.5]);
    expect(inches(linkOf(rig, 'lower-right').body)).toEqual([-36, -15.5, 21]);
    expect(inches(linkOf(rig, 'panhard').body)).toEqual([4, 17, 22]);
    expect(inches(frontOf(rig).centre)).toEqual([0, 0, 17]);
    expect(rig.ends.rear).toBeNull();
  });

  it('those of a rear axle stand a wheelbase further back', () => {
    const [before, after] = SMALLEST.split('rear:\n');
    const rear = PARALLEL.replaceAll('behind: 36', 'ahead: 36').replaceAll('ahead: 4 in', 'behind: 4 in');
    const geometry = links(`${before}rear:\n${TYRE}${rear}${after}`).ends.rear?.geometry;
    expect(geometry && inches(geometry.centre)).toEqual([-100, 0, 17]);
    expect(geometry && inches(geometry.links[0]?.body ?? [0, 0, 0])).toEqual([-64, 18, 19]);
  });
});

describe('links of a lifted body', () => {
  const text = frontWith(PARALLEL + TYRE);

  it('parallel ones swing on their arc and do not turn the axle', () => {
    for (const lift of [0.5, 2, 4]) {
      const rig = links(text, { front: lift * INCH, rear: lift * INCH });
      // Closed form: every point of the axle goes by the same (shift, bar, −lift). The bar, level and across, keeps its
      // 40 in; all four links keep theirs, alike: two equations, solved one after the other.
      let [run, bar] = [36, 0];
      for (let step = 0; step < 60; step += 1) {
        bar = Math.sqrt(40 ** 2 - lift ** 2 - (run - 36) ** 2) - 40;
        run = Math.sqrt(36 ** 2 + 5 ** 2 - (5 + lift) ** 2 - bar ** 2);
      }
      const { axle, body } = linkOf(rig, 'lower-left');
      expect((axle[0] - body[0]) / INCH).toBeCloseTo(run, 9);
      expect((body[2] - axle[2]) / INCH).toBeCloseTo(5 + lift, 9);
      expect(rig.ends.front?.axle.rotation.map((x) => Math.round(x * 1e9) / 1e9 + 0)).toEqual([
        1, 0, 0, 0, 1, 0, 0, 0, 1,
      ]);
      expect(frontOf(rig).centre[0]).toBeCloseTo(0, 12);
      expect(frontOf(rig).centre[2]).toBeCloseTo(17 * INCH, 12);
    }
  });

  it('keep their lengths, and axle and body their shapes, at any lift of either end', () => {
    const three = frontWith(`${RAIL}${THREE_LINK}${TYRE}`);
    const before = links(three);
    const lift = fc.double({ min: -0.08, max: 0.12, noNaN: true });
    fc.assert(
      fc.property(lift, lift, (front, rear) => {
        const after = links(three, { front, rear });
        for (const [i, link] of frontOf(after).links.entries()) {
          const was = frontOf(before).links[i];
          expect(length(link)).toBeCloseTo(was ? length(was) : 0, 9);
        }
        const span = (rig: RigLinks, a: string, b: string, end: 'axle' | 'body') =>
          length({ axle: linkOf(rig, a)[end], body: linkOf(rig, b)[end] });
        for (const end of ['axle', 'body'] as const)
          expect(span(after, 'upper', 'panhard', end)).toBeCloseTo(span(before, 'upper', 'panhard', end), 9);
        expect(frontOf(after).centre[2]).toBeCloseTo(17 * INCH, 9);
      }),
      { seed: 11, numRuns: 60 },
    );
  });

  it('a rear that is lifted alone puts the nose down by lift over wheelbase, and moves front frame ends with it', () => {
    const alike = text.replace('rear:\n', `rear:\n${TYRE}`);
    const rig = links(alike, { front: 0, rear: 2 * INCH });
    // Closed form: hub lines 100 in apart, the rear one 2 in further down in the body.
    expect(rig.pitch).toBeCloseTo(Math.atan(2 / 100), 12);
    const overRear = placed(rig.body, [-100 * INCH, 0, 15 * INCH]);
    expect(overRear[2] / INCH).toBeCloseTo(17, 9);
    // 36 in behind the front axle the frame rises by 36 % of it, less what its height turns forward.
    const { body } = linkOf(rig, 'lower-left');
    expect(body[2] / INCH).toBeCloseTo(17 + 36 * Math.sin(rig.pitch) + 2 * Math.cos(rig.pitch), 9);
  });

  it('that the links do not reach is refused with their names and the gap', () => {
    const setup = must(resolveSetup(rigOf(text), 'as-measured'));
    const read = linksOf(setup, { lift: { front: 40 * INCH, rear: 0 }, read: nominal });
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.problems[0]).toMatchObject({
      code: 'links-out-of-reach',
      where: { key: 'setups.as-measured.front' },
    });
    expect(read.problems[0]?.found).toMatch(/front\.links\.\S+.* \d+ mm off; they go to \d+ mm of droop/);
  });
});

describe('links that a setup changes', () => {
  const setups = `setups:
  adjusted: { front: { links: { upper: { longer: 1/2 in } } } }
  raised: { front: { links: { lower: { frame: { up: 1 in, out: 1/2 in } } } } }
`;
  const three = `${frontWith(`${RAIL}${THREE_LINK}${TYRE}`)}${setups}`;

  it('an upper link made longer turns the axle and is longer by just that', () => {
    const before = links(three);
    const after = links(three, LEVEL, 'adjusted');
    expect(length(linkOf(after, 'upper')) - length(linkOf(before, 'upper'))).toBeCloseTo(INCH / 2, 9);
    expect(length(linkOf(after, 'lower-left'))).toBeCloseTo(length(linkOf(before, 'lower-left')), 9);
    // About half an inch over the 8.5 in between the joints: its top goes forward.
    const [a, , , , , , c] = after.ends.front?.axle.rotation ?? [];
    expect(Math.atan2(-(c ?? 0), a ?? 1)).toBeGreaterThan(0.04);
    expect(Math.atan2(-(c ?? 0), a ?? 1)).toBeLessThan(0.08);
  });

  it('a mount that is moved takes its joint along, and the link keeps its length', () => {
    const before = links(three);
    const after = links(three, LEVEL, 'raised');
    for (const id of ['lower-left', 'lower-right', 'upper', 'panhard'])
      expect(length(linkOf(after, id)), id).toBeCloseTo(length(linkOf(before, id)), 9);
    const [, y, z] = linkOf(after, 'lower-right').body;
    expect([y / INCH, z / INCH]).toEqual([expect.closeTo(-16, 6), expect.closeTo(22, 2)]);
  });

  it('beyond sense are told, though those that were measured are sound; and these stay sound', () => {
    const crossed = three.replace('out: 1/2 in', 'out: -20 in');
    const rig = rigOf(crossed);
    const problems = (setup: string) =>
      linkProblemsOf(must(resolveSetup(rig, setup))).map(({ code, where }) => `${code} ${where.key}`);
    for (let again = 0; again < 2; again += 1) {
      expect(problems('as-measured')).toEqual([]);
      expect(problems('raised')).toEqual([
        'links-wrong-side front.links.lower-left.frame',
        'links-wrong-side front.links.lower-right.frame',
      ]);
    }
  });
});
