import { expect, test } from 'vitest';
import type { AxleGeometry, AxlePose } from '../../src/linkage/geometry.ts';
import { movedPoint } from '../../src/linkage/geometry.ts';

const axle: AxleGeometry = {
  kind: 'leaf',
  centre: [-2, 0, 0.4],
  links: [],
  halfTrack: 0.8,
  tyreRadius: 0.4,
  struts: {},
};

test('a quarter turn about x lifts the left hub and shifts it to the centre line', () => {
  const pose: AxlePose = { shift: [0.01, 0, 0.1], rotation: [1, 0, 0, 0, 0, -1, 0, 1, 0], residual: 0 };
  const [x, y, z] = movedPoint(pose, axle, [-2, 0.8, 0.4]);
  expect(x).toBeCloseTo(-1.99, 12);
  expect(y).toBeCloseTo(0, 12);
  expect(z).toBeCloseTo(0.4 + 0.1 + 0.8, 12);
});
