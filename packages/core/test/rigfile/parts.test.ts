import { describe, expect, it } from 'vitest';
import { barRateOf } from '../../src/elements/anti-roll-bar.ts';
import { gasForce, rodArea } from '../../src/elements/gas-chamber.ts';
import { gasStopOf } from '../../src/elements/gas-stop.ts';
import { shockGasOf } from '../../src/elements/shock-gas.ts';
import { nominal } from '../../src/rig/reading.ts';
import { fieldsOf } from '../../src/rigfile/index.ts';
import { readTyreSize } from '../../src/rigfile/tyre-size.ts';
import { readingName } from '../../src/words/readings.ts';
import { rigOf, rigWith, SMALLEST } from './smallest-rig.ts';

const POUND = 4.4482216152605;
const PSI = 6894.757293168361;

const frontStop = (text: string) =>
  rigOf(rigWith(['    usableCrush: 3/4 in\nrear', `    usableCrush: 3/4 in\n    ${text}\nrear`])).front.stop;
const front = (text: string) =>
  rigOf(rigWith(['  spring: { rate: 160', `  ${text}\n  spring: { rate: 160`])).front;

describe('what a stop loses', () => {
  it('is read as shares, and stays unknown where it was not measured', () => {
    const stop = frontStop('hysteresis: 30 % ± 5 %');
    expect(stop.hysteresis).toMatchObject({ key: 'front.stop.hysteresis', value: 0.3 });
    expect(stop.dynamicFactor).toBeNull();
    expect(rigOf(SMALLEST).front.stop).toMatchObject({ hysteresis: null, dynamicFactor: null, gas: null });
  });

  it('by a dynamic factor takes the place of the rate factor, marked', () => {
    const text = rigWith([
      '    usableCrush: 3/4 in\nrear',
      '    usableCrush: 3/4 in\n    dynamicFactor: 1.3\nrear',
    ]);
    const { front: end, assumptions } = rigOf(text);
    expect(end.stop.rateFactor.value).toBe(0);
    expect(assumptions).toContainEqual({
      key: 'front.stop.rateFactor',
      what: 'value',
      rule: 'no-rate-factor',
    });
  });
});

describe('a gas stop', () => {
  const text =
    'gas: { rodDiameter: 30 mm, pressure: 10 bar, column: 30 mm, index: 1.3, oil: { force: 4 kN, speed: 1 m/s } }';

  it('has the curve of its gas over the usable crush and the loss of its oil', () => {
    const stop = frontStop(text);
    const chamber = { area: rodArea(0.03), pressure: 1e6, column: 0.03, index: 1.3 };
    expect(stop.crush.at(-1)).toBeCloseTo(0.01905, 12);
    expect(stop.force.at(-1)).toBeCloseTo(gasForce(chamber, 0.01905), 6);
    expect(stop.origin).toBe('measured');
    expect(stop.rateFactor.value).toBe(0);
    expect(gasStopOf(stop.gas!, 0.01905, nominal).oilFactor).toBeCloseTo(4000, 9);
  });

  it('without a column takes the one that goes with its force at full crush, marked', () => {
    const stop = frontStop('forceAtFullCrush: 5 kN\n    gas: { rodDiameter: 30 mm, pressure: 10 bar }');
    expect(stop.force.at(-1)).toBeCloseTo(5000, 3);
    expect(stop.origin).toBe('assumed');
    expect(stop.gas!.column.value - stop.gas!.column.minus).toBeGreaterThan(0.01905);
  });
});

