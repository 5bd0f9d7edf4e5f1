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
      readonly kind: 'ledge';
      readonly side: Side | 'both';
      /** Up positive; negative is a step down. */
      readonly height: number;
      /** Distance over which it rises (rounded half-cosine). */
      readonly length: number;
      readonly start: number;
    }
  | {
      readonly kind: 'waves';
      readonly waves: readonly Wave[];
      /** Distance over which the height fades in from flat. */
      readonly fadeIn: number;
      readonly length: number;
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
  readonly notes: string;
}
