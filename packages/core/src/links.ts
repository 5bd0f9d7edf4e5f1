/**
 * Second public surface, `@lastinch/core/links`: links as measured, where they stand at the ride height of a setup, and
 * how far an axle flexes. Poses, curves, shafts and hoses themselves are on the first one.
 */

// --- As measured ---

export type {
  Driveline,
  EndPoints,
  HeightFrom,
  HosePoints,
  LinkName,
  MeasuredDragLink,
  MeasuredLink,
  MeasuredLinkage,
  Mounts,
  SteeringPoints,
  StopPoints,
  Taped,
  TapedPair,
  TapedPoint,
} from './rig/linkage.ts';
export type { LinkPatch, PointPatch, ShaftPatch } from './rig/setup-patch.ts';

// --- At the ride height of a setup ---

export type { EndLinks, RideHeight, RigLinks } from './linkage/from-setup.ts';
export { linksOf } from './linkage/from-setup.ts';
export type { HoseLine } from './linkage/lines-from-setup.ts';
export { dragLinkOf, hosesOf } from './linkage/lines-from-setup.ts';
export type { RigidMotion } from './linkage/rigid-motion.ts';
export { placed } from './linkage/rigid-motion.ts';
export { shaftOf } from './linkage/shaft-from-setup.ts';

// --- Flex ---

export { articulationOf } from './travel/articulation.ts';
export type { Articulation, Flex, FlexLimit, PadContact, Ramp } from './travel/articulation-result.ts';
export { flexEndText, rampEndText } from './words/flexes.ts';
