import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dampingRatio, type TwoMass, undampedModes } from '../../src/stance/modes.ts';

const model = (sprungMass: number, unsprungMass: number, springRate: number, tyreRate: number): TwoMass => ({
  sprungMass,
  unsprungMass,
  springRate,
  tyreRate,
});

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
  test('the teaching car', () => {
    const { ride, hop } = undampedModes(model(250, 45, 16e3, 160e3));
    expect(hertz(ride)).toBeCloseTo(1.213071, 5);
    expect(hertz(hop)).toBeCloseTo(9.960884, 5);
  });

  test('both undamped modes satisfy the free motion of both masses', () => {
    const size = fc.double({ min: 0.2, max: 5, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(size, size, size, size), ([a, b, c, d]) => {
        const [ms, mu, ks, kt] = [700 * a, 250 * b, 60e3 * c, 400e3 * d];
        const { ride, hop } = undampedModes(model(ms, mu, ks, kt));
        // Sum and product of the eigenvalues of M⁻¹·K are its trace and its determinant.
        expect((ride ** 2 + hop ** 2) / (ks / ms + (ks + kt) / mu)).toBeCloseTo(1, 12);
        expect((ride ** 2 * hop ** 2) / ((ks * kt) / (ms * mu))).toBeCloseTo(1, 12);
        expect(ride).toBeLessThan(hop);
      }),
      { numRuns: 200, seed: 41 },
    );
  });
});

describe('damping ratio of a body on its springs', () => {
  /** trade.md 2.4 (derived there): critical damping of 370 kg on 26 N/mm is 6 200 N·s/m, 35 lbf·s/in. */
  test('370 kg on 26 N/mm are critically damped by 6 200 N·s/m', () => {
    // The source rounds to two digits: 0.5 of the last.
    expect(Math.abs(6200 / dampingRatio(370, 26e3, 6200) - 6200)).toBeLessThan(50);
  });

  /**
   * A swing dies by e^(−c·t ÷ 2m), so a period takes 2πζ ÷ √(1 − ζ²) off its logarithm. Closed form; decrements
   * worked out to six digits (check-values-ride 4.5).
   */
  test.each([
    [0.05, 0.314553],
    [0.1, 0.631484],
    [0.2, 1.28255],
    [0.3, 1.97597],
  ])('is %s where a swing loses a logarithm of %s', (zeta, decrement) => {
    const [mass, rate] = [370, 26e3];
    const omega = Math.sqrt(rate / mass);
    // The damping that takes off so much in the period of that damped swing.
    const damping = (2 * mass * decrement * omega) / Math.hypot(2 * Math.PI, decrement);
    expect(dampingRatio(mass, rate, damping)).toBeCloseTo(zeta, 6);
  });

  test('goes with the damping, however strong: no swing is looked for', () => {
    const one = dampingRatio(700, 60e3, 1000);
    for (const times of [0.1, 3, 8, 30])
      expect(dampingRatio(700, 60e3, 1000 * times) / one).toBeCloseTo(times, 12);
  });
});
