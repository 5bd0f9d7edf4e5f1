import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cubicIntegral,
  cubicInverse,
  cubicSlope,
  cubicValue,
  monotoneCubic,
} from '../../src/numerics/monotone-cubic.ts';
import { integrate, slopeOf } from './quadrature.ts';

// Against SciPy's PchipInterpolator, values, slopes and integrals: validation/checks/interpolation/pchip-*.json.

const RUNS = { seed: 20, numRuns: 300 };

const row = fc.tuple(
  fc.double({ min: 0.02, max: 3, noNaN: true }),
  // Flat parts are asked for on purpose: a harmonic mean of slopes must not divide by them.
  fc.oneof(fc.constant(0), fc.double({ min: 1e-3, max: 50, noNaN: true })),
);
/** A table from (0, 0), x rising, y not falling. */
const risen = fc.array(row, { minLength: 1, maxLength: 9 }).map((rows) => {
  const x = [0];
  const y = [0];
  for (const [dx, dy] of rows) {
    x.push(x[x.length - 1] + dx);
    y.push(y[y.length - 1] + dy);
  }
  return { x, y, curve: monotoneCubic(x, y), length: x[x.length - 1], height: y[y.length - 1] };
});
/** A table that goes where it likes. */
const any = fc
  .array(
    fc.tuple(fc.double({ min: 0.05, max: 2, noNaN: true }), fc.double({ min: -9, max: 9, noNaN: true })),
    {
      minLength: 2,
      maxLength: 9,
    },
  )
  .map((rows) => {
    let at = -1;
    const x = rows.map(([dx]) => {
      at += dx;
      return at;
    });
    const y = rows.map(([, value]) => value);
    return { x, y, curve: monotoneCubic(x, y) };
  });
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('a monotone cubic', () => {
  it('goes through every point', () => {
    fc.assert(
      fc.property(any, ({ x, y, curve }) => {
        x.forEach((at, i) => {
          expect(Math.abs(cubicValue(curve, at) - y[i])).toBeLessThan(1e-12);
        });
      }),
      RUNS,
    );
  });

  it('stays between the two points it runs between', () => {
    fc.assert(
      fc.property(any, share, ({ x, y, curve }, part) => {
        for (let i = 0; i + 1 < x.length; i += 1) {
          const value = cubicValue(curve, x[i] + part * (x[i + 1] - x[i]));
          expect(value).toBeGreaterThanOrEqual(Math.min(y[i], y[i + 1]) - 1e-12);
          expect(value).toBeLessThanOrEqual(Math.max(y[i], y[i + 1]) + 1e-12);
        }
      }),
      RUNS,
    );
  });

  it('never falls where its points do not, inside the table and beyond it', () => {
    fc.assert(
      fc.property(risen, share, share, ({ curve, length, height }, one, other) => {
        const [low, high] = [one, other].map((part) => (1.2 * part - 0.1) * length).sort((a, b) => a - b);
        expect(cubicValue(curve, high)).toBeGreaterThanOrEqual(cubicValue(curve, low) - 1e-13 * height);
        expect(cubicSlope(curve, low)).toBeGreaterThanOrEqual((-1e-12 * height) / length);
      }),
      RUNS,
    );
  });

  it('has the slope that its values show', () => {
    fc.assert(
      fc.property(any, share, ({ x, curve }, part) => {
        for (let i = 0; i + 1 < x.length; i += 1) {
          const width = x[i + 1] - x[i];
          const at = x[i] + (0.05 + 0.9 * part) * width;
          const steep = Math.max(1, Math.abs(cubicSlope(curve, at)));
          const shown = slopeOf((s) => cubicValue(curve, s), at, 0.01 * width);
          expect(Math.abs(cubicSlope(curve, at) - shown)).toBeLessThan((1e-11 * steep) / width);
        }
      }),
      RUNS,
    );
  });

  it('has one slope at each point, seen from both sides', () => {
    fc.assert(
      fc.property(any, ({ x, y, curve }) => {
        for (let i = 1; i + 1 < x.length; i += 1) {
          const narrow = Math.min(x[i] - x[i - 1], x[i + 1] - x[i]);
          const chord = Math.max(Math.abs(y[i] - y[i - 1]), Math.abs(y[i + 1] - y[i])) / narrow;
          const aside = 1e-8 * narrow;
          const jump = cubicSlope(curve, x[i] + aside) - cubicSlope(curve, x[i] - aside);
          // No more than the slope changes over both steps aside: a monotone cubic bends by 18 chords a width at most.
          expect(Math.abs(jump)).toBeLessThan(2e-8 * 18 * chord + 1e-12);
        }
      }),
      RUNS,
    );
  });

  it('is a straight line through points on a straight line', () => {
    const line = monotoneCubic([0, 0.1, 0.7, 2], [1, 1.3, 3.1, 7]);
    for (const at of [-1, 0.05, 0.33, 1.9, 5]) {
      expect(cubicValue(line, at)).toBeCloseTo(1 + 3 * at, 12);
      expect(cubicSlope(line, at)).toBeCloseTo(3, 12);
    }
  });
});

