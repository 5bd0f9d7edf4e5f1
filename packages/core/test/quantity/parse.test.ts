import { describe, expect, it } from 'vitest';
import { parseQuantity } from '../../src/quantity/parse.ts';
import { must, valueIn } from './typed.ts';

const INCH = 0.0254;

describe('a length in inches', () => {
  it.each([
    ['4 in', 4],
    ['4in', 4],
    ['4"', 4],
    ['4 in.', 4],
    ['4 inches', 4],
    ['4 IN', 4],
    ['4.625 in', 4.625],
    ['.5 in', 0.5],
    ['5. in', 5],
    ['4 1/8 in', 4.125],
    ['4-5/8"', 4.625],
    ['4–5/8 in', 4.625],
    ['4 ⅝ in', 4.625],
    ['4⅝"', 4.625],
    ['½ in', 0.5],
    ['5/16 in', 0.3125],
    ['9/8 in', 1.125],
    ['1/3 in', 1 / 3],
    ['16 7⁄16 in', 16.4375],
    ['4 1/8in', 4.125],
    ['0 in', 0],
    ['1e1 in', 10],
  ])('reads %s', (text, inches) => {
    expect(valueIn(INCH, text, 'length')).toBeCloseTo(inches, 12);
  });

  it.each([
    `1'6"`,
    `1' 6"`,
    `1'-6"`,
    `1' 6`,
    `1′6″`,
    `1’6”`,
    `1'6''`,
    `1 ft 6 in`,
    `1ft6in`,
    `1 foot 6 inches`,
    `1 1/2 ft`,
    `1.5'`,
    `18"`,
  ])('reads %s as eighteen inches', (text) => {
    expect(must(text, 'length').value).toBe(0.4572);
  });

  it('reads feet, inches and a fraction', () => {
    expect(valueIn(INCH, `2' 7 1/4"`, 'length')).toBeCloseTo(31.25, 12);
    expect(valueIn(INCH, `2'-7-1/4"`, 'length')).toBeCloseTo(31.25, 12);
    expect(valueIn(INCH, `2'7¼"`, 'length')).toBeCloseTo(31.25, 12);
  });

  it('is rounded once: a shop fraction is the double nearest to its exact metres', () => {
    expect(must('4 1/8 in', 'length').value).toBe(0.104775);
    expect(must('16 7/16 in', 'length').value).toBe(0.4175125);
    expect(must('63/64 in', 'length').value).toBe(0.025003125);
  });

  it('takes every minus sign, and lets it hold for the whole', () => {
    for (const minus of ['-', '−', '–', '- ']) {
      expect(valueIn(INCH, `${minus}2 1/2 in`, 'length')).toBeCloseTo(-2.5, 12);
      expect(valueIn(INCH, `${minus}1' 6"`, 'length')).toBeCloseTo(-18, 12);
    }
    expect(must('+3 mm', 'length').value).toBe(0.003);
    expect(Object.is(must('-0 in', 'length').value, 0)).toBe(true);
  });
});

describe('the other kinds of quantity', () => {
  it.each([
    ['101.6 mm', 'length', 0.1016],
    ['10 cm', 'length', 0.1],
    ['2.4 m', 'length', 2.4],
    ['385 N/mm', 'rate', 385_000],
    ['30 mph', 'speed', 13.4112],
    ['36 km/h', 'speed', 10],
    ['36 kph', 'speed', 10],
    ['3 m/s', 'speed', 3],
    ['10 ft/s', 'speed', 3.048],
    ['100 in/s', 'speed', 2.54],
    ['2 g', 'acceleration', 19.6133],
    ['9.8 m/s²', 'acceleration', 9.8],
    ['9.8 m/s^2', 'acceleration', 9.8],
    ['9.8 m/s2', 'acceleration', 9.8],
    ['10 ft/s2', 'acceleration', 3.048],
    ['250 kg·m²', 'inertia', 250],
    ['250 kg m2', 'inertia', 250],
    ['180 deg', 'angle', Math.PI],
    ['180°', 'angle', Math.PI],
    ['0.2 rad', 'angle', 0.2],
    ['0.3 s/m', 'stiffnessOverSpeed', 0.3],
    ['0.0254 s/in', 'stiffnessOverSpeed', 1],
    ['3000 N·s/m', 'damping', 3000],
    ['3000 N s/m', 'damping', 3000],
    ['3000 N*s/m', 'damping', 3000],
    ['3 N·s/mm', 'damping', 3000],
    ['0.1 cycles/m', 'wavenumber', 0.1],
    ['0.1 1/m', 'wavenumber', 0.1],
    ['256 cm³', 'roughness', 256e-6],
    ['256 cm^3', 'roughness', 256e-6],
    ['256 cm3', 'roughness', 256e-6],
    ['0.000256 m3', 'roughness', 256e-6],
    ['0.1/m', 'wavenumber', 0.1],
    ['0.3048 cycles/ft', 'wavenumber', 1],
    ['83 kPa', 'pressure', 83_000],
    ['1.2 bar', 'pressure', 120_000],
    ['2 MPa', 'pressure', 2_000_000],
    ['1220 J', 'energy', 1220],
    ['1220 N·m', 'energy', 1220],
    ['250 ms', 'time', 0.25],
    ['1.3 Hz', 'frequency', 1.3],
    ['500 kg', 'mass', 500],
    ['0.5 t', 'mass', 500],
    ['8 %', 'ratio', 0.08],
    ['8%', 'ratio', 0.08],
    ['0.94', 'ratio', 0.94],
    ['1/2', 'ratio', 0.5],
  ] as const)('reads %s as a %s', (text, dimension, si) => {
    expect(must(text, dimension).value).toBeCloseTo(si, 10);
  });

  it('reads a pound as a mass where a mass belongs, and as its weight where a force belongs', () => {
    expect(must('1 lb', 'mass').value).toBe(0.45359237);
    expect(must('1 lb', 'force').value).toBe(4.4482216152605);
    expect(must('1 lb', 'force').value).toBe(must('1 lbf', 'force').value);
    expect(must('2200 lb/in', 'rate').value).toBe(must('2200 lbf/in', 'rate').value);
    expect(must('17 lb·s/in', 'damping').value).toBe(must('17 lbf·s/in', 'damping').value);
    expect(must('900 ft-lb', 'energy').value).toBe(must('900 ft·lbf', 'energy').value);
  });

  it('reads a kilogram as its weight in force and rate', () => {
    expect(must('1 kg', 'force').value).toBe(9.80665);
    expect(must('9 kg/mm', 'rate').value).toBe(must('9 kgf/mm', 'rate').value);
  });
});

