import type { End, Side } from '../finding/place.ts';

/**
 * The seven-coordinate model as numbers: the one input of the ride solver, whoever made it
 * (a rig in a setup, a `ride-case/1` file, a test). SI; frames and signs of docs/names-and-frames.md.
 * Compression of an element is positive in bump, in axle travel at its own station; force on the body positive up.
 */
export interface RideModel {
  readonly sprung: {
    readonly mass: number;
    readonly rollInertia: number;
    readonly pitchInertia: number;
    /** Centre of gravity to front axle, > 0 [m]. */
    readonly toFrontAxle: number;
    readonly toRearAxle: number;
  };
  readonly axles: Readonly<Record<End, AxleModel>>;
  readonly gravity: number;
}

export interface AxleModel {
  readonly mass: number;
  readonly rollInertia: number;
  readonly halfTrack: number;
  readonly spring: {
    readonly halfStation: number;
    readonly rate: number /** Axle travel ÷ 1. */;
    readonly ratio: number;
  };
  readonly shock: {
    readonly halfStation: number;
    readonly ratio: number;
    readonly speed: readonly number[];
    readonly force: readonly number[];
  };
  readonly stop: {
    readonly halfStation: number;
    readonly ratio: number;
    /** Tip to pad along the stop, per side [m]. */
    readonly gap: Readonly<Record<Side, number>>;
    readonly crush: readonly number[];
    readonly force: readonly number[];
    readonly rateFactor: number;
  };
  /** Metal behind the stop, in stop crush, per side; adds rate·(crush − at). */
  readonly metal: { readonly atCrush: Readonly<Record<Side, number>>; readonly rate: number };
  /** Acts at the shock's station: pulls when compression < −at. */
  readonly droopLimit: { readonly at: number; readonly rate: number; readonly rateFactor: number };
  readonly tyre: { readonly rate: number; readonly damping: number };
}
