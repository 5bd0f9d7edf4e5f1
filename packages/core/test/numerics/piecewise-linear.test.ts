import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linearValue, piecewiseLinear } from '../../src/numerics/piecewise-linear.ts';

// Against NumPy's interp: validation/checks/interpolation/straight-shock-table.json.

const SPEED = [-2, -0.5, 0, 0.2, 1];
const FORCE = [-4000, -1900, 0, 400, 1500];
const table = piecewiseLinear(SPEED, FORCE);

describe('a table read by straight lines', () => {
  it('goes through every point', () => {
    expect(SPEED.map((v) => linearValue(table, v))).toEqual(FORCE);
  });

  it('stands in the middle between two points at half way', () => {
    expect(linearValue(table, 0.1)).toBeCloseTo(200, 12);
    expect(linearValue(table, -1.25)).toBeCloseTo(-2950, 10);
  });

  it('carries the end slopes on', () => {
    expect(linearValue(table, 3)).toBeCloseTo(1500 + (2 * 1100) / 0.8, 9);
    expect(linearValue(table, -3)).toBeCloseTo(-4000 - 2100 / 1.5, 9);
  });

  it('keeps a table that rises rising, inside and beyond it', () => {
    const steps = fc.array(
      fc.tuple(fc.double({ min: 0.01, max: 2, noNaN: true }), fc.double({ min: 0, max: 900, noNaN: true })),
      {
        minLength: 1,
        maxLength: 12,
      },
    );
    const place = fc.double({ min: -10, max: 30, noNaN: true });
    fc.assert(
      fc.property(steps, place, place, (rows, one, other) => {
        const x = [0];
        const y = [0];
        for (const [dx, dy] of rows) {
          x.push(x[x.length - 1] + dx);
          y.push(y[y.length - 1] + dy);
        }
        const risen = piecewiseLinear(x, y);
        const [low, high] = one < other ? [one, other] : [other, one];
        expect(linearValue(risen, high)).toBeGreaterThanOrEqual(linearValue(risen, low) - 1e-9);
      }),
      { seed: 20, numRuns: 300 },
    );
  });

  it('refuses one point, uneven lists and places that do not rise: that is a mistake of the program', () => {
    expect(() => piecewiseLinear([0], [0])).toThrow('two points');
    expect(() => piecewiseLinear([0, 1], [0])).toThrow('as many y as x');
    expect(() => piecewiseLinear([0, 1, 1], [0, 1, 2])).toThrow('index 2');
  });
});
