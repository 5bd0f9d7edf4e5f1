import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ASSUMPTION_RULES } from '../../src/rig/assumptions.ts';
import { fieldsOf } from '../../src/rigfile/index.ts';
import { assumptionText } from '../../src/words/assumptions.ts';
import { readingName } from '../../src/words/readings.ts';
import { rigOf, SMALLEST } from '../rigfile/smallest-rig.ts';

const OCHRE = readFileSync(new URL('../../../../examples/ochre/ochre.rig.yaml', import.meta.url), 'utf8');
const EVERYTHING = `${OCHRE}`.replace(
  'setups:\n',
  'setups:\n  all: { front: { notch: { sump: 1/4 in } }, rear: { stopGap: 2 in } }\n',
);

describe('a reading in words', () => {
  it.each([
    ['front.stop.gap.left', 'front stop gap, left'],
    ['measured.weights.rearLeft', 'weight on the rear left tyre'],
    ['front.contacts.sump.gap', 'front gap at sump'],
    ['rear.contacts.tube-frame.gap.right', 'rear gap at tube-frame, right'],
    ['parts.stops.soft.usableCrush', 'usable crush of the stop soft'],
    ['setups.seat-down.front.seatAndStopDrop', 'front seat and stop drop (setup seat-down)'],
    ['front.contacts.left.gap', 'front gap at left'],
  ])('%s is the %s', (key, name) => {
    expect(readingName(key)).toBe(name);
  });

  it('every field of a rig file outside its courses has a name, and no two have the same', () => {
    const keys = fieldsOf(EVERYTHING)
      .map(({ path }) => path.join('.'))
      .filter((key) => !key.startsWith('courses.'));
    for (const key of keys) expect(readingName(key), key).not.toBe(key);
    expect(new Set(keys.map(readingName)).size).toBe(keys.length);
  });

  it('a key that nobody knows comes back as it is', () => {
    expect(readingName('front.wings.left')).toBe('front.wings.left');
  });
});

describe('an assumption in words', () => {
  it('says what was taken and how to measure it, for every rule', () => {
    for (const rule of ASSUMPTION_RULES) {
      const { what, howToMeasure } = assumptionText({ key: 'front.flex', what: 'value', rule });
      for (const sentence of [what, howToMeasure]) expect(sentence).toMatch(/^[A-Z].{10,}\.$/);
    }
  });

  it('every assumption that the smallest rig rests on has a reading name', () => {
    for (const { key } of rigOf(SMALLEST).assumptions) expect(readingName(key), key).not.toBe(key);
  });

  it('the figure in the sentence is the figure that was taken', () => {
    const rig = rigOf(SMALLEST);
    const said = (rule: (typeof ASSUMPTION_RULES)[number]) =>
      assumptionText({ key: '', what: 'value', rule }).what;
    expect(said('contact-ratio-one')).toContain(`1 ± ${rig.front.contacts[0]!.ratio.plus}`);
    expect(said('shock-ratio-upright')).toContain(
      `${rig.front.shock.ratio.value} ± ${rig.front.shock.ratio.plus}`,
    );
    expect(said('cg-height')).toContain(`${rig.cgHeight.value.toFixed(2)} ± ${rig.cgHeight.plus} m`);
    expect(said('flex-boxed-frame')).toContain(
      `${rig.front.flex.value * 1000} ± ${rig.front.flex.plus * 1000} mm`,
    );
    expect(said('reserve')).toContain(`${rig.limits.reserve.value * 1000} mm`);
    expect(said('tyre-damping')).toContain(
      `${rig.front.tyre.damping.value} ± ${rig.front.tyre.damping.plus} N·s/m`,
    );
    expect(said('stop-rate-factor')).toContain(
      `${rig.front.stop.rateFactor.value * 100} ± ${rig.front.stop.rateFactor.plus * 100} %`,
    );
  });
});
