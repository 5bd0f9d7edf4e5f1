import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { DIMENSIONS, type Dimension } from '../../src/finding/figure.ts';
import { UNITS } from '../../src/quantity/dimension.ts';
import { writtenQuantity } from '../../src/quantity/grammar.ts';
import { parseQuantity } from '../../src/quantity/parse.ts';
import { must } from './typed.ts';

const dimension = fc.constantFrom(...DIMENSIONS);

/** What holds for every text: one finite quantity, or one problem that says what is accepted. */
function expectOneAnswer(text: string, kind: Dimension): void {
  const where = { key: 'front.stop.gap' };
  const result = parseQuantity(text, kind, where);
  if (result.ok) {
    const { value, plus, minus } = result.value;
    expect(Number.isFinite(value)).toBe(true);
    expect(plus === null).toBe(minus === null);
    for (const half of [plus ?? 0, minus ?? 0]) {
      expect(Number.isFinite(half)).toBe(true);
      expect(half).toBeGreaterThanOrEqual(0);
    }
    expect(result.value.text).toBe(text.trim());
    expect(result.value.dimension).toBe(kind);
  } else {
    expect(result.problems).toHaveLength(1);
    const [problem] = result.problems;
    expect(problem!.code).toMatch(/^quantity-/);
    expect(problem!.accepted).not.toBe('');
    expect(problem!.found.length).toBeLessThanOrEqual(121);
    expect(problem!.where).toBe(where);
  }
}

const PIECES = [
  ...Object.values(UNITS)
    .flat()
    .flatMap(({ name, also }) => [name, ...also]),
  ...[
    '0',
    '1',
    '4',
    '16',
    '4.625',
    '1,5',
    '1,105',
    '1e3',
    '1e400',
    '5/8',
    '9/8',
    '1/0',
    '⅝',
    '½',
    '00',
    '.5',
  ],
  ...[
    '±',
    '+/-',
    '+-',
    '+',
    '-',
    '−',
    '–',
    '/',
    '~',
    '%',
    ' ',
    '  ',
    '\t',
    '(',
    ')',
    '·',
    '^',
    '²',
    '.',
    ',',
  ],
  ...["'", '"', '′', '″', "''", 'e', 'E+', '?', '🔧', '\u0000', '\ud800', 'constructor', '__proto__'],
];

describe('whatever is typed', () => {
  it('gives one quantity or one problem, for any characters at all', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 250 }), dimension, expectOneAnswer), {
      seed: 811,
      numRuns: 3000,
    });
  });

  it('gives one quantity or one problem, for pieces of quantities in any order', () => {
    const pieces = fc.array(fc.constantFrom(...PIECES), { maxLength: 12 }).map((all) => all.join(''));
    fc.assert(fc.property(pieces, dimension, expectOneAnswer), { seed: 811, numRuns: 10_000 });
  });

  it('gives one quantity or one problem, for a good text with one character changed', () => {
    const texts = ['4 1/8 in ± 1/16', `2' 7 1/4"`, '110 +3/-1 mm', '180 lb/in ± 5 %', '~ 1,5 N·s/mm'];
    const slip = fc
      .tuple(fc.constantFrom(...texts), fc.nat(20), fc.constantFrom(...PIECES, ''))
      .map(([text, at, piece]) => text.slice(0, at) + piece + text.slice(at + 1));
    fc.assert(fc.property(slip, dimension, expectOneAnswer), { seed: 811, numRuns: 5000 });
  });
});

describe('a text put together by the grammar', () => {
  const fraction = fc
    .tuple(fc.nat(62), fc.constantFrom(2, 4, 8, 16, 32, 64))
    .map(([top, bottom]) => [(top % (bottom - 1)) + 1, bottom] as const);

  it('means what whole-number arithmetic says, with every way to join the fraction', () => {
    const join = fc.constantFrom(' ', '-', '–', '  ');
    const unit = fc.constantFrom(' in', 'in', '"', '″', ' inches');
    fc.assert(
      fc.property(fc.nat(999), fraction, join, unit, (whole, [top, bottom], joint, inch) => {
        const metres = ((whole * bottom + top) * 254) / (bottom * 10_000);
        expect(must(`${whole}${joint}${top}/${bottom}${inch}`, 'length').value).toBeCloseTo(metres, 13);
      }),
      { seed: 811, numRuns: 1000 },
    );
  });

  it('means the sum of its feet and inches', () => {
    fc.assert(
      fc.property(fc.nat(99), fc.nat(11), fraction, (feet, whole, [top, bottom]) => {
        const metres = (((feet * 12 + whole) * bottom + top) * 254) / (bottom * 10_000);
        expect(must(`${feet}' ${whole} ${top}/${bottom}"`, 'length').value).toBeCloseTo(metres, 13);
      }),
      { seed: 811, numRuns: 1000 },
    );
  });

  it('means the same with the unit after the value, after the tolerance, or after both', () => {
    const amount = fc.integer({ min: 1, max: 99_999 }).map((tenths) => `${tenths / 10}`);
    const unit = fc.constantFrom('mm', 'in', 'cm', 'ft');
    fc.assert(
      fc.property(amount, amount, unit, (value, half, name) => {
        const [both, first, last] = [
          `${value} ${name} ± ${half} ${name}`,
          `${value} ${name} ± ${half}`,
          `${value} ± ${half} ${name}`,
        ].map((text) => ({ ...must(text, 'length'), text: '' }));
        expect(first).toEqual(both);
        expect(last).toEqual(both);
      }),
      { seed: 811, numRuns: 500 },
    );
  });
});

describe('the reader', () => {
  // Without the length limit of a typed text, and by count: a scan that goes back over what it has read takes more.
  it.each([
    '1',
    '1 ',
    ' ',
    'a',
    'a ',
    'a·',
    'a-',
    '(',
    'a(',
    '1/',
    '1/1',
    '/',
    '.',
    ',',
    '1,111',
    "'",
    '+',
    'e',
    '1e',
    '²',
    'm2',
  ])('takes no more than one step a character over a text that repeats "%s"', (piece) => {
    for (const [head, tail] of [
      ['', ''],
      ['4 in', ' ?'],
      ['1', 'e'],
      ['4 ', '/'],
    ]) {
      const text = head + piece.repeat(4000 / piece.length) + tail;
      const steps = stepsOver(text);
      expect(steps).toBeGreaterThan(0);
      expect(steps).toBeLessThanOrEqual(text.length);
    }
  });
});

/** How often the scanner looks for a token. It is the only sticky pattern that reads. */
function stepsOver(text: string): number {
  const { exec } = RegExp.prototype;
  let steps = 0;
  const counted = vi.spyOn(RegExp.prototype, 'exec').mockImplementation(function (this: RegExp, within) {
    if (this.sticky) steps += 1;
    return exec.call(this, within);
  });
  writtenQuantity(text);
  counted.mockRestore();
  return steps;
}
