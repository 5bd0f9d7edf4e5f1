import { doubleJointHalves } from './double-joint.ts';
import type { AxleGeometry, AxlePose, Vector } from './geometry.ts';
import { movedPoint } from './geometry.ts';
import { type BentJoint, equivalentAngle, peakAcceleration, unevenness } from './universal-joint.ts';
import { cross, dot, minus, size, turned } from './vector.ts';

/** One cross, two crosses with a centring ball, or a joint that is even at every angle. */
export type JointKind = 'single' | 'double' | 'constant-velocity';

export interface ShaftJoint {
  readonly kind: JointKind;
  /** Centre of the joint (of a double one: where both axes meet) [m]. */
  readonly point: Vector;
  /** Direction of the shaft that comes out of case or axle; length and sense do not matter. */
  readonly axis: Vector;
  /** Angle at which the joint binds, from its maker or turned by hand [rad]; null: the usual one of its kind. */
  readonly bindsAt: number | null;
  /** Of a double joint: the angle at which it runs evenly [rad]; 0 when nothing is known. */
  readonly evenAt: number;
}

/** Slip of a shaft. */
export interface Slip {
  /** From all in to all out, less what must stay engaged [m]. */
  readonly usable: number;
  /** How far it can still go in at ride height [m]; null when not measured. */
  readonly inAtRide: number | null;
}

export interface ShaftTube {
  readonly outside: number;
  readonly wall: number;
  /** [Pa], [kg/m³]; steel when left out. */
  readonly modulus?: number;
  readonly density?: number;
}

/** A driveshaft of two joints, at ride height, in the frame of `AxleGeometry`. */
export interface Shaft {
  /** On the body. */
  readonly caseJoint: ShaftJoint;
  /** On the axle. */
  readonly pinionJoint: ShaftJoint;
  /** Twist of the yoke at the pinion against the one at the case, along the shaft [rad]; 0: in line. */
  readonly yokeTwist: number;
  readonly slip: Slip | null;
  readonly tube: ShaftTube | null;
}

/** A driveshaft in one pose. */
export interface ShaftState {
  /** Between the centres of its joints [m]. */
  readonly length: number;
  /** Operating angle of each joint in space, between its shafts [rad], 0 … π/2. */
  readonly caseAngle: number;
  readonly pinionAngle: number;
  /** From the plane of the bend at the case to that at the pinion, about the shaft [rad], −π … π; 0 or ±π: one plane. */
  readonly bendTurn: number;
  /** Of shaft, case output and pinion against level, all seen from the pinion towards the case, up positive [rad]. */
  readonly shaftSlope: number;
  readonly caseSlope: number;
  readonly pinionSlope: number;
  /** The one universal joint that would run as unevenly as case, shaft and pinion together [rad]. */
  readonly residualAngle: number;
  /** (Largest − smallest speed) ÷ mean, of the shaft itself with the case steady, and of the pinion [1]. */
  readonly shaftUnevenness: number;
  readonly pinionUnevenness: number;
  /** Peak angular acceleration ÷ square of the speed [1]: of the shaft with either end steady (the larger), of the pinion. */
  readonly shaftJerk: number;
  readonly pinionJerk: number;
}

/** Product of two bends below which neither has a plane that could be told; they are straight then [rad²]. */
const NO_PLANE = 1e-14;

/**
 * A driveshaft where the axle stands in a pose.
 *
 * Angles are those in space, not their side view: they hold for a pinion off to the side and an axle that steers or
 * rolls. The speed of the pinion comes from all crosses in a row (`equivalentAngle`).
 *
 * @validity rigid shafts; no wind-up of axle or mounts under torque
 * @throws when both joints stand in one point: refused while reading the rig
 */
export function shaftIn(shaft: Shaft, geometry: AxleGeometry, pose: AxlePose): ShaftState {
  const pinion = movedPoint(pose, geometry, shaft.pinionJoint.point);
  const along = minus(pinion, shaft.caseJoint.point);
  const length = size(along);
  if (length === 0) throw new Error('a driveshaft of no length');
  const output = facing(shaft.caseJoint.axis, along);
  const input = facing(turned(pose.rotation, shaft.pinionJoint.axis), along);
  const caseAngle = between(output, along);
  const pinionAngle = between(along, input);
  const bendTurn = turnAbout(along, cross(output, along), cross(along, input));
  const atCase = crossesOf(shaft.caseJoint, caseAngle, false);
  const atPinion = crossesOf(shaft.pinionJoint, pinionAngle, true);
  const [first, ...others] = atPinion;
  const row: BentJoint[] = [...atCase];
  if (first) row.push({ ...first, turn: bendTurn - shaft.yokeTwist }, ...others);
  const residualAngle = equivalentAngle(row);
  const shaftAngle = equivalentAngle(atCase);
  return {
    length,
    caseAngle,
    pinionAngle,
    bendTurn,
    shaftSlope: riseBackAlong(along),
    caseSlope: riseBackAlong(output),
    pinionSlope: riseBackAlong(input),
    residualAngle,
    shaftUnevenness: unevenness(shaftAngle),
    pinionUnevenness: unevenness(residualAngle),
    shaftJerk: Math.max(peakAcceleration(shaftAngle), peakAcceleration(equivalentAngle(atPinion))),
    pinionJerk: peakAcceleration(residualAngle),
  };
}

/** Crosses of a joint in the order of drive; at the pinion a double joint has its fixed side last. */
function crossesOf({ kind, evenAt }: ShaftJoint, angle: number, fixedLast: boolean): readonly BentJoint[] {
  if (kind === 'constant-velocity') return [];
  if (kind === 'single') return [{ angle, turn: 0 }];
  const [fixed, sliding] = doubleJointHalves(angle, evenAt);
  const halves = fixedLast ? [sliding, fixed] : [fixed, sliding];
  // Both bend the same way, and the yokes of the piece between stand in line.
  return halves.map((half) => ({ angle: half, turn: 0 }));
}

/** Unit vector of a line, in the sense that goes along another. */
function facing(axis: Vector, along: Vector): Vector {
  const length = dot(axis, along) < 0 ? -size(axis) : size(axis);
  return [axis[0] / length, axis[1] / length, axis[2] / length];
}

/** Angle of two directions [rad], 0 … π; near 0 as exact as elsewhere. */
const between = (a: Vector, b: Vector): number => Math.atan2(size(cross(a, b)), dot(a, b));

/** Slope of a direction from case to pinion, seen the other way. */
const riseBackAlong = ([x, y, z]: Vector): number => Math.atan2(-z, Math.hypot(x, y));

/** Turn from one direction to another about a line that is square to both; 0 where one of them has no size. */
function turnAbout(line: Vector, from: Vector, to: Vector): number {
  const sizes = size(from) * size(to);
  if (sizes <= NO_PLANE * dot(line, line)) return 0;
  return Math.atan2(dot(line, cross(from, to)) / size(line), dot(from, to));
}