describe('a vented stop', () => {
  const vent = (text: string) => frontStop(`vent: { ${text} }`).vent;

  it('is read by its air space and its hole, one hole with a sharp edge unless said', () => {
    expect(vent('cavity: 50 mm, hole: 8 mm')).toMatchObject({
      cavity: { key: 'front.stop.vent.cavity', value: 0.05 },
      hole: { key: 'front.stop.vent.hole', value: 0.008, plus: 0.00025 },
      count: 1,
      discharge: { key: 'front.stop.vent.discharge', value: 0.62, origin: 'assumed' },
    });
    expect(vent('cavity: 2 in, hole: 1/4 in ± 1/64, count: 3, discharge: 0.8')).toMatchObject({
      count: 3,
      discharge: { value: 0.8, origin: 'measured' },
    });
    expect(rigOf(SMALLEST).front.stop.vent).toBeNull();
  });

  it('has its discharge among what was assumed, and nothing where it was typed', () => {
    const assumed = (text: string) =>
      rigOf(
        rigWith(['    usableCrush: 3/4 in\nrear', `    usableCrush: 3/4 in\n    vent: { ${text} }\nrear`]),
      ).assumptions.filter(({ rule }) => rule === 'vent-discharge');
    expect(assumed('cavity: 50 mm, hole: 8 mm')).toEqual([
      { key: 'front.stop.vent.discharge', what: 'value', rule: 'vent-discharge' },
    ]);
    expect(assumed('cavity: 50 mm, hole: 8 mm, discharge: 0.8')).toEqual([]);
  });
});

describe('the gas and the seals of a shock', () => {
  const lengths = 'rideLength: 20 in, collapsedLength: 15 in, extendedLength: 25 in';

  it('are read and push with charge over rod, and a little more at ride', () => {
    const { shock } = front(
      `shock: { ${lengths}, gasPressure: 200 psi, rodDiameter: 7/8 in, friction: 40 N }`,
    );
    const gas = shockGasOf(shock, nominal)!;
    // 7/8 in at 200 psi is 120 lb with the shaft out (trade notes, arithmetic); in the middle a half of the rise more.
    const open = 200 * PSI * rodArea(0.875 * 0.0254);
    expect(open / POUND).toBeCloseTo(120, -0.5);
    expect(gas.force).toBeGreaterThan(1.1 * open);
    expect(gas.force).toBeLessThan(1.2 * open);
    expect(shock.friction!.value).toBe(40);
  });

  it('are left out of a push by hand, which is known no further than it went', () => {
    const { shock } = front(
      `shock: { ${lengths}, gasPressure: 200 psi, rodDiameter: 7/8 in, friction: 40 N, settings: { trail: { handPush: { speed: 2 in/s, push: 200 lb, pull: 20 lb } } } }`,
    );
    const gas = shockGasOf(shock, nominal)!.force;
    const { speed, force, knownTo, origin } = shock.settings.trail!;
    const at = (v: number) => force[speed.findIndex((each) => Math.abs(each - v) < 1e-9)]!;
    expect(at(0.0508)).toBeCloseTo(200 * POUND - gas - 40, 6);
    expect(at(-0.0508)).toBeCloseTo(-(20 * POUND + gas - 40), 6);
    expect(knownTo).toEqual({ compression: expect.closeTo(0.0508, 9), rebound: expect.closeTo(0.0508, 9) });
    expect(origin).toBe('guessed');
  });

  it('a push by hand is listed among what was assumed, a bench curve is not', () => {
    const rig = rigOf(
      rigWith([
        '  spring: { rate: 160',
        '  shock: { settings: { trail: { handPush: { speed: 2 in/s, push: 50 lb } }, bench: [[-1 m/s, -900 N], [1 m/s, 400 N]] } }\n  spring: { rate: 160',
      ]),
    );
    expect(rig.assumptions).toContainEqual({
      key: 'front.shock.settings.trail',
      what: 'value',
      rule: 'shock-hand-push',
    });
    expect(rig.front.shock.settings.bench!.knownTo).toEqual({ compression: 1, rebound: 1 });
    expect(rig.front.shock.settings.trail!.knownTo!.rebound).toBe(0);
  });
});

describe('an anti-roll bar', () => {
  it('is read by its rate at the axle or by a bench reading at its links', () => {
    const typed = front('antiRollBar: { rate: 300 N*m/deg }').antiRollBar;
    expect(barRateOf(typed, nominal)).toBeCloseTo((300 * 180) / Math.PI, 8);
    const bench = front('antiRollBar: { linkRate: 30 N/mm, linkSpread: 800 mm, linkRatio: 0.9 }').antiRollBar;
    expect(barRateOf(bench, nominal)).toBeCloseTo(30e3 * 0.72 ** 2, 8);
    expect(barRateOf(rigOf(SMALLEST).front.antiRollBar, nominal)).toBe(0);
  });
});

