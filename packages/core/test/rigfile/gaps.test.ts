import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readRig } from '../../src/rigfile/index.ts';
import { bodyPitchInertia, bodyRollInertia, tyreRate } from '../../src/rigfile/usual-value.ts';
import { problemsOf, rigOf, rigWith, SMALLEST } from './smallest-rig.ts';

const rig = rigOf(SMALLEST);

describe('a gap with a sound estimate', () => {
  it('is filled, marked at the reading and listed', () => {
    expect(rig.front.contacts[0]!.ratio).toMatchObject({
      key: 'front.contacts.sump.ratio',
      value: 1,
      plus: 0.05,
      origin: 'assumed',
      toleranceOrigin: 'assumed',
      text: '',
    });
    expect(rig.assumptions).toContainEqual({
      key: 'front.contacts.sump.ratio',
      what: 'value',
      rule: 'contact-ratio-one',
    });
  });

  it('every reading of the rig that was not typed is listed exactly once', () => {
    const keys = rig.assumptions.map(({ key, what }) => `${what} ${key}`);
    expect(new Set(keys).size).toBe(keys.length);
    const readings: { key: string; origin: string; toleranceOrigin: string }[] = [];
    JSON.stringify(rig, (_key, value: unknown) => {
      if (value && typeof value === 'object' && 'toleranceOrigin' in value) readings.push(value as never);
      return value;
    });
    for (const { key, origin, toleranceOrigin } of readings) {
      expect(keys.includes(`value ${key}`), key).toBe(origin === 'assumed');
      expect(keys.includes(`tolerance ${key}`), key).toBe(
        origin !== 'assumed' && toleranceOrigin === 'assumed',
      );
    }
  });

  it('a missing tolerance is that of the usual tool: tape, pads, press', () => {
    expect(rig.wheelbase.plus).toBeCloseTo(0.0254 / 16, 9);
    const inMillimetres = rigOf(rigWith(['wheelbase: 100 in', 'wheelbase: 2540 mm']));
    expect(inMillimetres.wheelbase.plus).toBeCloseTo(0.0015, 9);
    expect(rig.cornerMass.frontLeft.plus / rig.cornerMass.frontLeft.value).toBeCloseTo(0.005, 9);
    expect(rig.front.spring.rate.plus / rig.front.spring.rate.value).toBeCloseTo(0.05, 9);
    expect(rig.front.stop.usableCrush.plus / rig.front.stop.usableCrush.value).toBeCloseTo(0.05, 9);
    expect(rig.wheelbase.toleranceOrigin).toBe('assumed');
  });

  it('a guess without tolerance is wide, and stays the guess of its owner', () => {
    const guessed = rigOf(rigWith(['wheelbase: 100 in', 'wheelbase: ~ 100 in'])).wheelbase;
    expect(guessed).toMatchObject({ origin: 'guessed', toleranceOrigin: 'assumed', text: '~ 100 in' });
    expect(guessed.plus / guessed.value).toBeCloseTo(0.2, 9);
  });

  it('one value for both sides is one reading, two values are two', () => {
    const { gap } = rig.front.stopMount;
    expect(gap.left).toBe(gap.right);
    const apart = rigOf(rigWith(['gap: 4 in', 'gap: { left: 4 in, right: 4 1/8 in }'])).front.contacts[0]!
      .gap;
    expect([apart.left.key, apart.right.key]).toEqual([
      'front.contacts.sump.gap.left',
      'front.contacts.sump.gap.right',
    ]);
  });

  it('is frozen through and through, and survives being sent to a worker', () => {
    expect(Object.isFrozen(rig.front.stopMount.gap.left)).toBe(true);
    expect(structuredClone(rig)).toEqual(rig);
  });
});

describe('a reading that nothing can stand in for', () => {
  it.each([
    ['wheelbase', '  wheelbase: 100 in\n', 'measured.wheelbase'],
    ['a corner weight', 'rearRight: 900 lb ', 'measured.weights.rearRight'],
    ['the track', 'axle: { track: 60 in }', 'front.axle'],
    ['the spring rate', 'spring: { rate: 160 lb/in }', 'front.spring'],
    ['the stop gap', '    gap: 2 in\n', 'front.stop.gap'],
    ['the usable crush', '    usableCrush: 3/4 in\n', 'front.stop.usableCrush'],
    ['any contact', 'sump: { gap: 4 in }', 'front.contacts'],
    ['the gap of a contact', 'gap: 4 in', 'front.contacts.sump.gap'],
  ])('%s is asked for', (_what, text, key) => {
    const problems = problemsOf(rigWith([text, '']));
    expect(problems.map(({ code, where }) => [code, where.key])).toEqual([['rig-needs-reading', key]]);
  });

  // Acceptance story S1(c): common practice, no source.
  it('S1(c): a stop known only as 60 mm long is asked for its crush, never taken as crushing 60 mm', () => {
    const problems = problemsOf(rigWith(['    usableCrush: 3/4 in\n', '    freeLength: 60 mm\n']));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({
      code: 'rig-needs-reading',
      where: { key: 'front.stop.usableCrush', line: 10 },
    });
  });

  it('a coil or a shock with its lengths is a contact too', () => {
    const coil = rigWith(
      ['    sump: { gap: 4 in }', '    {}'],
      ['{ rate: 160 lb/in }', '{ rate: 160 lb/in, rideLength: 11 in, solidLength: 7 in }'],
    );
    expect(readRig(coil).ok).toBe(true);
  });
});

