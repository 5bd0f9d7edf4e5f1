import { describe, expect, it } from 'vitest';
import { linksRig } from '../../src/jobs/links.ts';
import type { KnockOnLine, LinksAnswer, LinksRequest } from '../../src/jobs/links-answer.ts';
import { sampledTravel } from '../../src/jobs/travel-columns.ts';
import { linksOf } from '../../src/linkage/from-setup.ts';
import { shaftOf } from '../../src/linkage/shaft-from-setup.ts';
import { shaftOver } from '../../src/linkage/shaft-travel.ts';
import { posesOn, sampleRange } from '../../src/linkage/travel-range.ts';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';
import { readRig } from '../../src/rigfile/index.ts';
import { drawsOf } from '../../src/stance/draws.ts';
import { changed, LINKED } from '../rigfile/linked-rig.ts';
import { must, storyText } from '../travel/stories/story.ts';

const DEGREES = 180 / Math.PI;
/** Enough to see which lines there are; half-widths have a test of their own. */
const FEW = { trials: 8 };

const asked = (text: string, request: LinksRequest): LinksAnswer =>
  must(linksRig(must(readRig(text)), { ...FEW, ...request }));
const lines = ({ knockOn, steady }: LinksAnswer): readonly KnockOnLine[] => [...knockOn, ...steady];
const line = (answer: LinksAnswer, id: string): KnockOnLine => {
  const one = lines(answer).find((each) => each.id === id);
  expect(
    one,
    `${id} among ${lines(answer)
      .map((each) => each.id)
      .join(', ')}`,
  ).toBeDefined();
  return one!;
};
const after = (answer: LinksAnswer, id: string): number => line(answer, id).after!.value;
const before = (answer: LinksAnswer, id: string): number => line(answer, id).before!.value;

/** Acceptance story S5. Its numbers: common practice, no source; the rig invented to fit. */
describe('S5: plus 40 mm at the rear, driveline', () => {
  const answer = asked(storyText('s5-plus-forty'), { setup: 'plus-forty', trials: 64 });

  it('joints go from 12.2 to 14.6 degrees at ride, and to 22.8 at full droop', () => {
    for (const joint of ['case', 'pinion']) {
      expect(Math.abs(before(answer, `joint-ride.rear.${joint}`) * DEGREES - 12.2)).toBeLessThan(0.1);
      expect(Math.abs(after(answer, `joint-ride.rear.${joint}`) * DEGREES - 14.6)).toBeLessThan(0.1);
      expect(Math.abs(after(answer, `joint-droop.rear.${joint}`) * DEGREES - 22.8)).toBeLessThan(0.2);
    }
  });

  it('the angle is already too much for 80 km/h before, and more so after', () => {
    const own = line(answer, 'joint-ride.rear.case');
    expect(answer.roadSpeed).toMatchObject({ from: 'course' });
    // The rule of the story: 7 to 9 degrees at 2250 rpm.
    expect(own.limit!.value * DEGREES).toBeGreaterThan(7);
    expect(own.limit!.value * DEGREES).toBeLessThan(9);
    expect(own.before!.value).toBeGreaterThan(own.limit!.value);
    expect(own.after!.value).toBeGreaterThan(own.before!.value);
    expect(own.used).toBeGreaterThan(1.5);
    expect(own.findings).toContain('shaft-angle-speed');
    expect(own.remedies.map(({ code }) => code)).toContain('double-joint');
  });

  it('the plunge of about 91 mm is more than the slip of 75: it fails, with a longer slip named', () => {
    const swing = line(answer, 'slip-swing.rear');
    expect(Math.abs(swing.after!.value - 0.091)).toBeLessThan(0.002);
    expect(swing).toMatchObject({ kept: 'over', limitOf: 'part' });
    const slip = swing.remedies.find(({ code }) => code === 'longer-slip');
    // At least 115: 91 and 25 that must stay engaged.
    expect(slip!.amount!.value).toBeGreaterThan(0.115);
    expect(slip!.amount!.value).toBeLessThan(0.122);
    expect(answer.findings[0]!.severity).toBe('over');
  });

  it('a spacer moves neither end of the travel, so what the shaft does there stays', () => {
    expect(answer.steady.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['slip-swing.rear', 'joint-droop.rear.case', 'joint-bump.rear.case']),
    );
  });

  it('the nearest to its limit stands first, what has none last', () => {
    const used = answer.knockOn.map((each) => each.used);
    const known = used.filter((each) => each !== null);
    expect(known).toEqual([...known].sort((a, b) => b - a));
    expect(used.slice(known.length).every((each) => each === null)).toBe(true);
    expect(answer.knockOn[0]!.of).toBe('joint-ride');
  });

  it('cured: double joint, longer slip, pinion turned to a degree or two below the shaft', () => {
    // With the pinion its joint goes up too, so less turn is needed than on a shaft that stays where it is.
    const text = changed(storyText('s5-plus-forty'), ['longer: 50 mm', 'longer: 38 mm']);
    const cured = asked(text, { setup: 'cured' });
    expect(cured.findings.filter(({ severity }) => severity === 'over')).toEqual([]);
    expect(cured.findings.map(({ code }) => code)).not.toContain('shaft-pinion-aim');
    expect(line(cured, 'slip-swing.rear').kept).toBe('fine');
    expect(line(cured, 'shaft-speed.rear').kept).toBe('fine');
    expect(after(cured, 'joint-droop.rear.case') * DEGREES).toBeLessThan(25);
  });

  it('at 30 km/h the angle is tolerable, the slip still fails', () => {
    const slow = asked(storyText('s5-plus-forty'), { setup: 'plus-forty', roadSpeed: 30 / 3.6 });
    expect(line(slow, 'joint-ride.rear.case').kept).toBe('fine');
    expect(slow.findings.map(({ code }) => code)).not.toContain('shaft-angle-speed');
    expect(line(slow, 'slip-swing.rear').kept).toBe('over');
  });
});