describe('a tyre', () => {
  it('by its size and pressure has the rate of the regression, marked', () => {
    const text = rigWith([
      '  spring: { rate: 160',
      '  tyre: { size: 315/75R16, pressure: 240 kPa }\n  spring: { rate: 160',
    ]);
    const { front: end, assumptions } = rigOf(text);
    // Rhyne, Tire Sci. Tech. 33 (2005), from memory.
    expect(end.tyre.rate.value).toBeCloseTo(330.1e3, -2);
    expect(assumptions).toContainEqual({ key: 'front.tyre.rate', what: 'value', rule: 'tyre-rate-by-size' });
  });

  it('by a press test has the slope at the load it carries, as good as a press', () => {
    const { tyre } = front('tyre: { press: [[0 mm, 0 N], [10 mm, 2 kN], [20 mm, 4 kN], [40 mm, 8 kN]] }');
    expect(tyre.rate).toMatchObject({
      key: 'front.tyre.rate',
      origin: 'measured',
      toleranceOrigin: 'assumed',
    });
    expect(tyre.rate.value).toBeCloseTo(2e5, 6);
    expect(tyre.rate.plus / tyre.rate.value).toBeCloseTo(0.05, 9);
  });

  it.each([
    ['315/70R17', 0.315, 0.7, 17],
    ['LT285/75R16', 0.285, 0.75, 16],
    ['35x12.50R17', 12.5 * 0.0254, 0.72, 17],
    ['33X10.5-15', 10.5 * 0.0254, 9 / 10.5, 15],
    ['37x12.50R17LT 124Q', 12.5 * 0.0254, 0.8, 17],
  ])('of size %s', (text, width, aspect, rim) => {
    const size = readTyreSize(text)!;
    expect(size.width).toBeCloseTo(width, 9);
    expect(size.aspect).toBeCloseTo(aspect, 9);
    expect(size.rim).toBeCloseTo(rim * 0.0254, 9);
  });

  it.each(['', '35', '315/70', '12x40R17', '999/99R17', 'big'])('%j is no size', (text) => {
    expect(readTyreSize(text)).toBeNull();
  });
});

describe('independent wheels', () => {
  const rig = rigOf(
    rigWith(['axle: { track: 60 in }', 'axle: { kind: independent, track: 60 in, unsprungMass: 260 lb }']),
  );

  it('stand as the solid axle that they move like: every part at the tyres, roll inertia mass × (track/2)²', () => {
    const { front: end } = rig;
    expect(end.kind).toBe('independent');
    for (const spread of [end.springSpread, end.shock.spread, end.stopMount.spread])
      expect(spread).toBe(end.track);
    expect(end.axleRollInertia.value).toBeCloseTo(260 * 0.45359237 * (30 * 0.0254) ** 2, 9);
    expect(rig.rear.kind).toBe('solid');
  });

  it('weigh less than a beam where nobody weighed them', () => {
    const light = rigOf(rigWith(['axle: { track: 60 in }', 'axle: { kind: independent, track: 60 in }']));
    expect(light.front.unsprungMass.value).toBeLessThan(rigOf(SMALLEST).front.unsprungMass.value);
  });
});

describe('the fields of these parts', () => {
  it('have each a name of their own', () => {
    const text = rigWith([
      '  spring: { rate: 160',
      '  shock: { settings: { trail: { handPush: { speed: 2 in/s, push: 50 lb } } } }\n  spring: { rate: 160',
    ]);
    const keys = fieldsOf(text).map(({ path }) => path.join('.'));
    for (const key of [
      'stop.gas.oil.speed',
      'stop.vent.cavity',
      'stop.vent.hole',
      'shock.gasRise',
      'antiRollBar.linkRate',
      'shock.settings.trail.handPush.pull',
    ])
      expect(keys).toContain(`front.${key}`);
    const names = keys.map(readingName);
    expect(new Set(names).size).toBe(names.length);
    for (const key of keys) expect(readingName(key)).not.toBe(key);
  });
});
