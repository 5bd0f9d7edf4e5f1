import type { StrutId, Unreachable, Vector } from './geometry.ts';

/** What the whole vehicle brings to anti-squat and anti-dive of one axle. */
export interface AntiBasis {
  readonly wheelbase: number;
  /** Height of the centre of gravity of the whole vehicle above ground at ride height [m]; held at all poses. */
  readonly cgHeight: number;
  /** Share of the driving force that this axle puts down, 0 to 1. */
  readonly driveShare: number;
  /** Share of the braking force that this axle puts down, 0 to 1. */
  readonly brakeShare: number;
}

/** Drag link of a steered axle, straight ahead at ride height. */
export interface DragLink {
  /** Ball on the steering box arm, on the body. */
  readonly body: Vector;
  /** Ball at the knuckle, on the axle. */
  readonly axle: Vector;
  /** From the steering axis to that ball [m]: ahead of the axis positive, behind it negative. */
  readonly arm: number;
}

export interface CurveOptions {
  /** Bump poses [m], rising, and roll poses [rad], rising; see `poseOf` for the signs. */
  readonly bumps: ArrayLike<number>;
  readonly rolls: ArrayLike<number>;
  readonly end: 'front' | 'rear';
  readonly anti?: AntiBasis;
  readonly dragLink?: DragLink;
}

/** Curves of one strut, one entry a pose. */
export interface StrutCurves {
  /** Between its points [m]; of a stop, the vertical distance from tip to pad, negative once the tip is past it. */
  readonly length: Float64Array;
  /** Compression by bump, roll held [1], and by roll, bump held [m/rad]. */
  readonly byBump: Float64Array;
  readonly byRoll: Float64Array;
  /** Angle between its axis and the body's vertical [rad]; of a stop, between the line from tip to pad and it. */
  readonly lean: Float64Array;
  /** How far its axle point stands ahead of its body point, and to the left of it [m]. Of a stop: offset on its pad. */
  readonly ahead: Float64Array;
  readonly left: Float64Array;
}

/**
 * Everything that moves with an axle, over a grid of poses. Entry of pose (i, j): `i·rolls.length + j`, i of the bumps.
 * Not a number where the pose cannot be reached.
 */
export interface AxleCurves {
  readonly bumps: Float64Array;
  readonly rolls: Float64Array;
  /** 1 where the pose was reached. */
  readonly reached: Uint8Array;
  /** The pose nearest to ride height that was not, and why. */
  readonly unreachable: Unreachable | null;
  /** Shift of the hub-line centre [m]: forward, and to the left. */
  readonly forward: Float64Array;
  readonly sideways: Float64Array;
  /** Of the hub line seen from above [rad], to the left positive. */
  readonly steer: Float64Array;
  /** Steer by bump [rad/m] and by roll [1], the other held. */
  readonly bumpSteer: Float64Array;
  readonly rollSteer: Float64Array;
  /** Turn of the pinion about the hub line [rad], nose up positive. */
  readonly pinion: Float64Array;
  /** Change of caster [rad]: top of the steering axis back positive. */
  readonly caster: Float64Array;
  /** Side-view instant centre of heave [m], in the frame of the geometry; infinite where the axle does not turn. */
  readonly instantX: Float64Array;
  readonly instantZ: Float64Array;
  /** Rise of the line from the contact patch to the instant centre [1]; positive where it works against squat and dive. */
  readonly antiSlope: Float64Array;
  /** Share of the load transfer that the links carry under drive and under braking [1]; null without an `AntiBasis`. */
  readonly antiDrive: Float64Array | null;
  readonly antiBrake: Float64Array | null;
  /** Roll centre of the axle [m]: in the frame of the geometry, and above the ground under the tyres. */
  readonly rollCentreZ: Float64Array;
  readonly rollCentreHeight: Float64Array;
  /** Rise of this axle's own roll axis to the front [1]. */
  readonly rollAxisRise: Float64Array;
  /** Heading of the steered wheels [rad], to the left positive, steering wheel held straight; null without a drag link. */
  readonly wheelSteer: Float64Array | null;
  /** Largest length that the bushes of a rod give [m], and largest turn that a radius arm's clamp gives [rad]. */
  readonly rodGive: Float64Array;
  readonly clampTurn: Float64Array;
  readonly struts: Readonly<Partial<Record<StrutId, StrutCurves>>>;
}
