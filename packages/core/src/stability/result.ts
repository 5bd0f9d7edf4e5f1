import type { Figure } from '../finding/figure.ts';
import type { Finding } from '../finding/finding.ts';
import type { End, Side } from '../finding/place.ts';
import type { Origin } from '../rig/reading.ts';

/** What is told of a setup, in the order in which it is shown. */
export const STABILITY_LINES = [
  'cg-height',
  'static-stability-factor',
  'slope-rigid',
  'slope-first-lift',
  'slope-tips',
  'slope-lean',
  'roll-centre',
  'roll-lever',
  'roll-springs',
  'roll-gas',
  'roll-bar',
  'roll-tyres',
  'roll-whole',
  'roll-gradient',
  'load-transfer',
  'load-transfer-share',
  'stop-touches',
  'ride-frequency',
  'hop-frequency',
  'damping-compression',
  'damping-rebound',
  'flat-ride-ratio',
  'flat-ride-wanted',
  'flat-ride-speed',
  'washboard-sinks',
  'washboard-swing',
] as const;
export type StabilityLineId = (typeof STABILITY_LINES)[number];

/**
 * One figure of a setup. What each is:
 * - `cg-height` of the whole rig above the ground as the setup stands; `static-stability-factor` track ÷ (2·height);
 * - `slope-…`: side slopes standing still: without any give, first upper wheel unloaded, tips, and how the body leans then;
 * - `roll-centre` above the ground; `roll-lever` sprung mass over the roll axis;
 * - `roll-springs`, `-gas`, `-bar`, `-tyres`, `-whole`: stiffness [N·m/rad]; whole of the rig: both ends side by side;
 * - `roll-gradient` lean per g sideways [rad]; `load-transfer` from one tyre to the other per g [N], `-share` of the total;
 * - `stop-touches` sideways acceleration at which the first stop of an end does;
 * - `flat-ride-ratio` rear ÷ front ride frequency, `-wanted` for the road speed asked, `-speed` at which it is right as is;
 * - `washboard-sinks` how much lower the body rides on it, `-swing` suspension travel to each side.
 */
export interface StabilityLine {
  readonly id: StabilityLineId;
  readonly place: 'rig' | End;
  /** Name of the washboard, else empty. */
  readonly of: string;
  /** Null where there is none: a rig that does not stand, a speed that does not exist. */
  readonly figure: Figure | null;
}

export interface StabilityResult {
  readonly setup: string;
  readonly lines: readonly StabilityLine[];
  /** The side that is the worse one to have down on a side slope. */
  readonly lowerSide: Side;
  /** Where the roll centres come from. */
  readonly rollCentres: Readonly<Record<End, Origin>>;
  readonly findings: readonly Finding[];
}

/** One line of two setups side by side. */
export interface StabilityChange {
  readonly id: StabilityLineId;
  readonly place: 'rig' | End;
  readonly of: string;
  readonly before: Figure | null;
  readonly after: Figure | null;
  /** after − before, trial by trial: what both have wrong in common falls out. */
  readonly change: Figure | null;
}

export interface StabilityComparison {
  readonly before: StabilityResult;
  readonly after: StabilityResult;
  readonly lines: readonly StabilityChange[];
}
