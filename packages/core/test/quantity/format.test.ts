import { describe, expect, it } from 'vitest';
import { formatFigure, formatQuantity, formatValue } from '../../src/quantity/format.ts';
import type { UnitSystem } from '../../src/quantity/quantity.ts';
import { must } from './typed.ts';

const INCH = 0.0254;
const shop = { system: 'shop' } as const;
const metric = { system: 'metric' } as const;

/** A length in inches, and its half-width, as the shop writes it. */
const inches = (value: number, tolerance: number | null): string =>
  formatFigure(
    { dimension: 'length', value: value * INCH, tolerance: tolerance === null ? null : tolerance * INCH },
    shop,
  );

/** A figure of any kind in its own SI unit, written in the metric system. */
const millimetres = (value: number, tolerance: number | null): string =>
  formatFigure(
    { dimension: 'length', value: value / 1000, tolerance: tolerance === null ? null : tolerance / 1000 },
    metric,
  );

describe('a shop length', () => {
  it.each([
    [4, '4 in'],
    [4.125, '4 1/8 in'],
    [4.5, '4 1/2 in'],
    [0.625, '5/8 in'],
    [4.3125, '4 5/16 in'],
    [4.13, '4 1/8 in'],
    [4.17, '4 3/16 in'],
    [3.97, '4 in'],
    [0, '0 in'],
    [-0, '0 in'],
    [0.03, '0 in'],
    [-0.03, '0 in'],
    [-0.625, '-5/8 in'],
    [-1.625, '-1 5/8 in'],
    [239.9375, '239 15/16 in'],
    [239.99, '20 ft 0 in'],
    [240, '20 ft 0 in'],
    [944.75, '78 ft 8 3/4 in'],
    [-944.75, '-78 ft 8 3/4 in'],
    [2e6, '2000000 in'],
    [-2e6, '-2000000 in'],
  ])('of %s in, its tolerance not told, is to the nearest sixteenth: %s', (value, text) => {
    expect(formatValue(value * INCH, 'length', shop)).toBe(text);
  });

  it.each([
    [4.125, 1 / 16, '4 1/8 in ± 1/16'],
    [4.17, 1 / 16, '4 3/16 in ± 1/16'],
    [4.16, 0.1, '4 3/16 in ± 7/64'],
    [4.17, 1 / 8, '4 3/16 in ± 1/8'],
    [4.17, 1 / 4, '4 1/8 in ± 1/4'],
    [4.17, 1 / 2, '4 1/4 in ± 1/2'],
    [4.3, 1, '4 1/2 in ± 1'],
    [4.3, 2, '4 in ± 2'],
    [44.3, 5, '44 in ± 5'],
    [44.3, 5.01, '44 in ± 5'],
    [44.3, 5.1, '44 in ± 6'],
    [4.3, 1.3, '4 1/2 in ± 1 1/2'],
    [4.17, 1 / 32, '4 5/32 in ± 1/32'],
    [4.17, 0.0394, '4 5/32 in ± 3/64'],
    [4.17, 0.126, '4 3/16 in ± 1/8'],
    [4.17, 0.14, '4 3/16 in ± 5/32'],
    [4.17, 0.28, '4 1/8 in ± 5/16'],
    [-0.5, 1 / 16, '-1/2 in ± 1/16'],
    [944.75, 1 / 16, '78 ft 8 3/4 in ± 1/16'],
    [936, 1 / 16, '78 ft 0 in ± 1/16'],
  ])('of %s in ± %s in has the marks that its tolerance allows: %s', (value, tolerance, text) => {
    expect(inches(value, tolerance)).toBe(text);
  });

  it.each([
    [4.125, 0.029, '4.125 in ± 0.029'],
    [4.125, 0.004, '4.125 in ± 0.004'],
    [4.1, 0.0012, '4.1000 in ± 0.0012'],
    [4.125, 0.0007, '4.1250 in ± 0.0007'],
    [4.1, 1.5e-7, '4.10000000 in ± 0.00000015'],
    [4.1, 1.5e-14, '4.1 in ± 1.5e-14'],
    [2.0378023528169985e-16, 2.4e-16, '2.0e-16 in ± 2.4e-16'],
  ])('of %s in ± %s in is finer than any rule, so it is in decimal inches: %s', (value, tolerance, text) => {
    expect(inches(value, tolerance)).toBe(text);
  });

  it('never loses a tolerance', () => {
    for (let tolerance = 1e-15; tolerance < 1e6; tolerance *= 1.7) {
      expect(inches(4, tolerance)).not.toMatch(/± 0(\.0*)?$/);
    }
  });

  it.each([
    [0.375, '3/8 in'],
    [4.125, '4 1/8 in'],
    [25 / 64, '25/64 in'],
    [0, '0 in'],
    [-0.375, '-3/8 in'],
    [944.75, '78 ft 8 3/4 in'],
    // Ten millimetres, an eighth of a metre: on no mark, but round where they were chosen.
    [10 / 25.4, '10 mm'],
    [12.5 / 25.4, '12.5 mm'],
    [-10 / 25.4, '-10 mm'],
    // Round nowhere: worked out from exact numbers.
    [4.1234, '4.1234 in'],
    [1 / 3, '0.33333 in'],
  ])(
    'that is exact (%s in) stands alone, on its mark or in millimetres where it is round: %s',
    (value, text) => {
      expect(inches(value, 0)).toBe(text);
    },
  );

  it('whose tolerance nobody knows says so', () => {
    expect(inches(4.125, null)).toBe('4 1/8 in ± unknown');
    expect(inches(4.125, -1)).toBe('4 1/8 in ± unknown');
    expect(inches(4.125, Number.NaN)).toBe('4 1/8 in ± unknown');
    expect(inches(4.125, Number.POSITIVE_INFINITY)).toBe('4 1/8 in ± unknown');
  });
});

