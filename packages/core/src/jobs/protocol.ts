import type { Figure } from '../finding/figure.ts';
import type { Finding } from '../finding/finding.ts';
import type { Corner } from '../finding/place.ts';
import type { RideRun } from '../ride/result.ts';
import type { CourseShape } from '../rig/course-spec.ts';
import type { KnownPaths } from '../rig/known-paths.ts';
import type { Rig } from '../rig/rig.ts';
import type { TyreFeel, TyreFoot } from '../rig/tyre-feel.ts';
import type { StanceResult } from '../stance/result.ts';
import type { TravelResult } from '../travel/result.ts';
import type { RideExposure } from './ride-exposure.ts';

/** Statics and travel of one setup: what `lastinch check` and the Travel step show. */
export interface CheckResult {
  readonly rig: string;
  readonly setup: string;
  readonly stance: StanceResult;
  readonly travel: TravelResult;
  /** All findings, worst first. */
  readonly findings: readonly Finding[];
}

export interface RideRequest {
  readonly rig: Rig;
  readonly setup: string;
  readonly course: CourseShape;
  /** Label of the course in findings. */
  readonly courseName: string;
  /** [m/s] > 0. */
  readonly speed: number;
  /** Samples a second of the recorded history; 0 records nothing. */
  readonly historyRate: number;
  /** Runs over the measurement tolerances that make the intervals; 0 gives none. */
  readonly trials: number;
  readonly seed: number;
  /** How the tyres read the ground; a moving footprint when left out. */
  readonly tyres?: TyreFeel;
  /** How far such ground is driven in a day [m]; left out or null when nobody said. */
  readonly distancePerDay?: number | null;
}

export interface CornerInterval {
  /** Axle travel in bump at the stop's station. */
  readonly peakTravel: Figure;
  readonly peakCrush: Figure;
  readonly clearance: Figure;
  readonly peakStopForce: Figure;
  readonly airborneShare: Figure;
}

export interface RideAnswer {
  readonly rig: string;
  readonly setup: string;
  readonly course: string;
  /** How the tyres read the ground, and with what length of contact. */
  readonly tyres: TyreFoot;
  /** Which elements close along measured points, and not by a typed ratio. */
  readonly paths: KnownPaths;
  readonly speed: number;
  /** The run at the nominal readings. */
  readonly run: RideRun;
  /** Nominal figures with their 95 % half-widths from the trials; tolerance null when trials = 0. */
  readonly corners: Readonly<Record<Corner, CornerInterval>>;
  readonly body: { readonly peakAcceleration: Figure; readonly rmsAcceleration: Figure };
  /** What the seat takes. */
  readonly exposure: RideExposure;
  readonly findings: readonly Finding[];
}

/** Messages to a worker. The same ids come back; a newer request of the same `lane` makes an older one stale. */
export type ToWorker = { readonly kind: 'ride'; readonly id: number; readonly request: RideRequest };

/** Messages from a worker. */
export type FromWorker =
  | { readonly kind: 'ride-done'; readonly id: number; readonly answer: RideAnswer }
  | { readonly kind: 'progress'; readonly id: number; readonly share: number }
  | { readonly kind: 'broken'; readonly id: number; readonly message: string };
