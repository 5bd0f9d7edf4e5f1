import { describe, expect, it } from 'vitest';
import { numberTyped } from '../../src/quantity/number.ts';

describe('a typed number', () => {
  it.each([
    ['4', 4],
    ['4.625', 4.625],
    ['.5', 0.5],
    ['5.', 5],
    ['1.105', 1.105],
    ['1e3', 1000],
    ['1.5E-2', 0.015],
    ['007', 7],
  ])('has a decimal point in %s', (text, number) => expect(numberTyped(text)).toBe(number));

  it.each([
    ['1,5', 1.5],
    [',5', 0.5],
    ['0,125', 0.125],
    ['1,50', 1.5],
    ['1,1055', 1.1055],
    ['1105,5', 1105.5],
    ['1105,500', 1105.5],
    ['1,5e2', 150],
  ])('has a decimal comma in %s', (text, number) => expect(numberTyped(text)).toBe(number));

  it.each([
    ['1,105.5', 1105.5],
    ['12,105.', null],
    ['1,234,567', 1_234_567],
    ['1,234,567.25', 1_234_567.25],
    ['1.234,5', 1234.5],
    ['1.234,567', 1234.567],
    ['1.234.567,5', 1_234_567.5],
  ])('has thousands parted in %s', (text, number) => {
    const typed = numberTyped(text);
    if (number === null) expect(typed).toHaveProperty('trouble', 'quantity-not-understood');
    else expect(typed).toBe(number);
  });

  it.each([
    ['1,105', '1105 or 1.105'],
    ['12,500', '12500 or 12.500'],
    ['999,000', '999000 or 999.000'],
  ])('may be read in two ways in %s, so neither is taken', (text, accepted) => {
    expect(numberTyped(text)).toEqual({ trouble: 'quantity-not-understood', accepted });
  });

  it.each(['1,2,3', '1.2.3', '1,23,456', '0,123,456', '1.234.567', ',', '.', '1,', '1,234,56', '1.23,456,7'])(
    'is not understood in %s',
    (text) => {
      expect(numberTyped(text)).toEqual({ trouble: 'quantity-not-understood' });
    },
  );
});