describe('a metric length', () => {
  it.each([
    [101.6, 1.5875, '101.6 mm ± 1.6'],
    [101.6, 1, '101.6 mm ± 1.0'],
    [101.6, 2.9, '101.6 mm ± 2.9'],
    [101.6, 3, '102 mm ± 3'],
    [101.6, 3.2, '101.6 mm ± 3.2'],
    [101.6, 12, '102 mm ± 12'],
    [101.6, 12.04, '102 mm ± 12'],
    [101.6, 12.1, '102 mm ± 13'],
    [1016, 120, '1020 mm ± 120'],
    [1016, 300, '1000 mm ± 300'],
    [101.6, 0.05, '101.60 mm ± 0.05'],
    [101.6, 0.999, '101.6 mm ± 1.0'],
    [101.6, null, '101.6 mm ± unknown'],
    [101.64, null, '101.6 mm ± unknown'],
    [2413.4, null, '2413 mm ± unknown'],
    [0, null, '0 mm ± unknown'],
    [-0.2, 3, '0 mm ± 3'],
    [-15.875, 6.35, '-15.9 mm ± 6.4'],
    [101.6, 0, '101.6 mm'],
    [9.525, 0, '9.525 mm'],
    [1219.2, 0, '1219.2 mm'],
    [101.61234, 0, '101.61 mm'],
    [0, 0, '0 mm'],
    [9999, null, '9999 mm ± unknown'],
    [10_000, null, '10 m ± unknown'],
    [23_977, 25.4, '23.977 m ± 0.026'],
    [-23_977, null, '-23.98 m ± unknown'],
  ])('of %s mm ± %s mm is written %s', (value, tolerance, text) => {
    expect(millimetres(value, tolerance)).toBe(text);
  });
});