/** Acceptance story S7, with the ends of its hose in space. */
describe('S7: strap and hose', () => {
  const fitted = asked(storyText('s7-hose-in-space'), { setup: 'as-measured' });
  const shorter = asked(storyText('s7-hose-in-space'), { setup: 'shorter' });

  it('the stretched strap lets the shock open 12 mm too far: it fails, and a shorter one is named', () => {
    const own = line(fitted, 'shock-left-droop.front');
    expect(own.after!.value).toBeCloseTo(0.712 - 0.724, 9);
    expect(own).toMatchObject({ kept: 'over', limitOf: 'owner' });
    expect(own.findings).toContain('droop-shock-is-the-limit');
    expect(own.remedies.map(({ code }) => code)).toContain('shorten-strap');
  });

  it('the hose has 25 mm of slack at stretched droop and full lock: the least that is usual', () => {
    for (const side of ['left', 'right']) {
      const own = line(fitted, `hose-slack.front.${side}`);
      expect(Math.abs(own.after!.value - 0.025)).toBeLessThan(0.003);
      expect(own.findings).toContain('line-slack-minimum');
      expect(own.remedies.map(({ code }) => code)).toContain('inspect-hose');
    }
  });

  it('a strap of 376 mm leaves 14 mm, loses 24 to 26 of droop and eases the hose', () => {
    expect(after(shorter, 'shock-left-droop.front')).toBeCloseTo(0.014, 3);
    expect(line(shorter, 'shock-left-droop.front').kept).toBe('fine');
    const lost = -line(shorter, 'droop.front').change!.value;
    expect(lost).toBeGreaterThan(0.024);
    expect(lost).toBeLessThan(0.0265);
    expect(after(shorter, 'hose-slack.front.left')).toBeGreaterThan(after(fitted, 'hose-slack.front.left'));
  });

  it('a longer strap lets the hose hang tighter', () => {
    const longer = asked(storyText('s7-hose-in-space'), { setup: 'longer' });
    expect(line(longer, 'hose-slack.front.left').change!.value).toBeLessThan(-0.005);
  });
});

