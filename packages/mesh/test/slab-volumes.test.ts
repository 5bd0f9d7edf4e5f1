import { expect, it } from 'vitest';
import { contourOf } from '../src/contour.ts';
import { slabVolumes } from '../src/slab-volumes.ts';
import { volumeByPrisms } from './closed-surface.ts';

const mesh = contourOf(
  {
    fields: [(x, y, z) => 0.8 - Math.hypot(x, y, z)],
    isSolid: (positive) => positive === 1,
    from: [-1, -1, -1],
    to: [1, 1, 1],
  },
  0.06,
  0,
);

it('the slabs of a ball are the segments of a ball', () => {
  const [from, count, step] = [-0.8, 8, 0.2];
  const below = (z: number) => Math.PI * (0.8 ** 2 * z - z ** 3 / 3);
  slabVolumes(mesh, from, 0.8, count).forEach((volume, i) => {
    const z = from + i * step;
    expect(volume / (below(z + step) - below(z))).toBeCloseTo(1, 1);
  });
});

it('slabs however thin add up to the whole', () => {
  for (const count of [1, 7, 333]) {
    const sum = slabVolumes(mesh, -0.9, 0.9, count).reduce((a, b) => a + b, 0);
    expect(sum).toBeCloseTo(volumeByPrisms(mesh), 5);
  }
});