describe('the other kinds', () => {
  it.each([
    ['850 lb ± 5', 'mass', '850 lb ± 5', '385.6 kg ± 2.3'],
    ['1200 lbf ± 50', 'force', '1200 lb ± 50', '5340 N ± 230'],
    ['180 lb/in ± 5 %', 'rate', '180 lb/in ± 9', '31.5 N/mm ± 1.6'],
    ['17 lb·s/in ± 2', 'damping', '17.0 lb·s/in ± 2.0', '2980 N·s/m ± 350'],
    ['12 psi ± 1/2', 'pressure', '12.0 psi ± 0.5', '82.7 kPa ± 3.5'],
    ['30 mph ± 1', 'speed', '30.0 mph ± 1.0', '48.3 km/h ± 1.7'],
    ['2.5 g ± 0.3', 'acceleration', '2.5 g ± 0.3', '25 m/s² ± 3'],
    ['12.5° ± 0.5', 'angle', '12.5 deg ± 0.5', '12.5 deg ± 0.5'],
    ['250 ms ± 10', 'time', '0.250 s ± 0.010', '0.250 s ± 0.010'],
    ['1.32 Hz ± 0.11', 'frequency', '1.32 Hz ± 0.11', '1.32 Hz ± 0.11'],
    ['505 kg·m² ± 10 %', 'inertia', '12000 lb·ft² ± 1200', '505 kg·m² ± 51'],
    ['900 ft·lb ± 40', 'energy', '900 ft·lb ± 40', '1220 J ± 55'],
    ['0.3 s/m ± 0.1', 'stiffnessOverSpeed', '0.091 s/ft ± 0.031', '0.30 s/m ± 0.10'],
    ['0.1 cycles/m ± 0.01', 'wavenumber', '0.0305 cycles/ft ± 0.0031', '0.100 cycles/m ± 0.010'],
    ['256 cm³ ± 20', 'roughness', '256 cm³ ± 20', '256 cm³ ± 20'],
    ['0.94 ± 0.02', 'ratio', '0.940 ± 0.020', '0.940 ± 0.020'],
  ] as const)(
    'typed as %s (%s) are written %s in the shop and %s in metric',
    (typed, dimension, inShop, inMetric) => {
      const { value, plus: tolerance } = must(typed, dimension);
      expect(formatFigure({ dimension, value, tolerance }, shop)).toBe(inShop);
      expect(formatFigure({ dimension, value, tolerance }, metric)).toBe(inMetric);
    },
  );

  it('may be asked for in another unit of theirs', () => {
    expect(formatValue(0.48, 'ratio', { ...shop, unit: '%' })).toBe('48 %');
    expect(formatFigure({ dimension: 'ratio', value: 0.08, tolerance: 0.01 }, { ...shop, unit: '%' })).toBe(
      '8.0 % ± 1.0',
    );
    expect(formatValue(2.54, 'speed', { ...metric, unit: 'in/s' })).toBe('100 in/s');
    expect(formatValue(0.104775, 'length', { ...metric, unit: 'in' })).toBe('4 1/8 in');
    expect(() => formatValue(1, 'speed', { ...metric, unit: 'kg' })).toThrow("no unit 'kg' for speed");
  });

  it('that are exact stand alone, and what nobody knows says so: the two are never written alike', () => {
    const of = (tolerance: number | null) =>
      formatFigure({ dimension: 'acceleration', value: 24.516625, tolerance }, metric);
    expect(of(0)).toBe('24.517 m/s²');
    expect(of(null)).toBe('24.52 m/s² ± unknown');
    expect(formatFigure({ dimension: 'ratio', value: 1, tolerance: 0 }, shop)).toBe('1');
    expect(formatFigure({ dimension: 'length', value: 0.01, tolerance: 0 }, { ...shop, unit: 'in' })).toBe(
      '0.3937 in',
    );
  });

  it('that are not finite are unknown', () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
      expect(formatValue(value, 'length', shop)).toBe('unknown');
      expect(formatFigure({ dimension: 'mass', value, tolerance: 1 }, metric)).toBe('unknown');
    }
  });

  it('keep whole numbers whole, and small ones in sight', () => {
    expect(formatValue(123_456, 'force', metric)).toBe('123456 N');
    expect(formatValue(0.000123456, 'time', metric)).toBe('0.0001235 s');
    expect(formatValue(1.5e-11, 'time', metric)).toBe('1.5e-11 s');
    expect(formatValue(3, 'time', metric)).toBe('3 s');
  });
});

describe('a quantity that was typed', () => {
  it.each(['4 ⅝ in +/- 1/16', '~ 4 in', '110 +3/-1 mm', '1\'-6"'])('gives %s back untouched', (text) => {
    for (const system of ['shop', 'metric'] satisfies UnitSystem[]) {
      expect(formatQuantity(must(text, 'length'), { system })).toBe(text);
    }
  });

  it('and lost its text is written anew, with all that it says', () => {
    const anew = (text: string, system: UnitSystem): string =>
      formatQuantity({ ...must(text, 'length'), text: '' }, { system });
    expect(anew('101.6 mm ± 1/16 in', 'shop')).toBe('4 in ± 1/16');
    expect(anew('~ 101.6 mm', 'shop')).toBe('~ 4 in');
    expect(anew('4 in +1/8 -1/16', 'shop')).toBe('4 in +1/8/-1/16');
    expect(anew('4 in +1/8 -0', 'shop')).toBe('4 in +1/8/-0');
    // To be read again: without the ± 0 it would be filled with the tolerance of the usual tool.
    expect(anew('4 in ± 0', 'metric')).toBe('101.6 mm ± 0');
    expect(anew('10 mm ± 0', 'shop')).toBe('10 mm ± 0');
    expect(anew('110 +3/-1 mm', 'metric')).toBe('110.0 mm +3.0/-1.0');
  });
});
