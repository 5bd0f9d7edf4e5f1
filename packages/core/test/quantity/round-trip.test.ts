import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DIMENSIONS, type Figure } from '../../src/finding/figure.ts';
import { formatFigure, formatQuantity, formatValue } from '../../src/quantity/format.ts';
import { must } from './typed.ts';

const RUNS = { seed: 20, numRuns: 1500 };

const system = fc.constantFrom('shop' as const, 'metric' as const);
const dimension = fc.constantFrom(...DIMENSIONS);
/** Six decades, both signs, and nothing. */
const value = fc.oneof(
  fc.constant(0),
  fc
    .tuple(fc.constantFrom(-1, 1), fc.double({ min: -3, max: 3, noNaN: true }))
    .map(([sign, power]) => sign * 10 ** power),
);
const tolerance = fc.double({ min: -6, max: 2, noNaN: true }).map((power) => 10 ** power);
const figure = fc.record<Figure>({ dimension, value, tolerance });

describe('text made from a figure', () => {
  it('is read back to within half of the tolerance that stands beside it', () => {
    fc.assert(
      fc.property(figure, system, (made, units) => {
        const read = must(formatFigure(made, { system: units }), made.dimension);
        expect(read.minus).toBe(read.plus);
        expect(Math.abs(read.value - made.value)).toBeLessThanOrEqual(read.plus! / 2 + 1e-12);
      }),
      RUNS,
    );
  });

  it('never claims to know more than the figure, and not much less', () => {
    fc.assert(
      fc.property(figure, system, (made, units) => {
        const share = must(formatFigure(made, { system: units }), made.dimension).plus! / made.tolerance!;
        expect(share).toBeGreaterThan(0.99 - 1e-9);
        expect(share).toBeLessThan(made.dimension === 'length' && units === 'shop' ? 1.5 : 1.1);
      }),
      RUNS,
    );
  });

  it('of a shop length holds the same where the marks change, from 1/64 in to 1 ft', () => {
    for (let inches = 1 / 64; inches < 12; inches *= 1.003) {
      const tolerance = inches * 0.0254;
      const text = formatFigure({ dimension: 'length', value: 0.1, tolerance }, { system: 'shop' });
      const { value: read, plus } = must(text, 'length');
      expect(plus! / tolerance).toBeGreaterThan(0.99 - 1e-9);
      expect(plus! / tolerance).toBeLessThan(1.5);
      expect(Math.abs(read - 0.1)).toBeLessThanOrEqual(plus! / 2 + 1e-12);
      expect(formatQuantity({ ...must(text, 'length'), text: '' }, { system: 'shop' })).toBe(text);
    }
  });

  it('is read back to the nearest sixteenth, or to four digits, when the tolerance is not told', () => {
    fc.assert(
      fc.property(dimension, value, system, (kind, made, units) => {
        const read = must(formatValue(made, kind, { system: units }), kind).value;
        const resolution = kind === 'length' && units === 'shop' ? 0.0254 / 32 : 5e-4 * Math.abs(made);
        expect(Math.abs(read - made)).toBeLessThanOrEqual(resolution + 1e-12);
      }),
      RUNS,
    );
  });

  it('of an exact value is read back to five digits, and shows no tolerance', () => {
    fc.assert(
      fc.property(dimension, value, system, (kind, made, units) => {
        const text = formatFigure({ dimension: kind, value: made, tolerance: 0 }, { system: units });
        expect(text).not.toContain('±');
        expect(Math.abs(must(text, kind).value - made)).toBeLessThanOrEqual(5e-5 * Math.abs(made) + 1e-12);
      }),
      RUNS,
    );
  });

  it('stays the same when it is typed in and written again', () => {
    fc.assert(
      fc.property(figure, system, (made, units) => {
        // close to 10 m and 20 ft another unit takes over
        fc.pre(made.dimension !== 'length' || Math.abs(made.value) < 5);
        const text = formatFigure(made, { system: units });
        const again = { ...must(text, made.dimension), text: '' };
        expect(formatQuantity(again, { system: units })).toBe(text);
      }),
      RUNS,
    );
  });
});
