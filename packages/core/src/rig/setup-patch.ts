import type { JointKind, LinkName } from './linkage.ts';
import type { Reading } from './reading.ts';

/** A joint or mount moved, and only then does everything that hangs on it settle anew [m]. */
export interface PointPatch {
  readonly ahead?: Reading;
  /** Away from the centreline, both of a pair alike; of one that stands alone, to the left. */
  readonly out?: Reading;
  readonly up?: Reading;
}

export interface LinkPatch {
  readonly axle?: PointPatch;
  readonly frame?: PointPatch;
  /** Added to its length at an adjuster; minus is shorter [m]. */
  readonly longer?: Reading;
}

/** Another shaft, or its case moved. */
export interface ShaftPatch {
  readonly case?: PointPatch;
  readonly pinionJoint?: JointKind;
  readonly caseJoint?: JointKind;
  readonly slip?: Reading;
  readonly slipIn?: Reading;
}

/** Changes at one end, all optional. What each does to the travel column is `travel/SPEC.md`, rules T1–T11. */
export interface EndPatch {
  /** Other stop from the shelf. */
  readonly stop?: string;
  /** Stop gap that the owner will set, instead of the one that follows from free lengths [m]. */
  readonly stopGap?: Reading;
  /** Solid piece behind the stop or under its pad [m]. */
  readonly stopSpacer?: Reading;
  /** Coil seat and stop lowered together on the frame; coil and pad unchanged [m]. */
  readonly seatAndStopDrop?: Reading;
  /** Spacer on the same coil [m]. */
  readonly springSpacer?: Reading;
  /** Other spring from the shelf. */
  readonly spring?: string;
  /** Material taken away, or part moved, at one contact: contact id → gain along that contact's motion [m]. */
  readonly notch?: Readonly<Record<string, Reading>>;
  readonly shockSetting?: string;
  /** Links of the anti-roll bar taken off, as for the trail. */
  readonly antiRollBar?: 'off' | 'on';
  /** Inflation [Pa]: moves the tyre rate along the line of its size (marked), never the gap between frame and axle. */
  readonly tyrePressure?: Reading;
  /** Mass added on this end above the springs [kg]; the suspension sags. */
  readonly addedLoad?: Reading;
  /** Other strap length [m]. */
  readonly strapLength?: Reading;
  /** Links moved or adjusted; both of a pair alike. */
  readonly links?: Readonly<Partial<Record<LinkName, LinkPatch>>>;
  readonly shaft?: ShaftPatch;
}

/** A named patch over the rig. */
export interface SetupPatch {
  readonly id: string;
  readonly notes: string;
  readonly front: EndPatch;
  readonly rear: EndPatch;
}
