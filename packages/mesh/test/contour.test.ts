import fc from 'fast-check';
import { expect, it } from 'vitest';
import { contourOf } from '../src/contour.ts';
import type { Field, FieldBody } from '../src/field-body.ts';
import { shellsOf } from '../src/shells.ts';
import { counted, expectClosed, volumeByPrisms } from './closed-surface.ts';

const all = (fields: readonly Field[]): FieldBody => ({
  fields,
  isSolid: (positive) => positive === 2 ** fields.length - 1,
  from: [-1, -1, -1],
  to: [1, 1, 1],
});
const plane = (x: number, y: number, z: number, off: number): Field => {
  const size = Math.hypot(x, y, z);
  return (px, py, pz) => off - (x * px + y * py + z * pz) / size;
};

it('cuts a ball with the volume and the one outside of a ball', () => {
  const mesh = contourOf(all([(x, y, z) => 0.8 - Math.hypot(x, y, z)]), 0.08, 0);
  expectClosed(mesh);
  const { points, edges, triangles } = counted(mesh);
  expect(points - edges + triangles).toBe(2);
  expect(volumeByPrisms(mesh) / ((4 / 3) * Math.PI * 0.8 ** 3)).toBeCloseTo(1, 2);
});

it('cuts a ring with one way through', () => {
  const mesh = contourOf(all([(x, y, z) => 0.25 - Math.hypot(Math.hypot(x, y) - 0.6, z)]), 0.06, 0);
  expectClosed(mesh);
  const { points, edges, triangles } = counted(mesh);
  expect(points - edges + triangles).toBe(0);
  expect(volumeByPrisms(mesh) / (2 * Math.PI ** 2 * 0.6 * 0.25 ** 2)).toBeCloseTo(1, 1);
});

it('keeps the corners of a cube sharp: its volume is exact', () => {
  const sides = [
    [1, 0, 0],
    [-1, 0, 0],
    [0, 1, 0],
    [0, -1, 0],
    [0, 0, 1],
    [0, 0, -1],
  ].map(([x, y, z]) => plane(x, y, z, 0.7));
  const mesh = contourOf(all(sides), 0.1, 0);
  expectClosed(mesh);
  expect(volumeByPrisms(mesh)).toBeCloseTo(1.4 ** 3, 3);
});

it('keeps a wall whole that is thinner than the grid', () => {
  const wall = 0.03;
  const mesh = contourOf(
    all([
      plane(1, 0.3, 0.2, wall / 2),
      plane(-1, -0.3, -0.2, wall / 2),
      (x, y, z) => 0.9 - Math.hypot(x, y, z),
    ]),
    0.13,
    0b11,
  );
  expectClosed(mesh);
  expect(shellsOf(mesh).shells).toHaveLength(1);
  expect(volumeByPrisms(mesh) / (Math.PI * 0.9 ** 2 * wall)).toBeCloseTo(1, 1);
});

it('is closed and without pinches whichever planes cut whichever others', () => {
  // In general position: no two planes as good as one, no four through one point.
  const whole = fc.integer({ min: -999, max: 999 });
  const cut = fc.tuple(whole, whole, whole, fc.integer({ min: -400, max: 600 }));
  fc.assert(
    fc.property(
      fc.array(
        cut.filter(([x, y, z]) => Math.hypot(x, y, z) > 0.1),
        { minLength: 3, maxLength: 6 },
      ),
      fc.integer({ min: 1, max: 62 }),
      (cuts, joined) => {
        const fields = [
          (x: number, y: number, z: number) => 0.9 - Math.hypot(x, y, z),
          ...cuts.map(([x, y, z, off], i) =>
            plane(x + 7.3 * i, y - 5.1, z + 3.7 * i * i, off / 1000 + 0.0137 * i),
          ),
        ];
        // Within the ball: some planes all needed, of the others one is enough.
        const some = (joined << 1) & (2 ** fields.length - 1);
        const needed = (2 ** fields.length - 1) & ~some;
        const mesh = contourOf(
          {
            fields,
            isSolid: (positive) => (positive & needed) === needed && (some === 0 || (positive & some) !== 0),
            from: [-1, -1, -1],
            to: [1, 1, 1],
          },
          0.2,
          0,
        );
        const { open, pinched, flat } = counted(mesh);
        expect({ open, pinched, flat }).toEqual({ open: 0, pinched: 0, flat: 0 });
      },
    ),
    { seed: 7, numRuns: 60, endOnFailure: true },
  );
});
