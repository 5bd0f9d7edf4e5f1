import { describe, expect, test } from 'vitest';
import { setupNames } from '../../../src/rig/setup-resolve.ts';
import { readRig } from '../../../src/rigfile/index.ts';
import { findingText } from '../../../src/words/findings.ts';
import { remedyText } from '../../../src/words/remedies.ts';
import { amount, check, codes, found, mm, must, problemsOf, storyText } from './story.ts';

/**
 * The acceptance stories of the trade, on rig files as an owner writes them. Numbers invented; what a practitioner
 * answers, and by how much, was written down before the program (common practice, no source). Millimetres.
 */

describe('S1: how much lift?', () => {
  const STORY = 's1-how-much-lift';
  const text = storyText(STORY);

  test('as built it fails by 32, and 37 of lift or a gap of 63 is the answer', () => {
    const result = check(text);
    const fail = found(result, 'travel-fail');
    expect(mm(fail.value)).toBeCloseTo(-32, 9);
    expect(amount(fail, 'lift-with-spacer')).toBeCloseTo(37, 3);
    expect(amount(fail, 'set-gap')).toBeCloseTo(63, 3);
    expect(mm(found(result, 'stop-after-metal').value)).toBeCloseTo(-10, 9);
    const said = fail.remedies.map((remedy) => remedyText(remedy, { system: 'metric' })).join('\n');
    expect(said).toContain('Lift by 37 mm or more');
    expect(said).toContain('gap of 63 mm or less');
  });

  test('63 without lift passes, and so does 37 of lift with the stop set at 100', () => {
    for (const setup of ['closer', 'lifted-and-set'])
      expect(check(text, setup).travel.corners.frontLeft.verdict, setup).toBe('pass');
  });

  test('(a) with 150 of hard travel it passes as it is', () => {
    const { frontLeft } = check(storyText(STORY, { 'front.contacts.sump.gap': '150 mm ± 5' })).travel.corners;
    expect(mm(frontLeft.spare)).toBeCloseTo(8, 9);
    expect(frontLeft.verdict).toBe('pass');
  });

  test('(b) with 145 it is not proven: 2 of lift, or measure better', () => {
    const result = check(storyText(STORY, { 'front.contacts.sump.gap': '145 mm ± 5' }));
    const open = found(result, 'travel-not-proven');
    expect(mm(open.value)).toBeCloseTo(3, 9);
    expect(amount(open, 'lift-with-spacer')).toBeCloseTo(2, 3);
    const again = open.remedies.find(({ code }) => code === 'measure-again');
    expect(again?.target).toBe('front.contacts.sump.gap');
    // Known to ± 3, the spare of 3 would be proven.
    expect(mm(again?.amount)).toBeCloseTo(3, 2);
  });

  test('(c) a stop entered by its length alone is asked for its crush, never assumed', () => {
    const problems = problemsOf(storyText(STORY, { 'front.stop.usableCrush': null }));
    expect(problems.map(({ code, where }) => [code, where.key])).toEqual([
      ['rig-needs-reading', 'front.stop.usableCrush'],
    ]);
  });

  test('(d) with an uncertainty of 15, 47 of lift', () => {
    const result = check(storyText(STORY, { 'front.contacts.sump.gap': '110 mm ± 15' }));
    expect(amount(found(result, 'travel-fail'), 'lift-with-spacer')).toBeCloseTo(47, 2);
  });

  test('(e) with the stop on the rig, 37 of lift cures nothing: 27 of spacer or notch does', () => {
    const mounted = storyText(STORY, { 'front.stop.gap': '90 mm ± 0' });
    expect(mm(check(mounted).travel.corners.frontLeft.spare)).toBeCloseTo(-22, 9);
    const lifted = check(mounted, 'lifted');
    const { frontLeft } = lifted.travel.corners;
    expect(mm(frontLeft.freeBump)).toBeCloseTo(127, 9);
    expect(mm(frontLeft.hardTravel)).toBeCloseTo(147, 9);
    expect(mm(frontLeft.spare)).toBeCloseTo(-22, 9);
    expect(frontLeft.verdict).toBe('fail');
    const nothing = found(lifted, 'lift-buys-no-safety');
    expect(nothing.severity).toBe('over');
    expect(amount(nothing, 'stop-spacer')).toBeCloseTo(27, 3);
    expect(amount(nothing, 'notch-contact')).toBeCloseTo(27, 3);
    expect(findingText(nothing, { system: 'metric' })).toContain('not safety');
    for (const setup of ['lifted-with-spacer', 'lifted-with-notch'])
      expect(check(mounted, setup).travel.corners.frontLeft.verdict, setup).toBe('pass');
    const less = storyText(STORY, {
      'front.stop.gap': '90 mm ± 0',
      'setups.lifted-with-spacer.front.stopSpacer': '26 mm ± 0',
    });
    expect(check(less, 'lifted-with-spacer').travel.corners.frontLeft.verdict).toBe('not-proven');
  });

  test('(f) lifted by a spacer on a coil that is solid 125 away, it fails on coil bind: a longer coil, no spacer', () => {
    const bound = check(
      storyText(STORY, {
        'front.spring.rideLength': '300 mm ± 1',
        'front.spring.solidLength': '175 mm ± 1',
      }),
      'lifted-and-set',
    );
    const { frontLeft } = bound.travel.corners;
    expect(frontLeft.verdict).toBe('fail');
    const coil = frontLeft.contacts.find(({ id }) => id === 'coil')!;
    expect(mm(coil.travel)).toBeCloseTo(125, 9);
    expect(mm(coil.travel) - mm(frontLeft.freeBump) - mm(frontLeft.crush)).toBeCloseTo(5, 9);
    const binds = found(bound, 'coil-binds-before-stop');
    expect(binds.severity).toBe('over');
    expect(amount(binds, 'longer-coil')).toBeCloseTo(37, 9);
    const offered = found(bound, 'travel-fail').remedies.map(({ code }) => code);
    expect(offered).not.toContain('lift-with-spacer');
    expect(offered).not.toContain('seat-and-stop-drop');
  });
});

