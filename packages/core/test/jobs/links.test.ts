import { describe, expect, it } from 'vitest';
import { linksRig } from '../../src/jobs/links.ts';
import type { LinksAnswer } from '../../src/jobs/links-answer.ts';
import { sampledTravel } from '../../src/jobs/travel-columns.ts';
import { curvesOf } from '../../src/linkage/curves.ts';
import { linksOf } from '../../src/linkage/from-setup.ts';
import { shaftOf } from '../../src/linkage/shaft-from-setup.ts';
import { shaftOver } from '../../src/linkage/shaft-travel.ts';
import { posesOn, sampleRange } from '../../src/linkage/travel-range.ts';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';
import { readRig } from '../../src/rigfile/index.ts';
import { drawsOf } from '../../src/stance/draws.ts';
import { findingText } from '../../src/words/findings.ts';
import { changed, LINKED } from '../rigfile/linked-rig.ts';
import { must, storyText } from '../travel/stories/story.ts';
import { after, asked, before, FEW, line, lines } from './asked-links.ts';

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

describe('lifted level, on links that were measured in front', () => {
  const text = `${LINKED}setups:\n  up: { front: { springSpacer: 1 1/2 in }, rear: { springSpacer: 1 1/2 in } }\n`;
  const answer = asked(text, { setup: 'up' });
  const drawn = answer.endsBefore.front!;
  const lift = after(answer, 'height.front');
  const curves = curvesOf(drawn.geometry, {
    bumps: [-lift, 0],
    rolls: [0],
    end: 'front',
    ...(drawn.dragLink && { dragLink: drawn.dragLink }),
  });
  // The body goes up and turns with the axle that swings to and fro: as little as this, and with it all that is against level.
  const turned = answer.pitch.after - answer.pitch.before;

  it('goes where the curves of the rig as measured say for so much droop', () => {
    expect(lift).toBeGreaterThan(0.035);
    expect(Math.abs(turned)).toBeLessThan(1e-3);
    expect(line(answer, 'pinion-angle.front').change!.value).toBeCloseTo(curves.pinion[0]! - turned, 4);
    expect(after(answer, 'axle-sideways.front')).toBeCloseTo(curves.sideways[0]!, 5);
    expect(after(answer, 'axle-forward.front')).toBeCloseTo(curves.forward[0]!, 5);
    expect(after(answer, 'axle-steer.front')).toBeCloseTo(curves.steer[0]!, 5);
    expect(after(answer, 'roll-centre.front')).toBeCloseTo(curves.rollCentreHeight[0]!, 4);
    const { 'shock-left': left, 'shock-right': right } = curves.struts;
    const ratio = (left!.byBump[0]! + right!.byBump[0]!) / 2;
    expect(after(answer, 'shock-ratio.front')).toBeCloseTo(ratio, 4);
  });

  it('the shock is as much longer as its points have come apart', () => {
    const { 'shock-left': shock } = curves.struts;
    const grown = shock!.length[0]! - shock!.length[1]!;
    expect(grown).toBeGreaterThan(0.03);
    const own = answer.ends.front!.geometry.struts['shock-left']!;
    const apart = Math.hypot(...own.axle.map((part, k) => part - own.body[k]!));
    expect(apart - shock!.length[1]!).toBeCloseTo(grown, 4);
  });
});

describe('findings of the links themselves', () => {
  it('a bar too short for the travel: which, how far it goes, and that something breaks', () => {
    const short = changed(storyText('s5-plus-forty'), [
      'frame: { behind: 100 mm ± 1, left: 500',
      'frame: { behind: 100 mm ± 1, right: 380',
    ]);
    const answer = asked(short, { setup: 'plus-forty' });
    const finding = answer.findings.find(({ code }) => code === 'links-range-ends')!;
    expect(finding).toMatchObject({ severity: 'over', place: 'rear' });
    expect(finding.facts.links).toContain('panhard');
    expect(findingText(finding, { system: 'metric' })).toMatch(/panhard would have to give \d+/);
    // What cannot be reached is not known, and never a number.
    const unknown = line(answer, 'sideways-swing.rear');
    expect(unknown.after).toBeNull();
  });

  it('a pad that the tip misses', () => {
    const fits = asked(LINKED, { setup: 'as-measured' });
    expect(fits.findings.map(({ code }) => code)).not.toContain('links-stop-off-pad');
    const moved = changed(LINKED, [
      'frame: { ahead: 1 in, spread: 36 in, aboveTube: 5 in }',
      'frame: { ahead: 4 in, spread: 36 in, aboveTube: 5 in }',
    ]);
    const off = asked(moved, { setup: 'as-measured' });
    const finding = off.findings.find(({ code }) => code === 'links-stop-off-pad')!;
    expect(finding.severity).toBe('over');
    expect(line(off, 'stop-off-pad.front')).toMatchObject({
      kept: 'over',
      remedies: [{ code: 'larger-pad' }],
    });
  });
});

describe('every kind of links', () => {
  const story = storyText('s5-plus-forty').replace(/ +links: \{ upper: \{ longer.*\n/, '');
  const kinds: Readonly<Record<string, string>> = {
    triangulated: story
      .replace('kind: four-link', 'kind: triangulated')
      .replace('ahead: 0 mm ± 1, spread: 600 mm', 'ahead: 0 mm ± 1, spread: 160 mm')
      .replace(/ {4}panhard:\n.*\n.*\n/, ''),
    'three-link': story
      .replace('kind: four-link', 'kind: three-link')
      .replaceAll('spread: 600 mm ± 1', 'left: 100 mm ± 1'),
    'radius-arms': story
      .replace('kind: four-link', 'kind: radius-arms')
      .replace('lower:', 'arm:')
      .replace(/ {4}upper:\n.*\n.*\n/, ''),
    leaf: story.replace(/links:\n( {4}.*\n)+/, 'links: { kind: leaf }\n'),
  };

  it.each(Object.keys(kinds))('%s has its list', (kind) => {
    const answer = asked(kinds[kind]!, { setup: 'plus-forty' });
    expect(answer.ends.rear!.geometry.kind).toBe(kind);
    expect(answer.knockOn.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['height.rear', 'joint-ride.rear.case', 'shaft-length.rear']),
    );
    for (const each of lines(answer))
      for (const figure of [each.before, each.after, each.change, each.room])
        if (figure) expect(Number.isFinite(figure.value), each.id).toBe(true);
  });
});

describe('a hose whose ends were measured, and that was taped at droop as well', () => {
  it('has both lines, and a longer strap takes from both', () => {
    const text = storyText('s7-hose-in-space').replace(
      '    freeLength: 560 mm ± 1',
      '    freeLength: 560 mm ± 1\n    distanceAtDroop: 535 mm ± 1',
    );
    const answer = asked(text, { setup: 'longer' });
    expect(before(answer, 'hose-slack.front.taped')).toBeCloseTo(0.025, 9);
    for (const part of ['taped', 'left', 'right'])
      expect(line(answer, `hose-slack.front.${part}`).change!.value).toBeLessThan(-0.005);
    expect(line(answer, 'hose-slack.front.taped').findings).not.toContain('line-slack-minimum');
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
