import type { Vector } from './geometry.ts';

export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

export const size = (a: Vector): number => Math.hypot(a[0], a[1], a[2]);

/** Turned by a rotation, 3×3 row-major. */
export const turned = (rotation: readonly number[], a: Vector): Vector => [
  rotation[0] * a[0] + rotation[1] * a[1] + rotation[2] * a[2],
  rotation[3] * a[0] + rotation[4] * a[1] + rotation[5] * a[2],
  rotation[6] * a[0] + rotation[7] * a[1] + rotation[8] * a[2],
];