describe('a setup that changes nothing', () => {
  const text = changed(storyText('s5-plus-forty'), [
    '  rear-alone:',
    '  same: { notes: nothing }\n  rear-alone:',
  ]);

  it('has an empty list against the rig as measured, and every line stays', () => {
    const same = asked(text, { setup: 'same' });
    expect(same.knockOn).toEqual([]);
    expect(same.against).toBe('as-measured');
    const changes = same.steady.map(({ change }) => change?.value ?? 0);
    expect(Math.max(...changes.map(Math.abs))).toBeLessThan(1e-9);
    expect(same.steady.length).toBeGreaterThan(20);
  });

  it('beside itself is looked at alone, with the same lines', () => {
    const alone = asked(text, { setup: 'plus-forty', against: 'plus-forty' });
    const beside = asked(text, { setup: 'plus-forty' });
    expect(alone.knockOn).toEqual([]);
    const afters = (answer: LinksAnswer) =>
      Object.fromEntries(lines(answer).map(({ id, after }) => [id, after]));
    expect(afters(alone)).toEqual(afters(beside));
  });

  it('turned round, before and after change places', () => {
    const there = asked(text, { setup: 'plus-forty' });
    const back = asked(text, { setup: 'as-measured', against: 'plus-forty' });
    for (const one of there.knockOn) {
      const other = line(back, one.id);
      expect(other.before?.value).toBe(one.after?.value);
      expect(other.after?.value).toBe(one.before?.value);
      if (one.change) expect(other.change!.value).toBeCloseTo(-one.change.value, 12);
    }
  });
});

describe('a rig seen in a mirror', () => {
  // Only the Panhard of the story is not alike on both sides.
  const there = storyText('s5-plus-forty');
  const mirrored = there
    .replace('axle: { behind: 100 mm ± 1, right: 500', 'axle: { behind: 100 mm ± 1, LEFT: 500')
    .replace('frame: { behind: 100 mm ± 1, left: 500', 'frame: { behind: 100 mm ± 1, right: 500')
    .replace('LEFT', 'left');

  it('moves the axle to the other side, and has the same list else', () => {
    const [one, other] = [there, mirrored].map((text) => asked(text, { setup: 'plus-forty' }));
    expect(mirrored).not.toBe(there);
    const turned = new Set(['axle-sideways.rear', 'axle-steer.rear']);
    expect(Math.abs(after(one!, 'axle-sideways.rear'))).toBeGreaterThan(1e-4);
    for (const each of lines(one!)) {
      const seen = line(other!, each.id);
      const sign = turned.has(each.id) ? -1 : 1;
      expect(seen.after!.value, each.id).toBeCloseTo(sign * each.after!.value, 6);
    }
  });
});

describe('everything that can be measured at a front axle', () => {
  const text = `${LINKED}setups:\n  up: { front: { springSpacer: 1 1/2 in }, rear: { springSpacer: 1 1/2 in } }\n`;
  const answer = asked(text, { setup: 'up' });

  it('has a line', () => {
    const ids = new Set(lines(answer).map(({ of, place }) => `${of}.${place}`));
    for (const id of [
      'height',
      'free-bump',
      'travel-spare',
      'pinion-angle',
      'joint-ride',
      'joint-bump',
      'joint-droop',
      'slip-swing',
      'shaft-length',
      'hose-slack',
      'caster',
      'bump-steer',
      'panhard-slope',
      'drag-link-slope',
      'axle-sideways',
      'roll-steer',
      'roll-centre',
      'anti',
      'spring-ratio',
      'shock-ratio',
      'stop-ratio',
      'shock-lean',
      'stop-off-pad',
    ])
      expect(ids, id).toContain(`${id}.front`);
    for (const id of ['cg-height', 'static-stability-factor', 'roll-stiffness'])
      expect(ids).toContain(`${id}.rig`);
  });

  it('caster goes with the pinion, degree for degree', () => {
    const caster = line(answer, 'caster.front').change!.value;
    const pinion = line(answer, 'pinion-angle.front').change!.value;
    expect(Math.abs(caster)).toBeGreaterThan(1e-3);
    expect(pinion).toBeCloseTo(-caster, 3);
  });

  it('the rear, whose links nobody measured, has what tape and scales tell, and says what is missing', () => {
    const rear = lines(answer)
      .filter(({ place }) => place === 'rear')
      .map(({ of }) => of);
    expect(rear).toEqual(expect.arrayContaining(['height', 'free-bump', 'travel-spare']));
    expect(rear).not.toContain('roll-centre');
    expect(answer.ends.rear).toBeNull();
    expect(answer.missing).toContainEqual({ end: 'rear', what: 'links' });
    expect(answer.missing).not.toContainEqual({ end: 'front', what: 'links' });
  });

  it('is plain data', () => {
    expect(structuredClone(answer)).toEqual(answer);
  });

  it('comes out the same for the same seed', () => {
    expect(asked(text, { setup: 'up' })).toEqual(answer);
  });
});

