import Qty from 'js-quantities';
import { unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { DIMENSIONS, type Dimension } from '../../src/finding/figure.ts';
import { EXAMPLES, fromSi, toSi, UNITS } from '../../src/quantity/dimension.ts';
import { acceptedUnits, unitNamed } from '../../src/quantity/unit-name.ts';
import { must } from './typed.ts';

/** Each of our units as mathjs spells it; a slug, which it lacks, as lbf·s²/ft. */
const IN_MATHJS: Readonly<
  Record<
    Exclude<Dimension, 'ratio'>,
    { readonly si: string; readonly units: Readonly<Record<string, string>> }
  >
> = {
  length: {
    si: 'm',
    units: { in: 'in', ft: 'ft', mm: 'mm', cm: 'cm', m: 'm', yd: 'yd', km: 'km', mi: 'mi' },
  },
  mass: {
    si: 'kg',
    units: { lb: 'lbm', kg: 'kg', oz: 'oz', g: 'g', t: 'tonne', slug: 'lbf s^2/ft' },
  },
  force: { si: 'N', units: { lb: 'lbf', N: 'N', kN: 'kN', kgf: 'kgf' } },
  rate: {
    si: 'N/m',
    units: {
      'lb/in': 'lbf/in',
      'N/mm': 'N/mm',
      'N/m': 'N/m',
      'lb/ft': 'lbf/ft',
      'kgf/mm': 'kgf/mm',
      'kgf/cm': 'kgf/cm',
    },
  },
  damping: {
    si: 'N s/m',
    units: { 'lb·s/in': 'lbf s/in', 'N·s/m': 'N s/m', 'N·s/mm': 'N s/mm', 'lb·s/ft': 'lbf s/ft' },
  },
  // not its own psi, which it carries to 11 digits only
  pressure: { si: 'Pa', units: { psi: 'lbf/in^2', kPa: 'kPa', bar: 'bar', MPa: 'MPa', Pa: 'Pa' } },
  speed: {
    si: 'm/s',
    units: { mph: 'mi/h', 'km/h': 'km/h', 'm/s': 'm/s', 'ft/s': 'ft/s', 'in/s': 'in/s', 'mm/s': 'mm/s' },
  },
  acceleration: { si: 'm/s^2', units: { g: 'kgf/kg', 'm/s²': 'm/s^2', 'ft/s²': 'ft/s^2' } },
  angle: { si: 'rad', units: { deg: 'deg', rad: 'rad' } },
  time: { si: 's', units: { s: 's', ms: 'ms', min: 'minute', h: 'h' } },
  frequency: { si: 'Hz', units: { Hz: 'Hz', 'cycles/min': 'minute^-1', rpm: 'minute^-1' } },
  inertia: {
    si: 'kg m^2',
    units: {
      'lb·ft²': 'lbm ft^2',
      'kg·m²': 'kg m^2',
      'slug·ft²': 'lbf s^2 ft',
      'lb·in²': 'lbm in^2',
    },
  },
  energy: { si: 'J', units: { ft·lb: 'ft lbf', J: 'J', kJ: 'kJ', in·lb: 'in lbf' } },
  stiffnessOverSpeed: { si: 's/m', units: { 's/m': 's/m', 's/ft': 's/ft', 's/in': 's/in', 's/mm': 's/mm' } },
  rollRate: {
    si: 'N m/rad',
    units: {
      'lb·ft/deg': 'lbf ft/deg',
      'N·m/rad': 'N m/rad',
      'N·m/deg': 'N m/deg',
      'lb·in/deg': 'lbf in/deg',
      'kN·m/rad': 'kN m/rad',
    },
  },
  power: { si: 'W', units: { W: 'W', kW: 'kW' } },
  vibrationDose: { si: 'm/s^1.75', units: { 'm/s^1.75': 'm/s^1.75' } },
  roughness: { si: 'm^3', units: { 'cm³': 'cm^3', 'm³': 'm^3', 'in²·ft': 'in^2 ft' } },
  wavenumber: { si: 'm^-1', units: { 'cycles/m': 'm^-1', 'cycles/ft': 'ft^-1' } },
};

const PHYSICAL = DIMENSIONS.filter((dimension) => dimension !== 'ratio');
const EVERY_UNIT = PHYSICAL.flatMap((dimension) =>
  UNITS[dimension].map((each) => [dimension, each] as const),
);

describe('the factors', () => {
  it.each(EVERY_UNIT)('of %s agree with mathjs to 1e-12: $name', (dimension, ours) => {
    const { si, units } = IN_MATHJS[dimension as Exclude<Dimension, 'ratio'>];
    const theirs = unit(1, units[ours.name]!).toNumber(si);
    expect(Math.abs(toSi(1, ours) / theirs - 1)).toBeLessThan(1e-12);
  });

  it.each([
    ['in', 'length', 'in'],
    ['yd', 'length', 'yd'],
    ['mi', 'length', 'mi'],
    ['lb', 'mass', 'lb'],
    ['oz', 'mass', 'oz'],
    ['slug', 'mass', 'slug'],
    ['lb', 'force', 'lbf'],
    ['lb/in', 'rate', 'lbf/in'],
    ['lb·s/in', 'damping', 'lbf*s/in'],
    ['psi', 'pressure', 'psi'],
    ['bar', 'pressure', 'bar'],
    ['mph', 'speed', 'mph'],
    ['km/h', 'speed', 'kph'],
    ['g', 'acceleration', 'gee'],
    ['deg', 'angle', 'deg'],
    ['lb·ft²', 'inertia', 'lb*ft^2'],
    ['slug·ft²', 'inertia', 'slug*ft^2'],
    ['ft·lb', 'energy', 'ft*lbf'],
  ] as const)('of %s as a %s agrees with js-quantities to 1e-6', (name, dimension, theirs) => {
    const ours = toSi(1, unitNamed(name, dimension)!);
    expect(Math.abs(ours / new Qty(1, theirs).toBase().scalar - 1)).toBeLessThan(1e-6);
  });

  // NIST SP 811 (2008), App. B.8, exact entries; from memory, the table itself was not opened for this test.
  it.each([
    ['1 in', 'length', 0.0254],
    ['1 ft', 'length', 0.3048],
    ['1 yd', 'length', 0.9144],
    ['1 mi', 'length', 1609.344],
    ['1 lb', 'mass', 0.45359237],
    ['1 kgf', 'force', 9.80665],
    ['1 lbf', 'force', 4.4482216152605],
    ['1 mph', 'speed', 0.44704],
    ['1 ft/s²', 'acceleration', 0.3048],
    ['1 g', 'acceleration', 9.80665],
    ['1 bar', 'pressure', 1e5],
  ] as const)('give %s to the last bit', (text, dimension, exact) => {
    expect(must(text, dimension).value).toBe(exact);
  });

  it('go back the way they came', () => {
    for (const [, each] of EVERY_UNIT) expect(fromSi(toSi(1.7, each), each)).toBeCloseTo(1.7, 14);
  });

  it('make a per cent a hundredth', () => expect(must('1 %', 'ratio').value).toBe(0.01));
});

describe('the spellings', () => {
  it.each(DIMENSIONS)('of %s each mean one unit, in any case', (dimension) => {
    const folded = UNITS[dimension].flatMap(({ name, also }) =>
      [name, ...also].map((each) => each.toLowerCase()),
    );
    expect(new Set(folded).size).toBe(folded.length);
  });

  it.each(DIMENSIONS)('of %s are all found, and read after a number', (dimension) => {
    for (const each of UNITS[dimension]) {
      for (const spelling of [each.name, ...each.also]) {
        expect(unitNamed(spelling, dimension)).toBe(each);
        expect(must(`1 ${spelling}`, dimension).value).toBe(toSi(1, each));
      }
    }
  });

  it('of a product and of a square may use whatever key is at hand', () => {
    const product = unitNamed('ft·lb', 'energy');
    for (const typed of ['ft lb', 'ft-lb', 'ft*lb', 'ft.lb', 'ft · lb', 'FT-LB', 'ft-lbs', 'lb ft']) {
      expect(unitNamed(typed, 'energy')).toBe(product);
    }
    const square = unitNamed('kg·m²', 'inertia');
    for (const typed of ['kg m2', 'kg*m^2', 'kg.m²', 'KG M2'])
      expect(unitNamed(typed, 'inertia')).toBe(square);
  });

  it('of mega keep their capital, because a small m would be a milli', () => {
    expect(unitNamed('MPa', 'pressure')).toBeDefined();
    expect(unitNamed('mPa', 'pressure')).toBeUndefined();
    expect(unitNamed('MM', 'length')).toBe(unitNamed('mm', 'length'));
  });

  it('are listed for a person', () => {
    expect(acceptedUnits('speed')).toBe('mph, km/h, m/s, ft/s, in/s, mm/s');
    for (const dimension of DIMENSIONS) expect(acceptedUnits(dimension)).not.toBe('');
  });

  it('in the examples are read as what they are an example of', () => {
    for (const dimension of DIMENSIONS) {
      for (const text of EXAMPLES[dimension].split(' or ')) must(text, dimension);
    }
  });
});