describe('S2: stop swap, the travel part', () => {
  const STORY = 's1-how-much-lift';
  const swap = {
    'front.contacts.sump.gap': '115 mm ± 0',
    'front.stop.gap': '60 mm ± 0',
    'front.stop.usableCrush': '21 mm ± 0',
    'front.stop.freeLength': '60 mm ± 0',
    'parts.stops.foam.usableCrush': '70 mm ± 0',
    'parts.stops.foam.freeLength': '100 mm ± 0',
    'setups.foam.front.stop': 'foam',
  };

  test('(d) foam at the gap of the rubber fails: metal before the foam is used up', () => {
    const shortened = check(storyText(STORY, { ...swap, 'setups.foam.front.stopGap': '60 mm ± 0' }), 'foam');
    expect(shortened.travel.corners.frontLeft.verdict).toBe('fail');
    expect(mm(found(shortened, 'stop-after-metal').value)).toBeCloseTo(-15, 9);
  });

  test('(e) foam bolted where the rubber was touches at 20, 3 to spare, not proven with a doubt of 5', () => {
    const bolted = check(storyText(STORY, { ...swap, 'front.contacts.sump.gap': '115 mm ± 5' }), 'foam');
    const { frontLeft } = bolted.travel.corners;
    expect(mm(frontLeft.freeBump)).toBeCloseTo(20, 9);
    expect(mm(frontLeft.spare)).toBeCloseTo(3, 9);
    expect(frontLeft.verdict).toBe('not-proven');
  });
});

describe('S3: which hits first?', () => {
  const text = storyText('s3-which-hits-first');
  const result = check(text);
  const { frontLeft } = result.travel.corners;

  test('the contact list in axle travel, from mixed units', () => {
    const list = frontLeft.contacts.map(({ id, travel }) => [id, Number(mm(travel).toFixed(1))]);
    expect(list).toEqual([
      ['panhard', 108.9],
      ['coil', 109.5],
      ['sump', 117.5],
      ['shock', 130],
      ['guard', 139.7],
    ]);
    const coil = frontLeft.contacts.find(({ id }) => id === 'coil')!;
    expect(mm(coil.travel) - mm(coil.allowance)).toBeCloseTo(101.5, 1);
    expect(mm(coil.spare)).toBeCloseTo(11.5, 1);
    expect(coil.spare.value).toBeGreaterThan(coil.spare.tolerance!);
  });

  test('the Panhard bar leaves 0.9 against a doubt of 3: not proven, never a plain pass', () => {
    expect(mm(frontLeft.hardTravel)).toBeCloseTo(108.9, 1);
    expect(mm(frontLeft.spare)).toBeCloseTo(0.9, 1);
    expect(Math.abs(1000 * frontLeft.spare.tolerance! - 3)).toBeLessThan(0.3);
    expect(frontLeft.verdict).toBe('not-proven');
  });

  test('Panhard and coil tie: both are named, and the gap is to be taken again at three places', () => {
    const tie = found(result, 'travel-contacts-tie');
    expect(tie.facts.contacts).toBe('Panhard bar to crossmember, coil solid');
    const again = found(result, 'travel-not-proven').remedies.find(({ code }) => code === 'measure-again')!;
    expect(again.target).toBe('front.contacts.panhard.gap');
    expect(remedyText(again, { system: 'metric' })).toContain('three places');
  });

  test('a spacer of 5 is more than the least that is needed, and passes with 5.9 to spare', () => {
    expect(amount(found(result, 'travel-not-proven'), 'stop-spacer')).toBeLessThan(5);
    const spaced = check(text, 'spacer').travel.corners.frontLeft;
    expect(mm(spaced.freeBump)).toBeCloseTo(45, 9);
    expect(mm(spaced.spare)).toBeCloseTo(5.9, 1);
    expect(spaced.verdict).toBe('pass');
  });
});

