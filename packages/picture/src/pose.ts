import type { End } from '@lastinch/core';

/**
 * How a rig stands against its static rest, in the seven coordinates of the ride model: heights [m] up, angles [rad],
 * roll positive right side down, pitch positive nose down.
 */
export interface RigPose {
  /** Heave of the centre of gravity of what is on the springs. */
  readonly body: { readonly heave: number; readonly pitch: number; readonly roll: number };
  /** Heave of the middle of each axle, and its roll. */
  readonly axles: Readonly<Record<End, { readonly heave: number; readonly roll: number }>>;
}

export const AT_REST: RigPose = {
  body: { heave: 0, pitch: 0, roll: 0 },
  axles: { front: { heave: 0, roll: 0 }, rear: { heave: 0, roll: 0 } },
};

const COORDINATES = 7;

/** The pose at one sample of a ride history: zs, pitch, roll, zFront, rollFront, zRear, rollRear, one sample after the other. */
export const poseAt = (coordinates: ArrayLike<number>, sample: number): RigPose => {
  const at = (k: number): number => coordinates[COORDINATES * sample + k] ?? 0;
  return {
    body: { heave: at(0), pitch: at(1), roll: at(2) },
    axles: { front: { heave: at(3), roll: at(4) }, rear: { heave: at(5), roll: at(6) } },
  };
};

/**
 * The pose on the stand: the body held still and one axle moved, bump positive, the body rolled over it.
 * What the slider of the Travel step shows.
 */
export const axlePose = (
  end: End,
  { heave, roll }: { readonly heave: number; readonly roll: number },
): RigPose => ({
  body: AT_REST.body,
  axles: { ...AT_REST.axles, [end]: { heave, roll: -roll } },
});
