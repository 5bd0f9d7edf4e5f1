import { describe, expect, it } from 'vitest';
import { levelRings } from '../src/level-rings.ts';

/** Area within rings by the shoelace formula; holes run the other way round. */
const areaOf = (rings: readonly (readonly number[])[]): number =>
  rings.reduce((sum, ring) => {
    let twice = 0;
    for (let k = 0; k < ring.length; k += 2) {
      const [x, y] = [ring[k]!, ring[k + 1]!];
      const [nx, ny] = [ring[(k + 2) % ring.length]!, ring[(k + 3) % ring.length]!];
      twice += x * ny - nx * y;
    }
    return sum + twice / 2;
  }, 0);

const grid = (count: number, field: (x: number, y: number) => number) => {
  const at = (k: number): number => -1.5 + (3 * k) / (count - 1);
  const values = Array.from({ length: count * count }, (_, k) =>
    field(at(k % count), at(Math.floor(k / count))),
  );
  return { columns: count, rows: count, values, x: at, y: at };
};

describe('closed lines around all that is below zero', () => {
  it('hold the area of a circle, the nearer the finer', () => {
    const error = (count: number): number =>
      Math.abs(areaOf(levelRings(grid(count, (x, y) => Math.hypot(x, y) - 1))) / Math.PI - 1);
    expect(error(81)).toBeLessThan(5e-4);
    expect(error(161)).toBeLessThan(error(41) / 8);
  });

  it('run the other way round a hole, so that a ring has the area of a ring', () => {
    const ring = levelRings(grid(161, (x, y) => Math.abs(Math.hypot(x, y) - 0.8) - 0.3));
    expect(ring).toHaveLength(2);
    expect(areaOf(ring) / (Math.PI * (1.1 ** 2 - 0.5 ** 2))).toBeCloseTo(1, 3);
  });

  it('close also where two regions touch in a square', () => {
    const rings = levelRings(grid(4, (x, y) => (Math.abs(x) < 1 && Math.abs(y) < 1 ? -x * y : 1)));
    for (const ring of rings) expect(ring.length).toBeGreaterThanOrEqual(6);
    expect(areaOf(rings)).toBeGreaterThan(0);
  });
});
