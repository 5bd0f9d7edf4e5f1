import type { Side } from '../finding/place.ts';
import type { Reading, Sided, ValueOf } from './reading.ts';

/**
 * Links and mounts as a person with a tape measures them, at ride height on level ground. What becomes of them is
 * worked out in `linkage/`: here stands only what was read, and from where.
 */

export const LINKAGE_KINDS = ['three-link', 'four-link', 'triangulated', 'radius-arms', 'leaf'] as const;
export type LinkageKind = (typeof LINKAGE_KINDS)[number];

/** One coordinate of a point: factor · reading. Behind and below count −1, a left-to-right spread one half. */
export interface Taped {
  readonly reading: Reading;
  readonly factor: number;
}

/** What a height was taped from. */
export type HeightFrom = 'floor' | 'tube' | 'rail';

/** A point on the rig, in three tapes. */
export interface TapedPoint {
  /** Path in the file, `front.links.lower.axle`; the right one of a pair has the same as the left where it was mirrored. */
  readonly key: string;
  /** Forward of the centre of the axle tube of its end [m]. */
  readonly ahead: Taped;
  /** Left of the centreline [m]. */
  readonly left: Taped;
  /** Above what `from` names [m]. */
  readonly up: Taped;
  readonly from: HeightFrom;
  /** Height of that above the floor [m]; null for the floor itself. */
  readonly datum: Reading | null;
}

/** Two points that something is held by: on the axle, and on frame or body. */
export interface TapedPair {
  readonly axle: TapedPoint;
  readonly frame: TapedPoint;
}

/** One link with the names under which it stands in the file and in every answer. */
export interface MeasuredLink extends TapedPair {
  /** `lower-left`, `upper`, `arm-right`, `panhard`… */
  readonly id: string;
  /** Name in the file and in setups. */
  readonly name: LinkName;
  /** Null for a link that stands alone. */
  readonly side: Side | null;
}

export const LINK_NAMES = ['lower', 'upper', 'arm', 'panhard'] as const;
export type LinkName = (typeof LINK_NAMES)[number];

export interface MeasuredLinkage {
  readonly kind: LinkageKind;
  /** Left before right, lower before upper before Panhard; none for leaves. */
  readonly links: readonly MeasuredLink[];
}

/** A stop between its tip and its pad. */
export interface StopPoints {
  readonly points: Sided<TapedPair>;
  /** Which of the two carries the stop; the pad is on the other. */
  readonly carrier: 'axle' | 'frame';
  /** Smallest side, or diameter, of the pad [m]; null when not measured. */
  readonly padSize: Reading | null;
  /** Diameter of the stop's tip [m]; null when not measured. */
  readonly tipSize: Reading | null;
}

/** Real mount points of the elements, where they were measured. */
export interface Mounts {
  readonly spring: Sided<TapedPair> | null;
  readonly shock: Sided<TapedPair> | null;
  readonly stop: StopPoints | null;
}

export const JOINT_KINDS = ['single', 'double', 'constant-velocity'] as const;
export type JointKind = (typeof JOINT_KINDS)[number];

/** A driveshaft between its joints. */
export interface Driveline {
  /** Centre of the joint at the axle, and of the joint at the case (of a double one: its middle). */
  readonly pinion: TapedPoint;
  readonly case: TapedPoint;
  /** Of the pinion against level, its nose up positive [rad]. */
  readonly pinionAngle: Reading;
  /** Of the output at the case against level, its flange end up positive [rad]. */
  readonly caseAngle: Reading;
  readonly pinionJoint: JointKind;
  readonly caseJoint: JointKind;
  /** Angle at which each joint binds, turned by hand or from its maker [rad]; null when not measured. */
  readonly pinionBindsAt: Reading | null;
  readonly caseBindsAt: Reading | null;
  /** Twist of the yoke at the pinion against the one at the case [rad]; null: in line. */
  readonly yokeTwist: Reading | null;
  /** Tube of the shaft [m]; null when not measured. */
  readonly tubeOutside: Reading | null;
  readonly tubeWall: Reading | null;
  /** From all in to all out, less what must stay engaged [m]; null when not measured. */
  readonly slip: Reading | null;
  /** How far it can still go in at ride height [m]; null when not measured. */
  readonly slipIn: Reading | null;
}

/** A hose between its fixed ends. */
export interface HosePoints {
  /** Both sides where each wheel has its own; the same object twice where there is one in the middle. */
  readonly points: Sided<TapedPair>;
  /** Whether its outer end turns with the wheel. */
  readonly steers: boolean;
  readonly freeLength: Reading;
  /** Outer diameter [m]; null when not measured. */
  readonly diameter: Reading | null;
  /** Link along which it may be tied; null when none. */
  readonly tieTo: LinkName | null;
}

/** A drag link from the arm of the box to a knuckle. */
export interface MeasuredDragLink {
  /** Ball at the knuckle, and ball at the arm of the box. */
  readonly points: TapedPair;
  /** From the kingpin axis to the drag link's ball at the knuckle, square to the link [m]. */
  readonly armLength: Reading;
  readonly boxSide: Side;
}

/** Steering of a solid front axle. */
export interface SteeringPoints {
  readonly dragLink: MeasuredDragLink | null;
  /** From left kingpin to right one, at hub height [m]; null when not measured. */
  readonly kingpinSpread: Reading | null;
  /** Top of the kingpin inboard of its foot, positive [rad]; null when not measured. */
  readonly inclination: Reading | null;
  /** Top of the kingpin behind its foot, positive [rad]; null when not measured. */
  readonly caster: Reading | null;
  /** Turn of the wheels to full lock [rad]; null when not measured. */
  readonly lock: Reading | null;
}

/** Everything about one end that moves with links. Each part null where it was not measured. */
export interface EndPoints {
  /** Underside of the frame rail above the floor, by the axle [m]; null when no height was taped from it. */
  readonly railHeight: Reading | null;
  readonly linkage: MeasuredLinkage | null;
  readonly mounts: Mounts;
  readonly driveline: Driveline | null;
  readonly hose: HosePoints | null;
  readonly steering: SteeringPoints | null;
  /** Turns of the shaft ÷ turns of the wheel; null when not known. */
  readonly axleRatio: Reading | null;
}

/** A coordinate in SI, as measured or in a trial. */
export const tapedValue = ({ reading, factor }: Taped, read: ValueOf): number => factor * read(reading);

/** Height above the floor [m]. */
export const heightOf = ({ up, datum }: TapedPoint, read: ValueOf): number =>
  tapedValue(up, read) + (datum ? read(datum) : 0);