describe('the slopes at the ends of a monotone cubic', () => {
  it('are those of a parabola when the points lie on one', () => {
    const curve = monotoneCubic([1, 2, 4], [1, 4, 16]);
    expect(cubicSlope(curve, 1)).toBeCloseTo(2, 12);
    expect(cubicSlope(curve, 4)).toBeCloseTo(8, 12);
  });

  it('are nothing where the parabola would start the wrong way', () => {
    // Through 0, 0.1, 3 the parabola falls before it rises.
    expect(cubicSlope(monotoneCubic([0, 1, 2], [0, 0.1, 3]), 0)).toBe(0);
  });

  it('are three times the chord where the table turns and the parabola would be steeper', () => {
    // Rise 1, then fall 8: the three-point slope is (3·1 + 8)/2 = 5.5.
    expect(cubicSlope(monotoneCubic([0, 1, 2], [0, 1, -7]), 0)).toBe(3);
  });

  it('are carried on beyond the table', () => {
    const curve = monotoneCubic([1, 2, 4], [1, 4, 16]);
    expect(cubicValue(curve, 5)).toBeCloseTo(24, 12);
    expect(cubicValue(curve, 0.5)).toBeCloseTo(0, 12);
  });

  it('leave a flat place between two points where the table turns', () => {
    expect(cubicSlope(monotoneCubic([0, 1, 2], [0, 1, 0]), 1)).toBe(0);
  });
});

describe('the area under a monotone cubic', () => {
  it('is what a quadrature finds', () => {
    fc.assert(
      fc.property(risen, share, ({ x, curve, length, height }, part) => {
        // Five Gauss points are exact on a cubic, so each piece is met to rounding.
        const to = 1.3 * part * length;
        let area = 0;
        x.forEach((from, i) => {
          const until = Math.min(to, i + 1 < x.length ? x[i + 1] : to);
          if (until > from) area += integrate((s) => cubicValue(curve, s), from, until);
        });
        expect(Math.abs(cubicIntegral(curve, to) - area)).toBeLessThan(1e-12 * (1 + height * length));
      }),
      RUNS,
    );
  });

  it('grows by the value: its slope is the curve', () => {
    fc.assert(
      fc.property(any, share, ({ x, y, curve }, part) => {
        const width = x[1] - x[0];
        const at = x[0] + (0.05 + 0.9 * part) * width;
        const shown = slopeOf((s) => cubicIntegral(curve, s), at, 0.01 * width);
        const size = Math.max(1, ...y.map(Math.abs)) * (1 + 1 / width);
        expect(Math.abs(shown - cubicValue(curve, at))).toBeLessThan(1e-11 * size);
      }),
      RUNS,
    );
  });
});

describe('the inverse of a rising monotone cubic', () => {
  it('finds the place of a value, inside the table and beyond it', () => {
    fc.assert(
      fc.property(risen, share, ({ curve, length, height }, part) => {
        fc.pre(height > 0 && curve.endSlope > 1e-3);
        const value = 1.4 * part * height;
        const at = cubicInverse(curve, value);
        expect(at).toBeGreaterThanOrEqual(0);
        // One rounding of the place, times the slope there.
        const rounding = 4e-15 * (length + at) * Math.max(1, cubicSlope(curve, at));
        expect(Math.abs(cubicValue(curve, at) - value)).toBeLessThan(rounding + 1e-13 * height);
      }),
      RUNS,
    );
  });

  it('answers the first place for a value below the table', () => {
    expect(cubicInverse(monotoneCubic([2, 3], [5, 6]), 1)).toBe(2);
  });

  it('answers no number for a value that a level end never reaches', () => {
    const level = monotoneCubic([0, 1, 2], [0, 1, 1]);
    expect(level.endSlope).toBe(0);
    expect(cubicInverse(level, 1)).toBe(2);
    expect(cubicInverse(level, 1.5)).toBeNaN();
  });
});

describe('a table that no curve goes through', () => {
  it('is refused, as a mistake of the program: input was checked where it was read', () => {
    expect(() => monotoneCubic([0], [0])).toThrow('two points');
    expect(() => monotoneCubic([0, 1], [0])).toThrow('as many y as x');
    expect(() => monotoneCubic([0, 1, 1], [0, 1, 2])).toThrow('index 2');
    expect(() => monotoneCubic([0, Number.NaN], [0, 1])).toThrow('index 1');
  });
});
