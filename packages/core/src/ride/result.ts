import type { Corner } from '../finding/place.ts';

/** Numerical outcome of a run. Not a finding and not a problem. */
export type RideStatus = 'finished' | 'step-limit' | 'left-validity' | 'cancelled';

/** Work done, reproducible on one machine and nearly so across machines. */
export interface RideCounters {
  readonly steps: number;
  readonly rejected: number;
  readonly evaluations: number;
  /** Located switches: stop touch, metal, lift-off, coil unseated, droop limit. */
  readonly events: number;
}

export interface CornerRide {
  /** Largest stop crush [m]; 0 when never touched. */
  readonly peakCrush: number;
  /** Largest axle travel in bump at the stop's station [m]. */
  readonly peakTravel: number;
  /** Gap left to metal at the worst moment, axle travel at the stop's station [m]; negative when metal was driven in. */
  readonly clearance: number;
  /** Largest force of stop and metal together, on the body, up [N]. */
  readonly peakStopForce: number;
  /** Share of time with no force under this tyre, 0…1. */
  readonly airborneShare: number;
  /** How often each was newly touched. */
  readonly contacts: {
    readonly stop: number;
    readonly metal: number;
    readonly droop: number;
    /** The shock on its own metal, open and closed. */
    readonly shockOpen: number;
    readonly shockClosed: number;
  };
  /** Largest shock speed in compression and rebound [m/s, both ≥ 0]. */
  readonly peakShockSpeed: { readonly compression: number; readonly rebound: number };
}

export interface BodyRide {
  /** Largest absolute vertical acceleration of the body's centre of gravity, above rest [m/s²]. */
  readonly peakAcceleration: number;
  readonly rmsAcceleration: number;
  readonly peakPitch: number;
  readonly peakRoll: number;
  readonly heaveAtEnd: number;
  readonly pitchAtEnd: number;
}

/** The sitter on his cushion, vertical, above rest [m/s²]. */
export interface SeatRide {
  readonly peakAcceleration: number;
  readonly rmsAcceleration: number;
}

/** Energy balance of a run: stored + dissipated − put in. */
export interface EnergyBalance {
  /** |residual| ÷ largest energy turned over in the run. */
  readonly relativeResidual: number;
  readonly putInByGround: number;
  readonly dissipated: number;
  readonly storedAtEnd: number;
  readonly storedAtStart: number;
}

/** Histories at a fixed rate, for drawing. Four corners interleaved: index 4·k + corner. */
export interface RideHistory {
  readonly rate: number;
  readonly count: number;
  /** [s] is k ÷ rate. Seven coordinates per sample: zs, pitch, roll, zFront, rollFront, zRear, rollRear. */
  readonly coordinates: Float64Array;
  readonly crush: Float64Array;
  readonly clearance: Float64Array;
  readonly stopForce: Float64Array;
  /** Axle travel at the stop's station, bump positive. */
  readonly travel: Float64Array;
  /** Of the body's centre of gravity, up, above rest [m/s²]; pitch and roll [rad/s²]. */
  readonly bodyAcceleration: Float64Array;
  readonly pitchAcceleration: Float64Array;
  readonly rollAcceleration: Float64Array;
  /** Of the sitter on his cushion [m/s²]; null when nobody sits. */
  readonly seatAcceleration: Float64Array | null;
  /** Ground height under each tyre. */
  readonly ground: Float64Array;
}

/** What shakes a seat, evenly sampled: of the body's centre of gravity above rest [m/s²], of its tilting [rad/s²]. */
export interface ShakeRecord {
  readonly rate: number;
  readonly heave: Float64Array;
  readonly pitch: Float64Array;
  readonly roll: Float64Array;
  /** Of the sitter on his cushion [m/s²]; null when nobody sits. */
  readonly sitter: Float64Array | null;
}

export interface RideRun {
  readonly status: RideStatus;
  /** Time reached [s] and asked for. */
  readonly time: number;
  readonly duration: number;
  readonly corners: Readonly<Record<Corner, CornerRide>>;
  readonly body: BodyRide;
  /** Null when the model has no seat. */
  readonly seat: SeatRide | null;
  readonly energy: EnergyBalance;
  readonly counters: RideCounters;
  readonly history: RideHistory | null;
  /** Null unless it was asked for. */
  readonly shake: ShakeRecord | null;
}
