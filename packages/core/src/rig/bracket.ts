import type { Reading } from './reading.ts';
import type { BoltGrade, ThreadName } from './thread.ts';

/** What a bracket carries. */
export const MOUNT_NAMES = ['stop', 'spring', 'shock'] as const;
export type MountName = (typeof MOUNT_NAMES)[number];

/**
 * How the load acts: a `tower` stands out of the rail and is bent, a `tube` is pressed along itself, a `plate` is held at
 * its edges and pressed in its middle, a `bolt-on` bracket is a tower that bolts hold.
 */
export const BRACKET_KINDS = ['tower', 'tube', 'plate', 'bolt-on'] as const;
export type BracketKind = (typeof BRACKET_KINDS)[number];

/** Cut through the bracket, outside sizes [m]. Depth lies in the plane of the load. */
export type BracketSection =
  | {
      readonly shape: 'box';
      readonly width: Reading;
      readonly depth: Reading;
      readonly wall: Reading;
    }
  | { readonly shape: 'round'; readonly diameter: Reading; readonly wall: Reading }
  | { readonly shape: 'bar'; readonly width: Reading; readonly depth: Reading };

/** Gussets in the plane of the load, on one side, at the root. */
export interface BracketGusset {
  readonly thickness: Reading;
  readonly count: number;
  /** From the root along the bracket [m], and how far they stand out at the root [m]; they run out in a straight line. */
  readonly reach: Reading;
  readonly height: Reading;
}

/** A plate held at its edges. */
export interface BracketPlate {
  /** Both edges, or the diameter twice [m]. */
  readonly width: Reading;
  readonly length: Reading;
  readonly isRound: boolean;
  readonly thickness: Reading;
  /** Diameter of what stands on its middle [m]. */
  readonly pad: Reading;
}

export interface BracketBolts {
  readonly thread: ThreadName;
  readonly grade: BoltGrade;
  readonly count: number;
  /** Between the rows of bolts, in the plane of the load [m]. */
  readonly spread: Reading;
  /** Wall of the frame that they go through [m], and centre of a hole to its edge [m]. */
  readonly wall: Reading;
  readonly edge: Reading;
}

/** The stud or screw that holds the stop, in a captive nut. */
export interface BracketStud {
  readonly thread: ThreadName;
  readonly grade: BoltGrade;
  /** Full threads in the nut [m]. */
  readonly engaged: Reading;
}

/** What carries a mount on the frame, as measured or planned. Parts that were not told are null and are not checked. */
export interface Bracket {
  readonly mount: MountName;
  readonly kind: BracketKind;
  /** Load line to the rail, or length of a tube along the load [m]; null for a plate. */
  readonly standoff: Reading | null;
  /** Load beside the middle of the bracket, square to its plane [m]. */
  readonly offset: Reading;
  readonly section: BracketSection | null;
  readonly gusset: BracketGusset | null;
  readonly plate: BracketPlate | null;
  /** Leg of the fillet all around the section at its root [m]. */
  readonly weldLeg: Reading | null;
  readonly bolts: BracketBolts | null;
  readonly stud: BracketStud | null;
  /** [Pa] */
  readonly yield: Reading;
  readonly ultimate: Reading;
}

export type Brackets = Readonly<Record<MountName, Bracket | null>>;