describe('an estimated force', () => {
  it('a stop with one press reading follows a power law from zero to that reading, and is marked', () => {
    const { stop } = rigOf(
      rigWith([
        '    usableCrush: 3/4 in\nrear',
        '    usableCrush: 20 mm\n    material: foam\n    forceAtFullCrush: 9 kN\nrear',
      ]),
    ).front;
    expect(stop.origin).toBe('guessed');
    expect([stop.crush[0], stop.force[0]]).toEqual([0, 0]);
    expect(stop.crush.at(-1)).toBeCloseTo(0.02, 12);
    expect(stop.force.at(-1)).toBeCloseTo(9000, 9);
    // F = F_full·(x/x_full)^2.6 at half crush: 9000·0.5^2.6, by an independent calculator (bc -l).
    expect(stop.force[5]).toBeCloseTo(1484.4, 0);
    expect(rig.assumptions).toContainEqual({
      key: 'front.stop.curve',
      what: 'value',
      rule: 'stop-curve-power',
    });
  });

  it('a shock given as a share of critical damping has that slope near zero speed', () => {
    // trade example, derived: 370 kg on 26 N/mm, critical 6 200 N·s/m; 0.25 of it is 89 lbf at 10 in/s, 0.5 is 177 lbf.
    const corner = rigOf(
      rigWith(
        ['frontLeft: 1000 lb, frontRight: 1000 lb', 'frontLeft: 470 kg, frontRight: 470 kg'],
        ['axle: { track: 60 in }', 'axle: { track: 60 in, unsprungMass: 200 kg }'],
        [
          '{ rate: 160 lb/in }',
          '{ rate: 26 N/mm }\n  shock:\n    ratio: 1\n    settings: { trail: { dampingRatio: { compression: 0.25, rebound: 0.5 } } }',
        ],
      ),
    );
    const { speed, force, origin } = corner.front.shock.settings.trail!;
    const at = (inchesPerSecond: number) => {
      const index = speed.findIndex((v) => Math.abs(v - inchesPerSecond * 0.0254) < 1e-9);
      return force[index]! / 4.4482216152605;
    };
    expect(at(10)).toBeCloseTo(89, -0.5);
    expect(at(-10)).toBeCloseTo(-177, -0.5);
    expect(origin).toBe('guessed');
  });
});

describe('estimates of inertia and tyre rate against what others published', () => {
  // Garrott et al., SAE 881767 (from memory, passenger cars): whole vehicle, W in lb, I in lb·ft·s²: pitch 0.99·W − 1149,
  // roll 0.18·W − 150, to 20 %. Ours are of the sprung mass, to 30 %: the axles are taken off theirs.
  const SLUG_FOOT_SQUARED = 1.3558179483;
  it.each([3500, 4000, 4500])('the two bands of a rig of %d lb meet, in roll and in pitch', (weight) => {
    const total = weight * 0.45359237;
    const [unsprung, wheelbase, track] = [0.285 * total, 2.65, 1.55];
    const axlesInPitch = unsprung * (wheelbase / 2) ** 2;
    const axlesInRoll = 0.6 * unsprung * (track / 2) ** 2;
    const theirs = {
      pitch: (0.99 * weight - 1149) * SLUG_FOOT_SQUARED,
      roll: (0.18 * weight - 150) * SLUG_FOOT_SQUARED,
    };
    const pitch = bodyPitchInertia(total - unsprung, wheelbase / 2, wheelbase / 2);
    const roll = bodyRollInertia(total - unsprung, track);
    expect(pitch.value + pitch.halfWidth).toBeGreaterThan(0.8 * theirs.pitch - axlesInPitch);
    expect(pitch.value - pitch.halfWidth).toBeLessThan(1.2 * theirs.pitch - axlesInPitch);
    expect(roll.value + roll.halfWidth).toBeGreaterThan(0.8 * theirs.roll - axlesInRoll);
    expect(roll.value - roll.halfWidth).toBeLessThan(1.2 * theirs.roll - axlesInRoll);
  });

  it('the tyre rate grows in proportion to pressure plus an offset, through the bands of the trade', () => {
    // 33 to 37 in light-truck tyres: 80 to 160 N/mm at 10 to 15 psi, 170 to 300 at 24 to 30 psi (common practice, no source).
    const psi = 6894.757;
    for (const [low, high, from, to] of [
      [10, 15, 80e3, 160e3],
      [24, 30, 170e3, 300e3],
    ] as const) {
      fc.assert(
        fc.property(fc.double({ min: low * psi, max: high * psi, noNaN: true }), (pressure) => {
          const { value } = tyreRate(pressure);
          expect(value).toBeGreaterThan(from);
          expect(value).toBeLessThan(to);
        }),
        { seed: 3, numRuns: 50 },
      );
    }
    // Rhyne, Tire Sci. Tech. 33 (2005), from memory: 315/75R16 at 240 and 100 kPa: 330.10 and 157.28 kN/m.
    for (const [pressure, theirs] of [
      [240e3, 330.1e3],
      [100e3, 157.28e3],
    ] as const) {
      const { value, halfWidth } = tyreRate(pressure);
      expect(Math.abs(value - theirs)).toBeLessThan(halfWidth);
    }
  });
});
