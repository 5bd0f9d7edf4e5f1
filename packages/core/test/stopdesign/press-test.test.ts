import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PressReadings, pressCurve } from '../../src/stopdesign/press-test.ts';
import { between } from './any-material.ts';

interface Rubber {
  readonly full: number;
  readonly deep: number;
  readonly power: number;
  readonly lost: number;
}

/** A press of a power-law stop: a flat beginning, down and back, the way back a fixed share lower. */
function pressed(
  { full, deep, power, lost }: Rubber,
  noise: (k: number) => number,
  offset: number,
): PressReadings {
  const way = (share: number) => full * share ** power;
  const down = Array.from({ length: 25 }, (_, k) => k / 24);
  const before = [-0.004, -0.003, -0.002, -0.001];
  const travel = [...before, ...down.map((s) => s * deep), ...down.map((s) => (1 - s) * deep)];
  const force = [
    ...before.map(() => 0),
    ...down.map(way),
    ...down.map((s) => (1 - lost) * way(1 - s) + (s === 0 ? lost * way(1) : 0)),
  ];
  return {
    travel: travel.map((t) => t + 0.011),
    force: force.map((f, k) => f + offset + noise(k)),
    resolution: 1,
    fullScale: 2 * full,
  };
}

const anyRubber: fc.Arbitrary<Rubber> = fc.record({
  full: between(4000, 20000),
  deep: between(0.02, 0.07),
  power: between(1, 2),
  lost: between(0.1, 0.4),
});

describe('a press test', () => {
  it('without noise gives back curve, offset and loss', () => {
    fc.assert(
      fc.property(anyRubber, between(-50, 50), (rubber, offset) => {
        const curve = pressCurve(pressed(rubber, () => 0, offset));
        if (curve === null) throw new Error('a press test was refused');
        // Two steps of the gauge may hide in the flat beginning.
        expect(Math.abs(curve.offset - offset)).toBeLessThan(2);
        expect(Math.abs((curve.crush.at(-1) ?? 0) / rubber.deep - 1)).toBeLessThan(0.03);
        expect(Math.abs((curve.force.at(-1) ?? 0) - rubber.full)).toBeLessThan(2);
        expect(Math.abs((curve.hysteresis ?? 0) - rubber.lost)).toBeLessThan(0.03);
        expect(curve.usableCrush).toBe(curve.crush.at(-1));
        expect(curve.doubts).toEqual([]);
      }),
    );
  });

  it('with noise still rises, stays within its own tolerance, and says how wide that is', () => {
    fc.assert(
      fc.property(anyRubber, fc.integer({ min: 1, max: 1e6 }), (rubber, seed) => {
        let state = seed;
        const noise = () => {
          state = (state * 1103515245 + 12345) % 2147483648;
          return (state / 2147483648 - 0.5) * 0.02 * rubber.full;
        };
        const curve = pressCurve(pressed(rubber, noise, 0));
        if (curve === null) throw new Error('a press test was refused');
        for (let i = 1; i < curve.force.length; i += 1) {
          expect(curve.force[i]).toBeGreaterThan(curve.force[i - 1]);
          expect(curve.crush[i]).toBeGreaterThan(curve.crush[i - 1]);
        }
        expect(curve.tolerance).toBeGreaterThan(0.002 * rubber.full);
        expect(curve.tolerance).toBeLessThan(0.04 * rubber.full);
      }),
    );
  });

  it('names what is doubtful', () => {
    const rubber = { full: 9000, deep: 0.04, power: 1.5, lost: 0.2 };
    const sound = pressed(rubber, () => 0, 0);
    const doubts = (change: Partial<PressReadings>) => pressCurve({ ...sound, ...change })?.doubts;
    const first = (count: number) => ({
      travel: sound.travel.slice(0, count),
      force: sound.force.slice(0, count),
    });
    expect(doubts(first(8))).toEqual(expect.arrayContaining(['few-points', 'no-way-back']));
    expect(doubts({ fullScale: 9000 })).toContain('past-full-scale');
    expect(doubts({ fullScale: 200000 })).toContain('low-on-the-gauge');
    expect(doubts({ force: sound.force.map((f) => f * 1e4) })).toContain('very-stiff');
    expect(doubts({ force: sound.force.map((f) => f / 1e4), resolution: 1e-4 })).toContain('very-soft');
    expect(
      doubts({ travel: sound.travel.slice(4), force: sound.force.slice(4).map((f) => f + 100) }),
    ).toContain('no-touch-read');
    expect(pressCurve({ ...sound, ...first(6) })).toBeNull();
  });

  it('finds where more crush buys no more', () => {
    // Linear up to 30 mm, then a wall: the best energy for its force is at the foot of the wall.
    const travel = [-2e-3, -1e-3, 0, ...Array.from({ length: 30 }, (_, k) => (k + 1) * 1e-3), 0.031, 0.032];
    const force = travel.map((t) => (t <= 0 ? 0 : t <= 0.03 ? 2e5 * t : 6000 + 2e7 * (t - 0.03)));
    const curve = pressCurve({ travel, force, resolution: 1, fullScale: null });
    expect(Math.abs((curve?.usableCrush ?? 0) - 0.03)).toBeLessThan(0.0012);
  });
});
