import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { iriOf, iriStep } from '../../src/course/iri.ts';

// Against published matrices, open data and closed forms: validation/checks/roads.

const bumpy = Array.from({ length: 801 }, (_, i) => 0.01 * Math.sin(i) + 0.004 * Math.sin(0.31 * i));
const share = fc.double({ min: -0.3, max: 0.3, noNaN: true });

describe('the roughness index', () => {
  it('of any even grade is nothing', () => {
    fc.assert(
      fc.property(share, fc.constantFrom(0.05, 0.1, 0.25, 0.5), (grade, step) => {
        const slope = Array.from({ length: 400 }, (_, i) => 100 + grade * i * step);
        expect(iriOf(slope, step)[0]).toBeLessThan(1e-11);
      }),
      { seed: 40, numRuns: 40 },
    );
  });

  it('grows with the height of the road, and does not see its grade', () => {
    const [once] = iriOf(bumpy, 0.25);
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 20, noNaN: true }), share, (scale, grade) => {
        const other = bumpy.map((height, i) => scale * height + grade * 0.25 * i + 7);
        expect(iriOf(other, 0.25)[0]! / (scale * once!)).toBeCloseTo(1, 9);
      }),
      { seed: 41, numRuns: 60 },
    );
  });

  it('of the whole is the mean of its parts', () => {
    const parts = iriOf(bumpy, 0.25, { segment: 50 });
    expect(parts).toHaveLength(4);
    expect(parts.reduce((sum, value) => sum + value, 0) / 4).toBeCloseTo(iriOf(bumpy, 0.25)[0]!, 14);
  });

  it('leaves a rest out that is shorter than a part', () => {
    expect(iriOf(bumpy, 0.25, { segment: 60 })).toHaveLength(3);
    expect(iriOf(bumpy, 0.25, { segment: 201 })).toEqual([]);
  });

  it('is the same however finely a smooth road is sampled, within the moving average', () => {
    const road = (step: number) =>
      Array.from({ length: Math.round(300 / step) + 1 }, (_, i) => 0.01 * Math.sin(0.6 * i * step));
    const [fine] = iriOf(road(0.05), 0.05);
    expect(iriOf(road(0.125), 0.125)[0]! / fine!).toBeCloseTo(1, 2);
    expect(iriOf(road(0.25), 0.25)[0]! / fine!).toBeCloseTo(1, 2);
  });

  it('refuses what is no profile, as a mistake of ours', () => {
    expect(() => iriOf([0, 0], 0.25)).toThrow(/too short/);
    expect(() => iriOf(bumpy, 0)).toThrow(/step/);
  });
});

describe('the step of the reference car', () => {
  it('keeps a car that rides along an even slope where it is: rows and input add up to one', () => {
    for (const step of [0.01, 0.05, 0.25, 1]) {
      const { transition, input } = iriStep(step);
      for (const row of [0, 2])
        expect(transition[row]![0]! + transition[row]![2]! + input[row]!).toBeCloseTo(1, 12);
      for (const row of [1, 3])
        expect(transition[row]![0]! + transition[row]![2]! + input[row]!).toBeCloseTo(0, 9);
    }
  });

  it('of twice the length is the step taken twice', () => {
    const { transition: one } = iriStep(0.1);
    const { transition: two } = iriStep(0.2);
    one.forEach((row, i) => {
      row.forEach((_, j) => {
        const twice = [0, 1, 2, 3].reduce((sum, k) => sum + row[k]! * one[k]![j]!, 0);
        expect(twice).toBeCloseTo(two[i]![j]!, 10);
      });
    });
  });
});