describe('S7: strap and hose', () => {
  const text = storyText('s7-strap-and-hose');
  const result = check(text);

  test('the stretched strap is past the open shock: it fails, the shock is the droop stop', () => {
    const shock = found(result, 'droop-shock-is-the-limit');
    expect(shock.severity).toBe('over');
    expect(mm(shock.facts.stretched as { value: number })).toBeCloseTo(724, 9);
    expect(mm(shock.value)).toBeCloseTo(-12, 9);
  });

  test('376 is the strap: 14 left at full stretch, 24 of droop lost', () => {
    const shorten = found(result, 'strap-shorten');
    expect(remedyText(shorten.remedies[0], { system: 'metric' })).toContain('376 mm or less');
    expect(mm(shorten.facts.leftAfter as { value: number })).toBeCloseTo(14, 0);
    expect(mm(shorten.facts.droopLost as { value: number })).toBeCloseTo(24, 0);
    const shorter = check(text, 'shorter');
    expect(codes(shorter)).not.toContain('strap-shorten');
    expect(found(shorter, 'droop-first-limit').facts.limit).toBe('strap');
  });

  test('a webbing that stretches 5 % may be 388', () => {
    const stiff = check(storyText('s7-strap-and-hose', { 'front.strap.stretch': '5 % ± 0.25' }));
    const least = amount(found(stiff, 'strap-shorten'), 'shorten-strap');
    expect(least).toBeGreaterThan(386);
    expect(least).toBeLessThan(388.5);
  });

  test('25 of hose slack is the least there should be: a person qualified for brakes looks at it', () => {
    const hose = found(result, 'hose-slack-minimum');
    expect(mm(hose.value)).toBeCloseTo(25, 9);
    expect(remedyText(hose.remedies[0], { system: 'metric' })).toMatch(/lock to lock.*qualified/s);
    // A shorter strap gives nothing back: nobody taped the hose there.
    expect(mm(found(check(text, 'shorter'), 'hose-slack-minimum').value)).toBeCloseTo(25, 9);
    const longer = check(text, 'longer');
    // A strap longer by 10 stretches 10.8 further and takes that from the hose.
    expect(mm(found(longer, 'hose-slack-minimum').value)).toBeCloseTo(25 - 10.8, 9);
  });
});

describe('S8: marker, clay and one change', () => {
  const text = storyText('s8-marker-and-clay');
  const result = check(text);

  test('the front passes agree and use 95 % of the limit, the rear uses 54 %', () => {
    const valid = found(result, 'witness-data-valid');
    expect(mm(valid.value)).toBeCloseTo(2, 9);
    expect(found(result, 'witness-travel-share').value!.value).toBeCloseTo(0.95, 9);
    expect(found(result, 'witness-travel-share', 'rear').value!.value).toBeCloseTo(0.542, 3);
  });

  test('the frame gave 6, which is 8.5 at full crush by the curve of the stop', () => {
    const flex = found(result, 'witness-flex-observed');
    expect(mm(flex.value)).toBeCloseTo(6, 9);
    expect(mm(flex.facts.atFullCrush as { value: number })).toBeCloseTo(6 / 0.71, 1);
  });

  test('5.5 would be left of 10: an 8 mm stop spacer first, as a safety correction', () => {
    const short = found(result, 'witness-margin-short');
    expect(short.severity).toBe('over');
    expect(mm(short.value)).toBeCloseTo(5.5, 1);
    expect(remedyText(short.remedies[0], { system: 'metric' })).toContain('8 mm or more');
    expect(findingText(short, { system: 'metric' })).toContain('not tuning');
    const spaced = check(text, 'spacer').travel.corners.frontLeft;
    expect(mm(spaced.freeBump)).toBeCloseTo(67, 9);
    expect(mm(spaced.freeBump) + mm(spaced.crush)).toBeCloseTo(112, 9);
  });

  test('no clicks at the front while the margin is short; softer at the rear, and nowhere a stiffer spring', () => {
    expect(found(result, 'witness-travel-share').remedies).toEqual([]);
    expect(found(result, 'witness-travel-share', 'rear').remedies.map(({ code }) => code)).toEqual([
      'softer-compression-damping',
    ]);
  });
});

test('every finding of every story, in every setup, fills all the slots of its sentence', () => {
  let said = 0;
  for (const name of ['s1-how-much-lift', 's3-which-hits-first', 's7-strap-and-hose', 's8-marker-and-clay']) {
    const text = storyText(name);
    for (const setup of setupNames(must(readRig(text))))
      for (const finding of check(text, setup).findings)
        for (const system of ['shop', 'metric'] as const) {
          const sentence = findingText(finding, { system });
          expect(sentence, finding.id).not.toMatch(/unknown|NaN|undefined/);
          for (const remedy of finding.remedies)
            expect(remedyText(remedy, { system }), finding.id).not.toMatch(/unknown|NaN|undefined/);
          said += 1;
        }
  }
  expect(said).toBeGreaterThan(100);
});
