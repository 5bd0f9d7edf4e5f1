import { describe, expect, it } from 'vitest';
import { PROBLEM_CODES } from '../../src/finding/codes.ts';
import type { Dimension } from '../../src/finding/figure.ts';
import { LONGEST_TEXT } from '../../src/quantity/parse.ts';
import { must, mustFail } from './typed.ts';

/** Bad texts of every kind, and the code that each must give. */
const BAD: readonly (readonly [text: string, dimension: Dimension, code: string])[] = [
  ['', 'length', 'quantity-empty'],
  ['   ', 'length', 'quantity-empty'],
  ['4', 'length', 'quantity-unit-missing'],
  ['0', 'length', 'quantity-unit-missing'],
  ['4 1/8', 'length', 'quantity-unit-missing'],
  ['850', 'mass', 'quantity-unit-missing'],
  ['4 ± 1/16', 'length', 'quantity-unit-missing'],
  ['110 ± 5 %', 'length', 'quantity-unit-missing'],
  ['110 +3 mm/-1/16 in', 'length', 'quantity-unit-missing'],
  ['4 foo', 'length', 'quantity-unit-unknown'],
  ['4 in approx', 'length', 'quantity-unit-unknown'],
  ['2 mpa', 'pressure', 'quantity-unit-unknown'],
  ['4 in ± 1 foo', 'length', 'quantity-unit-unknown'],
  ['4 kg', 'length', 'quantity-unit-wrong-kind'],
  ['4 in', 'mass', 'quantity-unit-wrong-kind'],
  ['4 in', 'ratio', 'quantity-unit-wrong-kind'],
  ['5 %', 'length', 'quantity-unit-wrong-kind'],
  ['4 in ± 1 lb', 'length', 'quantity-unit-wrong-kind'],
  [`4' 6"`, 'angle', 'quantity-unit-wrong-kind'],
  ['2200 lb', 'rate', 'quantity-unit-wrong-kind'],
  ['2200 lb/in', 'force', 'quantity-unit-wrong-kind'],
  ['4 in ± -1/16', 'length', 'quantity-tolerance-crossed'],
  ['110 mm -1/+3', 'length', 'quantity-tolerance-crossed'],
  ['110 mm +3/+1', 'length', 'quantity-tolerance-crossed'],
  ['110 mm -3/-1', 'length', 'quantity-tolerance-crossed'],
  ['110 mm + -3/-1', 'length', 'quantity-tolerance-crossed'],
  ['110 mm +3/- -1', 'length', 'quantity-tolerance-crossed'],
  ['1/0 in', 'length', 'quantity-out-of-range'],
  ['4 1/0 in', 'length', 'quantity-out-of-range'],
  ['4 9/8 in', 'length', 'quantity-out-of-range'],
  ['4 8/8 in', 'length', 'quantity-out-of-range'],
  [`1' 12"`, 'length', 'quantity-out-of-range'],
  [`1.5' 6"`, 'length', 'quantity-out-of-range'],
  ['1e400 in', 'length', 'quantity-out-of-range'],
  ['1e308 km', 'length', 'quantity-out-of-range'],
  ['4 in ± 1e400', 'length', 'quantity-out-of-range'],
  ['in', 'length', 'quantity-not-understood'],
  ['abc', 'length', 'quantity-not-understood'],
  ['~', 'length', 'quantity-not-understood'],
  ['-', 'length', 'quantity-not-understood'],
  ['± 1/16', 'length', 'quantity-not-understood'],
  ['4 in ±', 'length', 'quantity-not-understood'],
  ['4 in ± unknown', 'length', 'quantity-not-understood'],
  ['4 in +3', 'length', 'quantity-not-understood'],
  ['4 in -3', 'length', 'quantity-not-understood'],
  ['4 in + 3 /', 'length', 'quantity-not-understood'],
  ['4 in ~', 'length', 'quantity-not-understood'],
  ['4 in 1/8', 'length', 'quantity-not-understood'],
  [`1' 6" 1/2`, 'length', 'quantity-not-understood'],
  ['4-5 in', 'length', 'quantity-not-understood'],
  ['4 - 5/8 in', 'length', 'quantity-not-understood'],
  ['4- 5/8 in', 'length', 'quantity-not-understood'],
  ['4 -5/8 in', 'length', 'quantity-not-understood'],
  [`1'- 6"`, 'length', 'quantity-not-understood'],
  ['4 5 in', 'length', 'quantity-not-understood'],
  ['1 105 lb', 'mass', 'quantity-not-understood'],
  ['4.5 1/8 in', 'length', 'quantity-not-understood'],
  ['4.5/8 in', 'length', 'quantity-not-understood'],
  ['1/2/3 in', 'length', 'quantity-not-understood'],
  ['(4 in)', 'length', 'quantity-not-understood'],
  ['4 in; 5 in', 'length', 'quantity-not-understood'],
  ['5 lb 4 oz', 'mass', 'quantity-not-understood'],
  ['1 ft 2 ft', 'length', 'quantity-not-understood'],
  ['1 in 2 in', 'length', 'quantity-not-understood'],
  ['١ in', 'length', 'quantity-not-understood'],
  ['1,105 lb', 'mass', 'quantity-not-understood'],
  ['1.2.3 mm', 'length', 'quantity-not-understood'],
  ['1,2,3 mm', 'length', 'quantity-not-understood'],
  ['Infinity mm', 'length', 'quantity-not-understood'],
  ['NaN', 'ratio', 'quantity-not-understood'],
  ['x'.repeat(201), 'length', 'quantity-too-long'],
];

