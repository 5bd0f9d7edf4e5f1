import type { Dimension, Figure } from '../finding/figure.ts';
import type { Finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import type { KnownPaths } from '../rig/known-paths.ts';
import type { TyreFoot } from '../rig/tyre-feel.ts';
import type { SeatKind } from './seat-record.ts';
import type { CriterionId } from './sweep-criteria.ts';
import type { State } from './sweep-scan.ts';

/** The stretch that covers `SweepAnswer.coverage` of the rigs that the readings allow; null where nothing is known. */
export type Ends = { readonly low: number; readonly high: number } | null;

/**
 * Where a criterion is first not held, going faster.
 * `never`: held at every speed of the scan. `broken-at-once`: already at the slowest. `unknown`: the run was given up
 * there before it could be told. `no-limit`: there is nothing to hold it against.
 */
export interface FirstBreak {
  readonly kind: 'broken' | 'broken-at-once' | 'unknown' | 'never' | 'no-limit';
  /** [m/s]; null for `never` and `no-limit`. */
  readonly speed: number | null;
  /** Of the first break over the trials; `high` is infinite where it is never broken. Null without trials. */
  readonly trials: Ends;
  /** Share of the trials in which it is never broken; null without trials. */
  readonly neverShare: number | null;
  /** End that breaks it, or the whole rig; null where nothing does. */
  readonly place: Place | null;
}

/** A stretch of speeds where the nominal rig does not hold. */
export interface Band {
  readonly from: number;
  readonly to: number;
  readonly kind: 'broken' | 'unknown';
}

export interface CriterionSweep {
  readonly id: CriterionId;
  /** What the figure must keep to; null when the owner gave no limit. */
  readonly limit: Figure | null;
  readonly keeps: 'above' | 'below';
  readonly dimension: Dimension;
  readonly first: FirstBreak;
  /** Rising. More than one: it holds again at some faster speed. */
  readonly bands: readonly Band[];
  /** At each speed of the scan: how it stands and the figure of the nominal rig, NaN where unknown. */
  readonly states: readonly State[];
  readonly values: readonly number[];
  /** Of the figure over the trials. */
  readonly spread: readonly Ends[];
  /** Share of the trials that do not hold at this speed; null without trials. */
  readonly brokenShare: readonly number[] | null;
  /**
   * Against the setup held beside: share of the trials, the same rig in both, in which this one gets faster before it
   * breaks, and slower. Null without another setup or without trials.
   */
  readonly against: { readonly faster: number; readonly slower: number } | null;
}

export interface SetupSweep {
  readonly setup: string;
  /** How its tyres read the ground. */
  readonly tyres: TyreFoot;
  /** Which elements close along measured points, and not by a typed ratio. */
  readonly paths: KnownPaths;
  readonly criteria: readonly CriterionSweep[];
  readonly findings: readonly Finding[];
}

export interface SweepAnswer {
  readonly rig: string;
  readonly course: string;
  readonly wantedSpeed: number | null;
  /** For which the dose of a day is reckoned [m]; null when nobody said how far such ground is driven. */
  readonly distancePerDay: number | null;
  /** Whose seat the criteria of a seat are about. */
  readonly seat: SeatKind;
  /** Speeds of the scan [m/s], rising and even: what lies between two of them was not driven. */
  readonly speeds: readonly number[];
  /** Distance between them, and how far a speed of change may be off [m/s]. */
  readonly step: number;
  readonly refined: number;
  readonly trials: number;
  readonly seed: number;
  /** Share of the rigs that an interval covers on average, 0…1; 0 without trials. */
  readonly coverage: number;
  readonly setups: readonly SetupSweep[];
}
