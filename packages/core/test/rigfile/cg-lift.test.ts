import { describe, expect, it } from 'vitest';
import { readingName } from '../../src/words/readings.ts';
import { problemsOf, rigOf, rigWith, SMALLEST } from './smallest-rig.ts';

const lifted = (more: string, rest = '') =>
  rigWith(['  wheelbase: 100 in\n', `  wheelbase: 100 in\n  cgLift: { ${more} }\n${rest}`]);
const REAR = 'raised: rear, by: 24 in ± 1/4, left: 1040 lb ± 2, right: 1042 lb ± 2';

describe('height of the centre of gravity from raising one axle', () => {
  it('takes the place of the assumed one, with the half-width that scales and tape give', () => {
    const rig = rigOf(lifted(REAR));
    // h = r + L·ΔW ÷ (W·tan θ) by ISO 10392, in inches: 16.93 + 100·82 ÷ (3800·tan(asin 0.24)).
    const inches = 0.43 / 0.0254 + (100 * 82) / (3800 * Math.tan(Math.asin(0.24)));
    expect(rig.cgHeight.value).toBeCloseTo(inches * 0.0254, 9);
    expect(rig.cgHeight).toMatchObject({ key: 'measured.cgHeight', origin: 'measured' });
    // Level scales to 0.5 %, 5 lb each, and the raised ones to 2 lb, at L ÷ (W·tan θ) in/lb; two radii nobody taped, each
    // to 50 mm and each worth about half of it.
    const perPound = 100 / (3800 * Math.tan(Math.asin(0.24)));
    const scales = perPound * Math.hypot(5, 5, 2, 2) * 0.0254;
    expect(Math.abs(rig.cgHeight.plus / Math.hypot(scales, 0.05 / Math.SQRT2) - 1)).toBeLessThan(0.1);
    expect(rig.assumptions.some(({ rule }) => rule === 'cg-height')).toBe(false);
    expect(rig.cgLift).toMatchObject({ raised: 'rear', give: null });
  });

  it('with free suspension comes lower, less sure, and says what it took', () => {
    const [locked, free] = [rigOf(lifted(REAR)), rigOf(lifted(`${REAR}, suspension: free`))];
    expect(free.cgHeight.value).toBeLessThan(locked.cgHeight.value);
    expect(free.assumptions).toContainEqual({
      key: 'measured.cgLift.give',
      what: 'value',
      rule: 'cg-lift-free-suspension',
    });
  });

  it('stays assumed where no axle was raised', () => {
    const rig = rigOf(SMALLEST);
    expect(rig.cgLift).toBeNull();
    expect(rig.cgHeight.origin).toBe('assumed');
  });

  it.each([
    [lifted(REAR, '  cgHeight: 32 in\n'), 'rig-inconsistent', 'measured.cgHeight'],
    [lifted('by: 24 in, left: 1040 lb, right: 1042 lb'), 'rig-key-missing', 'measured.cgLift.raised'],
    [lifted('raised: rear, left: 1040 lb, right: 1042 lb'), 'rig-needs-reading', 'measured.cgLift.by'],
    [
      lifted('raised: rear, by: 24 in, left: 990 lb, right: 991 lb'),
      'rig-inconsistent',
      'measured.cgLift.left',
    ],
    [lifted(REAR.replace('24 in', '80 in')), 'rig-inconsistent', 'measured.cgLift.by'],
    [lifted(`${REAR}, suspension: half`), 'rig-wrong-shape', 'measured.cgLift.suspension'],
  ])('names what is wrong and where: %#', (text, code, key) => {
    expect(problemsOf(text)).toMatchObject([{ code, where: { key } }]);
  });

  it('its readings have names of the trade', () => {
    expect(readingName('measured.cgLift.left')).toBe('weight with the other axle raised, left');
    expect(readingName('measured.cgLift.by')).toBe('height by which one axle was raised');
  });
});

describe('an anti-roll bar taken off by a setup', () => {
  const bar = [
    '  spring: { rate: 160',
    '  antiRollBar: { rate: 300 N*m/deg }\n  spring: { rate: 160',
  ] as const;

  it('is named by the setup and gone from its end', () => {
    const rig = rigOf(`${rigWith(bar)}setups:\n  trail:\n    front: { antiRollBar: off }\n`);
    expect(rig.setups.trail.front).toEqual({ antiRollBar: 'off' });
  });

  it('must be there', () => {
    const text = `${SMALLEST}setups:\n  trail:\n    front: { antiRollBar: off }\n`;
    expect(problemsOf(text)).toMatchObject([
      { code: 'rig-inconsistent', where: { key: 'setups.trail.front.antiRollBar' } },
    ]);
  });
});
