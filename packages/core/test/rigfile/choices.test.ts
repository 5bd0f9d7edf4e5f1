import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readRig } from '../../src/rigfile/read.ts';
import { rigOf } from './smallest-rig.ts';

const OCHRE = readFileSync(new URL('../../../../examples/ochre/ochre.rig.yaml', import.meta.url), 'utf8');
const METRIC = readFileSync(
  new URL('../../../../examples/ochre/ochre-metric.rig.yaml', import.meta.url),
  'utf8',
);

describe('the choices of a rig file', () => {
  it('a range is its steps, all cut by the same hand', () => {
    const drop = rigOf(OCHRE).choices?.ends.front.seatAndStopDrop;
    expect(drop?.sizes.map(({ value }) => value / 0.0254)).toEqual(
      [0.5, 1, 1.5].map((inches) => expect.closeTo(inches, 9)),
    );
    expect(new Set(drop?.sizes.map(({ key }) => key))).toEqual(new Set(['choices.front.seatAndStopDrop']));
    expect(drop).toMatchObject({ price: 60, hours: 8 });
  });

  it('a course brings its speed and its distance a day, an entry may have its own', () => {
    const [whoops, , road] = rigOf(OCHRE).choices?.drive ?? [];
    expect(whoops).toEqual({
      course: 'whoops',
      trim: 'trail',
      speed: expect.closeTo(8.9408, 4),
      perDay: expect.closeTo(1609.344, 3),
    });
    expect(road?.trim).toBe('road');
    const slower = OCHRE.replace('course: ledge, trim: trail', 'course: ledge, trim: trail, speed: 4 mph');
    expect(rigOf(slower).choices?.drive[1].speed).toBeCloseTo(1.78816, 5);
  });

  it('both files of the demo rig list the same', () => {
    const [shop, metric] = [OCHRE, METRIC].map((text) => rigOf(text).choices);
    const bare = (choices: typeof shop) =>
      JSON.parse(
        JSON.stringify(choices, (key, value) =>
          ['text', 'value', 'plus', 'minus', 'speed', 'perDay', 'from', 'to'].includes(key) &&
          typeof value !== 'object'
            ? undefined
            : value,
        ),
      );
    expect(bare(metric)).toEqual(bare(shop));
  });

  it('without the key there is nothing to choose', () => {
    expect(rigOf(OCHRE.replace(/^choices:\n(?: .*\n)+/m, '')).choices).toBeNull();
  });

  it.each([
    [
      'a stop nobody has',
      ['soft: { price: 95', 'hard: { price: 95'],
      'rig-unknown-name',
      /choices\.(front|rear)\.stop\.hard/,
    ],
    ['a price with its money', ['price: 12,', 'price: 12 EUR,'], 'rig-wrong-shape', /stopSpacer\.price/],
    ['a price below zero', ['price: 12,', 'price: -12,'], 'rig-wrong-shape', /stopSpacer\.price/],
    [
      'a length without unit',
      ['sizes: [1/2 in ± 1/32, 1 in', 'sizes: [12, 1 in'],
      'quantity-unit-missing',
      /sizes\.0/,
    ],
    ['an empty list', ['sizes: [1/2 in ± 1/16]', 'sizes: []'], 'rig-wrong-shape', /notch\.sump\.sizes/],
    [
      'a list beside a range',
      ['from: 1/2 in ± 1/32, to', 'sizes: [1 in], from: 1/2 in ± 1/32, to'],
      'rig-inconsistent',
      /seatAndStopDrop/,
    ],
    [
      'a range that ends before it begins',
      ['to: 1 1/2 in, step', 'to: 1/4 in, step'],
      'quantity-out-of-range',
      /seatAndStopDrop\.to/,
    ],
    ['a range without its step', [', step: 1/2 in,', ','], 'rig-key-missing', /seatAndStopDrop\.step/],
    [
      'a contact nobody listed',
      ['      sump: { sizes', '      smup: { sizes'],
      'rig-unknown-name',
      /notch\.smup/,
    ],
    [
      'something kept that is not listed',
      ['keep: [front.notch.sump]', 'keep: [front.spring]'],
      'rig-unknown-name',
      /keep\.0/,
    ],
    [
      'a setting the shock does not have',
      ['shockSetting: [trail, road]\n      antiRollBar', 'shockSetting: [trail, wash]\n      antiRollBar'],
      'rig-unknown-name',
      /trail\.shockSetting\.1/,
    ],
    [
      'a course nobody laid out',
      ['course: ledge, trim', 'course: lodge, trim'],
      'rig-unknown-name',
      /drive\.1\.course/,
    ],
    [
      'a rig that is let go',
      ['course: ledge, trim', 'course: drop, trim'],
      'rig-unknown-name',
      /drive\.1\.course/,
    ],
    [
      'another trim',
      ['course: ledge, trim: trail', 'course: ledge, trim: mud'],
      'rig-wrong-shape',
      /drive\.1\.trim/,
    ],
    [
      'a setup to start from that is not there',
      ['from: as-it-is', 'from: as-it-was'],
      'rig-unknown-name',
      /choices\.from/,
    ],
    [
      'a slowest speed above the fastest',
      ['from: 5 mph, to: 45 mph', 'from: 50 mph, to: 45 mph'],
      'quantity-out-of-range',
      /fastest\.to/,
    ],
    [
      'a lift with a tolerance',
      ['liftAtMost: 1 1/2 in', 'liftAtMost: 1 1/2 in ± 1/8'],
      'rig-wrong-shape',
      /liftAtMost/,
    ],
    [
      'a bar that is not there',
      [
        '    road:\n      tyrePressure: [18 psi ± 1, 26 psi ± 1]\n  drive',
        '    road:\n      antiRollBar: [on, off]\n  drive',
      ],
      'rig-inconsistent',
      /rear\.road\.antiRollBar/,
    ],
  ] as const)('%s is told at its line', (_, [from, to], code, key) => {
    const text = OCHRE.replace(from, to);
    expect(text).not.toBe(OCHRE);
    const read = readRig(text);
    const problems = read.ok ? [] : read.problems;
    expect(problems.map((one) => one.code)).toContain(code);
    const told = problems.find((one) => one.code === code && key.test(one.where.key ?? ''));
    const begins = text.slice(0, text.indexOf('\nchoices:')).split('\n').length;
    expect(told?.where.line, JSON.stringify(problems)).toBeGreaterThan(begins);
  });
});