describe('a text that cannot be read', () => {
  it.each(BAD)('"%s" as a %s gives %s', (text, dimension, code) => {
    expect(mustFail(text, dimension).code).toBe(code);
  });

  it('reaches every code of a quantity', () => {
    const reached = new Set(BAD.map(([, , code]) => code));
    expect([...reached].sort()).toEqual(PROBLEM_CODES.filter((code) => code.startsWith('quantity-')).sort());
  });

  it('names the units of this place when the unit is missing, unknown or of another kind', () => {
    for (const text of ['4', '4 foo', '4 kg', '4 in ± 1 s']) {
      expect(mustFail(text, 'length').accepted).toBe('in, ft, mm, cm, m, yd, km, mi');
    }
    expect(mustFail('3 mm', 'ratio').accepted).toBe('a number without unit, %');
  });

  it('offers both readings of a comma that may be either', () => {
    expect(mustFail('1,105 lb', 'mass').accepted).toBe('1105 or 1.105');
  });

  it('says what a fraction, feet and inches, a tolerance and a length of text may be', () => {
    expect(mustFail('1/0 in', 'length').accepted).toBe('a fraction over 1 or more');
    expect(mustFail('4 9/8 in', 'length').accepted).toBe('a fraction below 1 after a whole number');
    expect(mustFail(`1' 12"`, 'length').accepted).toBe('whole feet, then less than 12 inches');
    expect(mustFail('4 in ± -1', 'length').accepted).toContain('plus before minus');
    expect(mustFail('x'.repeat(201), 'length').accepted).toBe('at most 200 characters');
  });

  it('gives an example of its own kind when it is not understood', () => {
    expect(mustFail('?', 'length').accepted).toContain('4 1/8 in ± 1/16');
    expect(mustFail('?', 'pressure').accepted).toContain('12 psi');
  });

  it('is shown on one short line', () => {
    const { found } = mustFail(`4\n\u001b[31m ${'very '.repeat(30)}long`, 'length');
    expect(found.length).toBeLessThanOrEqual(61);
    expect(found).toMatch(/^4 \[31m very .*…$/);
    expect(mustFail('x'.repeat(60), 'length').found).toBe('x'.repeat(60));
    expect(mustFail(`${'x'.repeat(59)}😀x`, 'length').found).toBe(`${'x'.repeat(59)}😀…`);
  });
});

describe('the length limit', () => {
  it('counts the text without the blanks at its ends', () => {
    const longest = `4 in${' '.repeat(LONGEST_TEXT - 9)}± 1/2`;
    expect(longest).toHaveLength(LONGEST_TEXT);
    expect(must(`   ${longest}   `, 'length').value).toBe(0.1016);
    expect(mustFail(`${longest}5`, 'length').code).toBe('quantity-too-long');
  });
});
