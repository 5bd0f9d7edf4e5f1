import type { Reaction, ShockTrigger, ZonePlace } from './limits.ts';
import type { SpinalResponse } from './spinal.ts';
import type { Weighting } from './weighting.ts';

/**
 * Why less is known than was asked for.
 * `record-empty`, `record-broken`, `rate-too-low` and `gravity-left` leave nothing known; `record-short` leaves the
 * averages unknown; `rate-low` narrows the band.
 */
export const EXPOSURE_DOUBTS = [
  'record-empty',
  'record-broken',
  'rate-too-low',
  'gravity-left',
  'record-short',
  'rate-low',
] as const;
export type ExposureDoubt = (typeof EXPOSURE_DOUBTS)[number];

/** One direction at the seat, frequency-weighted. Null is unknown. */
export interface AxisExposure {
  readonly weighting: Weighting;
  /** k, by which this direction counts in daily values. */
  readonly factor: number;
  /** a_w [m/s²]. */
  readonly rms: number | null;
  /** MTVV with a linear window of 1 s [m/s²]. */
  readonly maximumTransient: number | null;
  /** Largest weighted acceleration [m/s²]. */
  readonly peak: number;
  readonly crestFactor: number | null;
  /** VDV of the record [m/s^1.75]. */
  readonly dose: number;
  /** eVDV of the record [m/s^1.75]. */
  readonly estimatedDose: number | null;
  /** Signs that the r.m.s. tells too little; null when the r.m.s. is unknown. */
  readonly shocks: readonly ShockTrigger[] | null;
}

/** A day of such driving, by the direction that counts most. */
export interface DailyExposure {
  readonly driven: number;
  /** A(8) [m/s²]. */
  readonly acceleration: number | null;
  /** Dose of the day [m/s^1.75]. */
  readonly dose: number;
  readonly zone: { readonly equalEnergy: ZonePlace; readonly fourthPower: ZonePlace } | null;
}

/** Driving time until a daily value is reached [s], by either measure. */
export interface TimeTo {
  readonly byAcceleration: number | null;
  readonly byDose: number;
}

/** What the seat takes, by its directions and by every measure of this room. Plain data; SI. */
export interface SeatExposure {
  readonly vertical: AxisExposure;
  readonly foreAndAft: AxisExposure | null;
  readonly sideways: AxisExposure | null;
  /** Vibration total value with the factors k; null unless all three directions are known [m/s²]. */
  readonly total: number | null;
  /** Bands of reaction for the directions that are known, mild first. */
  readonly comfort: readonly Reaction[] | null;
  readonly toAction: TimeTo;
  readonly toLimit: TimeTo;
  /** Null when no time a day was given. */
  readonly daily: DailyExposure | null;
  /** [W] */
  readonly absorbedPower: number | null;
  /** After 30 Hz low-pass, up or down [m/s²]. */
  readonly lowPassedPeak: number;
  readonly dynamicResponseIndex: number;
  /** ISO 2631-5:2004; null below 160 samples a second. */
  readonly spinal: SpinalResponse | null;
}

export interface ExposureResult {
  /** [Hz] and [s] of the record. */
  readonly rate: number;
  readonly duration: number;
  /** Content up to this frequency is right to 0.1 dB [Hz]. */
  readonly rightUpTo: number;
  readonly doubts: readonly ExposureDoubt[];
  /** Null when nothing can be said; `doubts` says why. */
  readonly seat: SeatExposure | null;
}
