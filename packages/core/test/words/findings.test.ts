import { describe, expect, test } from 'vitest';
import { FINDING_CODES, type FindingCode, REMEDY_CODES } from '../../src/finding/codes.ts';
import type { Dimension, Figure } from '../../src/finding/figure.ts';
import type { Finding } from '../../src/finding/finding.ts';
import { findingText } from '../../src/words/findings.ts';
import { remedyText } from '../../src/words/remedies.ts';

const figure = (
  value: number,
  tolerance: number | null = 0.002,
  dimension: Dimension = 'length',
): Figure => ({
  dimension,
  value,
  tolerance,
});

/** Every slot that any sentence has, as its maker fills it. */
const FACTS: Finding['facts'] = {
  contact: 'Panhard bar',
  contacts: 'Panhard bar, coil solid',
  missing: 'coil solid, shock bottomed',
  needed: 'parts.stops.foam.freeLength, front.stop.freeLength',
  limit: 'strap',
  limitName: 'strap',
  strap: 'too long',
  heavier: 'frontLeft, rearRight',
  reading: 'front.flex',
  what: 'value',
  passes: '3',
  course: 'whoops',
  criterion: 'metal-contact',
  bands: '2',
  joint: 'pinion',
  known: 'usual',
  aim: 'at',
  line: 'brake hose',
  link: 'upper',
  links: 'lower left, upper',
  ...Object.fromEntries(
    ['angle', 'allowed', 'residual', 'slope', 'roll'].map((name) => [name, figure(0.2, 0.01, 'angle')]),
  ),
  ...Object.fromEntries(['turns', 'whirl'].map((name) => [name, figure(37.5, 0.4, 'frequency')])),
  holdsTo: figure(11, 0.5, 'speed'),
  ...Object.fromEntries(
    [
      'spare',
      'clearance',
      'hardTravel',
      'freeBump',
      'crush',
      'allowance',
      'travel',
      'loose',
      'left',
      'reserve',
      'stretched',
      'open',
      'shorter',
      'droopLost',
      'leftAfter',
      'slack',
      'least',
      'spread',
      'uncertainty',
      'furthest',
      'toFullCrush',
      'flex',
      'atFullCrush',
      'flexEntered',
      'lift',
      'spareBefore',
      'spareGained',
      'freeBumpGained',
      'measured',
      'settled',
      'swing',
      'usable',
      'goesIn',
      'comesOut',
      'leftIn',
      'leftOut',
      'longest',
      'wantedLength',
      'radius',
      'arc',
      'fromBody',
      'bodyNeed',
      'axleNeed',
      'gap',
      'offset',
    ].map((name) => [name, figure(0.05)]),
  ),
  difference: figure(30, 4, 'mass'),
  share: figure(0.53, 0.01, 'ratio'),
  speed: figure(13.4112, 0, 'speed'),
  ...Object.fromEntries(
    ['slowest', 'fastest', 'step', 'low', 'high', 'until'].map((name) => [name, figure(10, 0, 'speed')]),
  ),
  time: figure(3.2, 0, 'time'),
  force: figure(9200, 800, 'force'),
  acceleration: figure(29.4, 2, 'acceleration'),
  rms: figure(1.4, 0.2, 'acceleration'),
  peak: figure(21, 2, 'acceleration'),
  dose: figure(7.4, 0.6, 'vibrationDose'),
  crestFactor: figure(11, 1, 'ratio'),
  timeToAction: figure(3673, 400, 'time'),
  timeToLimit: figure(19_430, 2000, 'time'),
  duration: figure(1.2, 0, 'time'),
  rightUpTo: figure(40, 0, 'frequency'),
  samples: figure(200, 0, 'frequency'),
  comfort: 'uncomfortable, very',
  reason: 'record-short',
  way: 'in',
  shaftSpeed: figure(2.3, 0.2, 'speed'),
  knownTo: figure(2, 0, 'speed'),
  closingSpeed: figure(3.1, 0.3, 'speed'),
  ventHoldsTo: figure(2.06, 0, 'speed'),
  factor: figure(1.08, 0.05, 'ratio'),
  transfer: figure(0.58, 0.03, 'ratio'),
  weight: figure(0.47, 0, 'ratio'),
  wanted: figure(1.12, 0.02, 'ratio'),
  verdict: 'unproven',
  lower: 'left',
  assumed: 'front and rear',
  stop: 'clear',
  mount: 'stop',
  part: 'weld',
  demand: 'whoops',
  detail: 'toe of a fillet weld',
  bends: 'no',
  asked: 'yes',
  fewest: '120',
  most: '300',
  ...Object.fromEntries(
    ['tips', 'firstLift', 'rigid', 'lean', 'gradient'].map((name) => [name, figure(0.6, 0.05, 'angle')]),
  ),
  ...Object.fromEntries(['front', 'rear'].map((name) => [name, figure(1.3, 0.05, 'frequency')])),
  ...Object.fromEntries(['height', 'sinks', 'swing', 'spacing'].map((name) => [name, figure(0.02, 0.002)])),
};

