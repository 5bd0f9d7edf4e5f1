import { type Corner, cornerAt, type End, type Side } from '@lastinch/core';
import type { RigPose } from './pose.ts';
import type { EndShape, RigShape } from './rig-shape.ts';

/** Distance to the left of the middle of the rig at a station of one side [m]. */
export const leftOf = (side: Side, spread: number): number => (side === 'left' ? spread : -spread) / 2;

/**
 * Height that a point of the body gained [m].
 *
 *     dz = heave − pitch·x + roll·y,   x forward of the centre of gravity, y to the left
 *
 * @validity small angles, as in the ride model
 */
export const bodyRise = (shape: RigShape, pose: RigPose, behindFront: number, left: number): number =>
  pose.body.heave - pose.body.pitch * (shape.centreBehindFront - behindFront) + pose.body.roll * left;

/** Height that a point of an axle gained [m]. */
export const axleRise = (pose: RigPose, end: End, left: number): number =>
  pose.axles[end].heave + pose.axles[end].roll * left;

export const behindFront = (shape: RigShape, end: End): number => (end === 'front' ? 0 : shape.wheelbase);

/** Axle travel of one side in a pose [m], bump positive, at a distance left of the middle. */
const travelAt = (shape: RigShape, pose: RigPose, end: End, left: number): number =>
  axleRise(pose, end, left) - bodyRise(shape, pose, behindFront(shape, end), left);

/** What the stop of one corner does in a pose. Lengths along the axle's travel [m]. */
export interface StopState {
  readonly corner: Corner;
  readonly travel: number;
  /** Left before it touches, ≥ 0. */
  readonly gap: number;
  /** Travel after it touched, ≥ 0. */
  readonly crush: number;
  /** Left to the first hard contact; negative beyond it. */
  readonly clearance: number;
  readonly metal: boolean;
  /** Beyond the first droop limit. */
  readonly droopEnded: boolean;
}

/** The state of the stop at one side of an axle. */
export const stopState = (shape: RigShape, pose: RigPose, end: End, side: Side): StopState => {
  const at: EndShape = shape.ends[end];
  const travel = travelAt(shape, pose, end, leftOf(side, at.stop.spread));
  const beyond = travel - at.stop.freeBump[side];
  const droop = at.droop[side];
  return {
    corner: cornerAt(end, side),
    travel,
    gap: Math.max(0, -beyond),
    crush: Math.max(0, beyond),
    clearance: at.hardTravel[side] - travel,
    metal: travel >= at.hardTravel[side],
    droopEnded: droop !== null && -travel >= droop,
  };
};
