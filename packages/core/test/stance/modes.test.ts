import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { eigenvalues } from '../../src/numerics/linear.ts';
import {
  dampingRatioOf,
  ridePoles,
  ridePolesNear,
  type TwoMass,
  undampedModes,
} from '../../src/stance/modes.ts';

const model = (
  sprungMass: number,
  unsprungMass: number,
  springRate: number,
  tyreRate: number,
  damping = 0,
  tyreDamping = 0,
): TwoMass => ({ sprungMass, unsprungMass, springRate, tyreRate, damping, tyreDamping });

const hertz = (omega: number) => omega / (2 * Math.PI);

describe('two-mass model', () => {
  /** Barton and Fieldhouse, Automotive Chassis Engineering (2018), p. 209: printed 7.87 and 68.73 rad/s, book rounds to 0.2 %. */
  test('the worked example of a textbook, as printed and as computed to six digits', () => {
    const { ride, hop } = undampedModes(model(317.5, 45.4, 22e3, 192e3));
    expect(Math.abs(ride / 7.87 - 1)).toBeLessThan(0.002);
    expect(Math.abs(hop / 68.73 - 1)).toBeLessThan(0.002);
    // The same equation solved with NumPy, double precision.
    expect(ride).toBeCloseTo(7.878634, 6);
    expect(hop).toBeCloseTo(68.708623, 6);
  });

  /** Parameter set common in teaching; values computed with NumPy (check-values-ride 4.2), relative 1e-5. */
  test('the teaching car: undamped and damped', () => {
    const car = model(250, 45, 16e3, 160e3, 1000);
    const { ride, hop } = undampedModes(car);
    expect(hertz(ride)).toBeCloseTo(1.213071, 5);
    expect(hertz(hop)).toBeCloseTo(9.960884, 5);
    const poles = ridePoles(car);
    expect(hertz(Math.sqrt(poles.c))).toBeCloseTo(1.225305, 5);
    expect(dampingRatioOf(poles)).toBeCloseTo(0.217656, 5);
  });

  /** Closed form of one mass on a spring and damper: ζ = c ÷ (2·√(k·m)), log decrement 2πζ ÷ √(1 − ζ²). */
  test.each([
    [0.05, 0.314553],
    [0.1, 0.631484],
    [0.2, 1.28255],
    [0.3, 1.97597],
  ])('with a rigid tyre it is one mass: ζ %s, log decrement %s', (zeta, decrement) => {
    const [mass, rate] = [370, 26e3];
    const poles = ridePoles(model(mass, 1, rate, 1e11, 2 * zeta * Math.sqrt(rate * mass)));
    expect(dampingRatioOf(poles)).toBeCloseTo(zeta, 5);
    const omegaD = Math.sqrt(poles.c - poles.b ** 2 / 4);
    expect((Math.PI * poles.b) / omegaD).toBeCloseTo(decrement, 4);
  });

  test('past critical damping the pair is real and ζ says so', () => {
    const [mass, rate] = [370, 26e3];
    const poles = ridePoles(model(mass, 1, rate, 1e11, 2 * 1.5 * Math.sqrt(rate * mass)));
    expect(dampingRatioOf(poles)).toBeCloseTo(1.5, 4);
  });

  test('from a close start the poles of a trial are those of the eigenvalues', () => {
    const near = fc.double({ min: 0.8, max: 1.25, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(near, near, near, near, near), ([a, b, c, d, e]) => {
        const from = ridePoles(model(700, 250, 60e3, 400e3, 5000, 600));
        const trial = model(700 * a, 250 * b, 60e3 * c, 400e3 * d, 5000 * e, 600);
        const ours = ridePolesNear(trial, from);
        const theirs = ridePoles(trial);
        expect(Math.abs(ours.b / theirs.b - 1)).toBeLessThan(1e-8);
        expect(Math.abs(ours.c / theirs.c - 1)).toBeLessThan(1e-8);
      }),
      { numRuns: 200, seed: 41 },
    );
  });

  test('undamped modes are the eigenvalues of the stiffness over the masses', () => {
    const car = model(700, 250, 60e3, 400e3);
    const { ride, hop } = undampedModes(car);
    const squares = eigenvalues([
      [60e3 / 700, -60e3 / 700],
      [-60e3 / 250, 460e3 / 250],
    ]);
    expect(ride ** 2 / squares[0].re).toBeCloseTo(1, 12);
    expect(hop ** 2 / squares[1].re).toBeCloseTo(1, 12);
  });
});
