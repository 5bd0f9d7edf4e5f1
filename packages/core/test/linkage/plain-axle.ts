import type { AxleGeometry, AxlePose, Vector } from '../../src/linkage/geometry.ts';
import type { Shaft } from '../../src/linkage/shaft.ts';
import type { PoseSource } from '../../src/linkage/travel-range.ts';

/** A bare axle; nothing on it decides its motion, the pose source does. */
export const AXLE: AxleGeometry = {
  kind: 'leaf',
  centre: [-2.5, 0, 0.43],
  links: [],
  halfTrack: 0.8,
  tyreRadius: 0.43,
  struts: {},
};

/** Rolled about x through the hub-line centre, after a shift. */
export const poseBy = (shift: Vector, roll = 0): AxlePose => {
  const [cos, sin] = [Math.cos(roll), Math.sin(roll)];
  return { shift, rotation: [1, 0, 0, 0, cos, -sin, 0, sin, cos], residual: 0 };
};

/** Straight up and down, level: no links, no arcs. */
export const STRAIGHT: PoseSource = (bump) => poseBy([0, 0, bump]);

/** A stiff arm of 1 m from a pivot 0.1 m above the axle, with the turn that it gives: invented, smooth, not symmetric. */
export const ON_ARM: PoseSource = (bump, roll) => {
  const at = Math.asin(0.1 + bump);
  const wind = -(at - Math.asin(0.1));
  const [cw, sw, cr, sr] = [Math.cos(wind), Math.sin(wind), Math.cos(roll), Math.sin(roll)];
  return {
    shift: [Math.cos(Math.asin(0.1)) - Math.cos(at), 0.05 * bump - 0.1 * roll, bump],
    rotation: [cw, 0, sw, sr * sw, cr, -sr * cw, -cr * sw, sr, cr * cw],
    residual: 0,
  };
};

const joint = { kind: 'single', bindsAt: null, evenAt: 0 } as const;

/** Shaft of story S5: 880 mm ahead of the pinion, so much higher, parallel single joints, slip of 75 mm. */
export const shaftOfHeight = (height: number): Shaft => ({
  caseJoint: { ...joint, point: [-2.3 + 0.88, 0, 0.43 + height], axis: [1, 0, 0] },
  pinionJoint: { ...joint, point: [-2.3, 0, 0.43], axis: [1, 0, 0] },
  yokeTwist: 0,
  slip: { usable: 0.075, inAtRide: null },
  tube: null,
});
