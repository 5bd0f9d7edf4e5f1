import type { Figure } from '../finding/figure.ts';
import type { Corner, End, Side } from '../finding/place.ts';

/** Something that can end the flex of an axle. */
export interface FlexLimit {
  /** `stop`, `coil`, `shock`, `strap`, `hose`, `shaft`, `shock-open`, `tyre-lifts`, or the id of a body contact. */
  readonly id: string;
  readonly name: string;
  readonly side: Side;
  /** Probability that this one is the first. */
  readonly firstShare: number;
}

/** Where the tip of a stop meets its pad. */
export interface PadContact {
  /** From the middle of the pad, along its face [m]. */
  readonly offset: Figure;
  /** `edge`: part of the tip hangs over; `off`: its middle is past the edge; `unknown`: the pad was not measured. */
  readonly stands: 'whole' | 'edge' | 'off' | 'unknown';
}

/** One axle flexed until something ends it: one wheel up, the other down, the axle carrying what it did. */
export interface Flex {
  readonly end: End;
  readonly up: Side;
  /**
   * Most likely first; where it is `none`, nothing known ends it and its figures mean nothing. The first one ends the flex at the
   * nominal readings.
   */
  readonly limits: readonly FlexLimit[];
  /** Roll of the axle against the body [rad]. */
  readonly angle: Figure;
  /** Travel of the wheel that goes up, and of the one that goes down, both positive [m]. */
  readonly bump: Figure;
  readonly droop: Figure;
  /** Load left on the tyre that goes down [N]. */
  readonly lowTyreLoad: Figure;
  /** Of the stop on the side that goes up; null where its points or its links were not measured. */
  readonly pad: PadContact | null;
}

/** One front wheel driven up a ramp, the other three on level ground, until the first tyre lifts or nothing flexes more. */
export interface Ramp {
  /** The wheel on the ramp. */
  readonly corner: Corner;
  /** Of the front axle against the rear one [rad]. */
  readonly twist: Figure;
  /** Height of the wheel on the ramp over the other three [m]. */
  readonly height: Figure;
  /** Distance up a ramp of 20°, along its slope, ÷ wheelbase × 1000. */
  readonly index: Figure;
  /** The axle whose tyre lifts first, null when both are held by contacts before. */
  readonly lifts: End | null;
  /** False where nothing known ends the flex of one of its axles: its figures mean nothing. */
  readonly ends: boolean;
}

export interface Articulation {
  readonly setup: string;
  /** By the wheel that goes up. */
  readonly flex: Readonly<Record<Corner, Flex>>;
  readonly ramps: Readonly<Record<'frontLeft' | 'frontRight', Ramp>>;
  readonly trials: number;
  readonly seed: number;
}