const finding = (code: FindingCode, rest: Partial<Finding> = {}): Finding => ({
  id: `${code}.front`,
  code,
  severity: 'note',
  place: 'front',
  facts: FACTS,
  limit: figure(0.025, 0),
  likelihood: 0.3,
  because: [],
  remedies: [],
  ...rest,
});

describe('every finding has its sentence', () => {
  test.each(FINDING_CODES)('%s', (code) => {
    for (const system of ['shop', 'metric'] as const) {
      const said = findingText(finding(code), { system });
      expect(said).toMatch(/^Front: .*\.$/s);
      // The witness of a slot that its maker does not fill, or of a number that is none.
      expect(said).not.toMatch(/unknown|NaN|undefined|\[object/);
    }
  });

  test('without facts the slots say unknown, and nothing breaks', () => {
    for (const code of FINDING_CODES)
      expect(findingText(finding(code, { facts: {} }), { system: 'shop' })).toMatch(/\.$/);
  });
});

describe('what a sentence says', () => {
  test('the place first, or left away for a view that shows it beside', () => {
    const corner = finding('droop-first-limit', { place: 'rearLeft' });
    expect(findingText(corner, { system: 'metric' })).toBe(
      'Rear left: droop ends 50.0 mm ± 2.0 down, at the stretched strap.',
    );
    expect(findingText(corner, { system: 'metric', place: false })).toBe(
      'Droop ends 50.0 mm ± 2.0 down, at the stretched strap.',
    );
    expect(findingText(finding('ride-harsh', { place: 'rig' }), { system: 'metric' })).toMatch(
      /^The body takes/,
    );
  });

  test('a tolerance that nobody knows is said to be unknown', () => {
    const facts = { ...FACTS, spare: figure(0.05, null) };
    expect(findingText(finding('travel-pass', { facts }), { system: 'metric' })).toContain('± unknown');
  });

  test('a fail names the size of what is missing, in the units of the shop', () => {
    const facts = { ...FACTS, spare: figure(-0.03175, 0.0015875), travel: figure(0.1016, 0.0015875) };
    const said = findingText(finding('travel-fail', { facts }), { system: 'shop' });
    expect(said).toContain('Panhard bar is 1 1/4 in ± 1/16 short');
    expect(said).toContain('hit after 4 in ± 1/16');
  });

  test('a pass says at what, and beyond what', () => {
    expect(findingText(finding('travel-pass'), { system: 'metric' })).toBe(
      'Front: pass: with the stop fully crushed, Panhard bar still has 50.0 mm ± 2.0 to spare beyond the 50 mm that must stay free; nothing else has less.',
    );
  });

  test('a drop has no speed, and no sentence makes one up', () => {
    const { speed: _, ...facts } = FACTS;
    const said = findingText(finding('ride-harsh', { facts: { ...facts, course: 'drop' } }), {
      system: 'metric',
    });
    expect(said).toContain('above rest on drop;');
    expect(findingText(finding('ride-harsh'), { system: 'metric' })).toContain('on whoops at 48.3 km/h;');
  });

  test('limits are rounded to what they were chosen to: a tenth of a millimetre, three digits', () => {
    const limit = (value: number, dimension: Dimension) =>
      findingText(finding('ride-harsh', { limit: figure(value, 0, dimension) }), { system: 'metric' });
    expect(limit(24.516625, 'acceleration')).toContain('24.5 m/s² is accepted');
    expect(limit(0.018525, 'length')).toContain('18.5 mm');
    // Small ones keep their digits.
    expect(limit(0.000123, 'length')).toContain('0.123 mm');
  });

  test('a probability is told in a hundred', () => {
    const said = (likelihood: number) =>
      findingText(finding('travel-not-proven', { likelihood }), { system: 'metric' });
    expect(said(0.3)).toContain('about 30 in 100');
    expect(said(0.001)).toContain('less than 1 in 100');
  });

  test('readings go by their names, not by their keys', () => {
    const said = findingText(finding('stop-gap-needed'), { system: 'metric' });
    expect(said).toContain('free length of the stop foam');
    expect(said).not.toContain('freeLength');
  });

  test('a sentence about the brake hose sends its reader to a qualified person', () => {
    expect(findingText(finding('droop-hose-taut'), { system: 'metric' })).toMatch(/qualified.*local rules/);
    for (const code of ['longer-hose', 'inspect-hose'] as const)
      expect(remedyText({ code, amount: figure(0.02, 0) }, { system: 'metric' })).toMatch(
        /qualified.*local rules/,
      );
  });
});

describe('every remedy has its order', () => {
  test.each(REMEDY_CODES)('%s', (code) => {
    for (const remedy of [{ code }, { code, amount: figure(0.0371, 0), target: 'front.stop.gap' }])
      for (const system of ['shop', 'metric'] as const)
        expect(remedyText(remedy, { system })).toMatch(/^[A-Z](?!.*(NaN|undefined|null)).*\.$/s);
  });

  test.each([
    ['stop-spacer', 0.0371, 'metric', '38 mm or more'],
    ['stop-spacer', 0.037, 'metric', '37 mm or more'],
    // 37 mm are 1.457 in: 1 7/16 would be 0.5 mm short.
    ['stop-spacer', 0.037, 'shop', '1 1/2 in or more'],
    ['stop-spacer', 0.0127, 'shop', '1/2 in or more'],
    ['set-gap', 0.0639, 'metric', '63 mm or less'],
    ['set-gap', 0.063, 'shop', '2 7/16 in or less'],
    ['shorten-strap', 0.3768, 'metric', '376 mm or less'],
  ] as const)('%s of %s m is cut to the safe side in %s: %s', (code, value, system, expected) => {
    expect(remedyText({ code, amount: figure(value, 0) }, { system })).toContain(expected);
  });

  test('measuring again says what, and how well where that is enough', () => {
    const target = 'front.contacts.sump.gap';
    const well = remedyText(
      { code: 'measure-again', target, amount: figure(0.001, 0) },
      { system: 'metric' },
    );
    expect(well).toContain('front gap at sump');
    expect(well).toContain('± 1 mm');
    // What has to be reached is rounded down, 0.8 mm to two 64ths (0.794) and 0.79 mm to one; never to zero.
    const half = (value: number, system: 'shop' | 'metric') =>
      remedyText({ code: 'measure-again', target, amount: figure(value, 0) }, { system });
    expect(half(0.00079, 'metric')).toContain('± 0.7 mm');
    expect(half(0.0008, 'shop')).toContain('± 1/32 in');
    expect(half(0.00079, 'shop')).toContain('± 1/64 in');
    expect(half(0.0002, 'shop')).toContain('± 0.2 mm');
    expect(half(0.00002, 'metric')).toContain('± 0.02 mm');
    expect(remedyText({ code: 'measure-again', target }, { system: 'metric' })).toContain('three places');
  });
});