describe('trials', () => {
  it('look up shaft and hoses where they are at their furthest as readings have them', () => {
    const rig = must(readRig(storyText('s5-plus-forty')));
    const setup = must(resolveSetup(rig, 'plus-forty'));
    const draws = drawsOf(rig, FEW);
    const answer = must(linksRig(rig, { setup: 'plus-forty', ...FEW }));
    const swing = line(answer, 'slip-swing.rear').after!;
    // Anew in each trial, with all places searched, instead of at those of the nominal rig.
    const travel = { front: sampledTravel(setup, 'front', draws), rear: sampledTravel(setup, 'rear', draws) };
    const anew = Array.from({ length: 9 }, (_, i) => {
      const read = draws.trial(i);
      const links = must(
        linksOf(setup, { lift: { front: travel.front.height[i]!, rear: travel.rear.height[i]! }, read }),
      );
      const { geometry } = links.ends.rear!;
      const shaft = shaftOf(setup, 'rear', links, read)!;
      const range = { bump: travel.rear.bump[i]!, droop: travel.rear.droop[i]!, lock: 0 };
      return shaftOver(shaft, geometry, sampleRange(geometry, range, posesOn(geometry), { across: 3 }))!
        .swing;
    });
    expect(swing.value).toBeCloseTo(anew[0]!, 5);
    const spread = Math.max(...anew) - Math.min(...anew);
    expect(spread).toBeGreaterThan(1e-3);
    const moved = asked(storyText('s5-plus-forty'), { setup: 'plus-forty' });
    expect(line(moved, 'slip-swing.rear').after!.tolerance).toBeGreaterThan(spread / 4);
    expect(line(moved, 'slip-swing.rear').after!.tolerance).toBeLessThan(spread);
  });
});

describe('what cannot be', () => {
  it('a setup that nobody named, and one against it', () => {
    const rig = must(readRig(storyText('s5-plus-forty')));
    expect(linksRig(rig, { setup: 'nowhere' })).toMatchObject({
      ok: false,
      problems: [{ code: 'ask-unknown-setup' }],
    });
    expect(linksRig(rig, { setup: 'plus-forty', against: 'nowhere' })).toMatchObject({
      ok: false,
      problems: [{ code: 'ask-unknown-setup' }],
    });
  });

  it('a lift that the links do not reach: they are named with the gap', () => {
    const text = changed(storyText('s5-plus-forty'), [
      'rear: { springSpacer: 40 mm',
      'rear: { springSpacer: 1100 mm',
    ]);
    const found = linksRig(must(readRig(text)), { setup: 'plus-forty', ...FEW });
    expect(found).toMatchObject({ ok: false, problems: [{ code: 'links-out-of-reach' }] });
  });

  it('links that leave the axle loose', () => {
    const text = changed(
      storyText('s5-plus-forty'),
      ['aboveFloor: 700', 'aboveFloor: 480'],
      ['aboveFloor: 540', 'aboveFloor: 320'],
    );
    const found = linksRig(must(readRig(text)), { setup: 'plus-forty', ...FEW });
    expect(found).toMatchObject({
      ok: false,
      problems: [{ code: 'links-axle-loose', where: { key: 'rear.links' } }],
    });
  });
});