describe('a tolerance', () => {
  it.each([
    '4 1/8 in ± 1/16',
    '4 1/8 in ± 1/16 in',
    '4 1/8 ± 1/16 in',
    '4 1/8" +/- 1/16"',
    '4 1/8 in +- 1/16',
  ])('of a sixteenth is read in %s', (text) => {
    const { value, plus, minus } = must(text, 'length');
    expect(value).toBe(0.104775);
    expect(plus).toBe(0.0015875);
    expect(minus).toBe(0.0015875);
  });

  it.each([
    '110 mm +3/-1 mm',
    '110 mm +3/-1',
    '110 +3/-1 mm',
    '110 mm +3 mm/-1 mm',
    '110 mm +3 -1',
    '110mm+3/−1',
    '110 mm + 3 / - 1',
    '11 cm +3 mm/-1',
    '11 cm +3/-1 mm',
  ])('with two halves is read in %s', (text) => {
    const { value, plus, minus } = must(text, 'length');
    expect([value, plus, minus]).toEqual([0.11, 0.003, 0.001]);
  });

  it('may be in another unit than the value, and its halves in different ones', () => {
    expect(must('4 in ± 1 mm', 'length')).toMatchObject({ value: 0.1016, plus: 0.001, minus: 0.001 });
    const mixed = must('110 mm +1/16 in/-1 mm', 'length');
    expect(mixed.plus).toBe(0.0015875);
    expect(mixed.minus).toBe(0.001);
  });

  it('takes the last unit of feet and inches', () => {
    expect(must(`2' 7" ± 1/4`, 'length').plus).toBeCloseTo(0.25 * INCH, 15);
    expect(must(`2' 7 ± 1/4`, 'length').plus).toBeCloseTo(0.25 * INCH, 15);
    expect(must(`20 ft ± 1' 6"`, 'length').plus).toBe(0.4572);
  });

  it('in per cent is a share of the value', () => {
    const { value, plus, minus } = must('180 lb/in ± 5 %', 'rate');
    expect(plus! / value).toBeCloseTo(0.05, 14);
    expect(minus).toBe(plus);
    expect(must('-20 mm ± 5 %', 'length').plus).toBeCloseTo(0.001, 15);
    expect(must('200 mm +5/-10 %', 'length')).toMatchObject({ plus: 0.01, minus: 0.02 });
    expect(must('0.94 ± 2 %', 'ratio').plus).toBeCloseTo(0.0188, 14);
  });

  it('in per cent of a value in per cent is in points', () => {
    for (const text of ['8 % ± 1 %', '8 % ± 1', '8% ±1%']) {
      expect(must(text, 'ratio')).toMatchObject({ value: 0.08, plus: 0.01, minus: 0.01 });
    }
  });

  it('may be nothing on one side, or on both', () => {
    expect(must('110 mm +3/-0', 'length')).toMatchObject({ plus: 0.003, minus: 0 });
    expect(must('110 mm ± 0', 'length')).toMatchObject({ plus: 0, minus: 0 });
  });

  it('that was not typed is null, not zero', () => {
    expect(must('4 in', 'length')).toMatchObject({ plus: null, minus: null });
  });
});

describe('an assumed value', () => {
  it.each(['~ 4 in', '~4 in', '≈ 4 in'])('is marked in %s', (text) => {
    expect(must(text, 'length')).toMatchObject({ value: 0.1016, assumed: true });
  });

  it('may have a tolerance, and is told from a measured one', () => {
    expect(must('~ 4 in ± 1/2', 'length')).toMatchObject({ plus: 0.0127, assumed: true });
    expect(must('4 in ± 1/2', 'length').assumed).toBe(false);
  });
});

describe('the text as typed', () => {
  it('is kept without the blanks at its ends, whatever characters it has', () => {
    expect(must('  4 ⅝ in  ', 'length').text).toBe('4 ⅝ in');
    expect(must('1′6″ +/- 1/4', 'length').text).toBe('1′6″ +/- 1/4');
  });

  it('may hold odd blanks', () => {
    expect(must('4\u00a01/8\u202fin\t±\u20091/16', 'length').value).toBe(0.104775);
  });

  it('goes into the problem together with where it stands', () => {
    const where = { file: 'a.rig.yaml', line: 7, key: 'front.stop.gap' };
    const result = parseQuantity(' 4 kg ', 'length', where);
    expect(result).toEqual({
      ok: false,
      problems: [
        {
          code: 'quantity-unit-wrong-kind',
          where,
          found: '4 kg',
          accepted: 'in, ft, mm, cm, m, yd, km, mi',
        },
      ],
    });
  });
});
