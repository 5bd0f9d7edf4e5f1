import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Dimension } from '../../src/finding/figure.ts';
import { readingsOf } from '../../src/rig/readings.ts';
import { resolveSetup, setupNames } from '../../src/rig/setup-resolve.ts';
import { must, rigOf } from './smallest-rig.ts';

const read = (name: string) =>
  rigOf(readFileSync(new URL(`../../../../examples/ochre/${name}`, import.meta.url), 'utf8'));
const shop = read('ochre.rig.yaml');
const metric = read('ochre-metric.rig.yaml');

/** Half of the last digit that is written in the metric file [SI]; rates and inertias relative. */
const RESOLUTION: Partial<Record<Dimension, number>> = {
  length: 0.05e-3,
  mass: 0.05,
  pressure: 50,
  ratio: 1e-12,
  stiffnessOverSpeed: 0.0005,
};

describe('the rig Ochre in shop units and in metric', () => {
  it('has the same readings under the same keys, to the last digit written', () => {
    for (const name of setupNames(shop)) {
      const ours = readingsOf(must(resolveSetup(shop, name)));
      const theirs = new Map(
        readingsOf(must(resolveSetup(metric, name))).map((reading) => [reading.key, reading]),
      );
      expect([...theirs.keys()]).toEqual(ours.map(({ key }) => key));
      for (const reading of ours) {
        const other = theirs.get(reading.key)!;
        // What was reckoned from other readings inherits their rounding: 1 in 1000.
        const width =
          reading.text === '' || RESOLUTION[reading.dimension] === undefined
            ? Math.abs(reading.value) * 1.5e-3
            : RESOLUTION[reading.dimension]! + 1e-12;
        expect(Math.abs(other.value - reading.value), reading.key).toBeLessThanOrEqual(width);
        expect(other.origin, reading.key).toBe(reading.origin);
        // Tolerances are rounded too: a tape reads 1/16 in or 1.5 mm.
        expect(other.plus, reading.key).toBeGreaterThanOrEqual(reading.plus * 0.93 - 1e-9);
        expect(other.plus, reading.key).toBeLessThanOrEqual(reading.plus * 1.07 + 1e-9);
      }
    }
  });

  it('has the same setups, courses and assumptions', () => {
    expect(setupNames(metric)).toEqual(setupNames(shop));
    expect(metric.assumptions).toEqual(shop.assumptions);
    expect(Object.keys(metric.courses)).toEqual(Object.keys(shop.courses));
    for (const [name, { shape, speed }] of Object.entries(shop.courses)) {
      const other = metric.courses[name]!;
      const numbers = (value: unknown): number[] =>
        typeof value === 'number'
          ? [value]
          : typeof value === 'object' && value
            ? Object.values(value).flatMap(numbers)
            : [];
      const [ours, theirs] = [numbers(shape), numbers(other.shape)];
      expect(theirs).toHaveLength(ours.length);
      for (const [index, value] of ours.entries()) {
        expect(Math.abs(theirs[index]! - value), name).toBeLessThanOrEqual(
          Math.max(1e-3 * Math.abs(value), RESOLUTION.length! + 1e-12),
        );
      }
      expect(other.speed ?? 0).toBeCloseTo(speed ?? 0, 1);
    }
  });

  it('has courses of every kind, a strap and a hose behind, and nothing called measured that was filled', () => {
    expect(new Set(Object.values(shop.courses).map(({ shape }) => shape.kind)).size).toBe(5);
    expect(shop.rear.strap).not.toBeNull();
    expect(shop.rear.hose).not.toBeNull();
    expect(shop.cgHeight.origin).toBe('assumed');
    expect(shop.rear.unsprungMass.origin).toBe('assumed');
  });
});
