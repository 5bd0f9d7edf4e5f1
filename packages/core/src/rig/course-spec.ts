import type { Side } from '../finding/place.ts';

/**
 * A course as data: exact parameters [m, rad, cycles/m], no tolerance (the ground is a choice, not a reading).
 * Distance s runs forward from where the front axle starts; heights are up.
 */
export type CourseShape =
  | { readonly kind: 'flat'; readonly length: number }
  | {
      readonly kind: 'whoops';
      /** Trough to crest. */
      readonly height: number;
      /** Crest to crest. */
      readonly spacing: number;
      readonly count: number;
      readonly start: number;
      /** The right track lags by this phase [rad]; 0 = both sides alike, π = alternating. */
      readonly rightPhase: number;
    }
  | {
      readonly kind: 'irregular-whoops';
      /** Trough to crest, in the middle of its band. */
      readonly height: number;
      /** Crest to crest, in the middle of its band. */
      readonly spacing: number;
      /** Each height lies within ± this share of `height`, 0 … below 1. */
      readonly heightScatter: number;
      readonly spacingScatter: number;
      readonly count: number;
      readonly start: number;
      /** Phase of the mean spacing by which the right track lags [rad]. */
      readonly rightPhase: number;
      readonly seed: number;
    }
  | {
      readonly kind: 'ledge';
      readonly side: Side | 'both';
      /** Up positive; negative is a step down. */
      readonly height: number;
      /** Distance over which it rises (rounded half-cosine). */
      readonly length: number;
      readonly start: number;
    }
  | {
      readonly kind: 'ditch';
      readonly side: Side | 'both';
      /** Positive down. */
      readonly depth: number;
      /** Lip to lip. */
      readonly length: number;
      /** Level part of its bottom, 0 … below `length`. */
      readonly bottom: number;
      readonly start: number;
      /** The right track meets it this much later: a ditch that is crossed at an angle. */
      readonly rightLag: number;
    }
  | {
      readonly kind: 'half-round';
      readonly side: Side | 'both';
      readonly height: number;
      /** Along the ground, at least twice the height: then it is half a cylinder. */
      readonly length: number;
      /** Of the rigid wheel that is taken to roll over it. */
      readonly wheelRadius: number;
      /** Where the wheel first touches it. */
      readonly start: number;
      readonly rightLag: number;
    }
  | {
      readonly kind: 'rocks';
      /** Of the largest rock. */
      readonly height: number;
      /** Of the longest rock, along the track. */
      readonly rockLength: number;
      /** From one rock to the next on the same track, on average. */
      readonly spacing: number;
      /** Of the whole field. */
      readonly length: number;
      readonly start: number;
      readonly seed: number;
      /** Left and right exchanged. */
      readonly mirrored: boolean;
    }
  | {
      readonly kind: 'washboard';
      /** Trough to crest. */
      readonly height: number;
      readonly spacing: number;
      /** Rounded to whole waves. */
      readonly length: number;
      /** Distance over which it grows at the beginning and goes at the end. */
      readonly fadeIn: number;
      readonly start: number;
      readonly rightPhase: number;
    }
  | {
      readonly kind: 'waves';
      readonly waves: readonly Wave[];
      /** Distance over which the height fades in from flat. */
      readonly fadeIn: number;
      readonly length: number;
    }
  | {
      readonly kind: 'road-class';
      /** Spectral density of the height at 0.1 cycles/m, Gd(n0) of ISO 8608 [m³]. */
      readonly roughness: number;
      readonly length: number;
      readonly fadeIn: number;
      /** From the left track to the right one: the closer, the more alike they are. */
      readonly trackWidth: number;
      readonly seed: number;
      readonly mirrored: boolean;
    }
  | {
      readonly kind: 'ramp-landing';
      /** Of the lip of the ramp, its highest point. */
      readonly height: number;
      /** From the foot of the ramp to its highest point. */
      readonly length: number;
      /** Length over which every edge is rounded. */
      readonly lip: number;
      /** From the lip to the top of the landing. */
      readonly deck: number;
      /** Of the top of the landing; 0: there is none, the deck goes down to the level ground. */
      readonly landingHeight: number;
      readonly landingLength: number;
      readonly start: number;
    }
  | {
      readonly kind: 'crest';
      readonly height: number;
      /** Slope of the flanks, up and down. */
      readonly grade: number;
      /** Length of the rounded top. */
      readonly top: number;
      /** Length over which either foot is rounded. */
      readonly foot: number;
      readonly start: number;
    }
  | {
      readonly kind: 'profile';
      /** Where it was measured, rising. */
      readonly distance: readonly number[];
      /** Height of the ground under each track at that distance. */
      readonly left: readonly number[];
      readonly right: readonly number[];
      readonly fadeIn: number;
      readonly mirrored: boolean;
    }
  /** The rig is let go with its tyres this far above flat ground. */
  | { readonly kind: 'drop'; readonly height: number };

/** One component of a wave-sum road: common·sin(2πns + commonPhase) + own·sin(2πns + phase of that side). */
export interface Wave {
  /** [cycles/m] */
  readonly n: number;
  readonly common: number;
  readonly commonPhase: number;
  readonly own: number;
  readonly leftPhase: number;
  readonly rightPhase: number;
}

/** A course in the rig file: a shape, and the speed at which its owner wants to drive it. */
export interface CourseSpec {
  readonly id: string;
  readonly shape: CourseShape;
  /** [m/s]; for `drop` it has no effect. Null when not given. */
  readonly speed: number | null;
  /** How far such ground is driven in a day [m]; null when not given. */
  readonly perDay: number | null;
  readonly notes: string;
}
