import type { AxleGeometry, AxlePose, Vector } from './geometry.ts';

/** A move of a rigid body: moved = rotation·point + shift. */
export interface RigidMotion {
  /** 3×3 row-major. */
  readonly rotation: readonly number[];
  /** [m] */
  readonly shift: Vector;
}

/** Where a point of the body goes. */
export function placed({ rotation, shift }: RigidMotion, point: Vector): Vector {
  const turned = directed(rotation, point);
  return [turned[0] + shift[0], turned[1] + shift[1], turned[2] + shift[2]];
}

/** Where a direction goes. */
export function directed(rotation: readonly number[], [x, y, z]: Vector): Vector {
  const row = (r: number) => (rotation[r] ?? 0) * x + (rotation[r + 1] ?? 0) * y + (rotation[r + 2] ?? 0) * z;
  return [row(0), row(3), row(6)];
}

/** The motion of an axle in a pose: about its centre, then along. */
export function motionOf({ shift, rotation }: AxlePose, { centre }: AxleGeometry): RigidMotion {
  const turned = directed(rotation, centre);
  const along = (axis: 0 | 1 | 2) => centre[axis] + shift[axis] - turned[axis];
  return { rotation, shift: [along(0), along(1), along(2)] };
}

/** One motion after another. */
export function followedBy(first: RigidMotion, then: RigidMotion): RigidMotion {
  const rotation = Array.from({ length: 9 }, (_, i) => {
    const [row, column] = [3 * Math.floor(i / 3), i % 3];
    return [0, 1, 2].reduce(
      (sum, k) => sum + (then.rotation[row + k] ?? 0) * (first.rotation[3 * k + column] ?? 0),
      0,
    );
  });
  return { rotation, shift: placed(then, first.shift) };
}
