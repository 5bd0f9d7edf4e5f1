import type { MaxwellBranch } from '../elements/maxwell.ts';
import type { FrictionBranch } from '../elements/stop-friction.ts';
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
  /** Left out: nobody sits on a cushion; the driver's mass is part of the sprung mass all the same. */
  readonly seat?: SeatModel;
}

/** The driver on a seat. His mass is contained in the sprung mass; here it gets a spring of its own. */
export interface SeatModel {
  readonly mass: number;
  readonly rate: number;
  readonly damping: number;
  /** Place from the centre of gravity: ahead, and to the left [m]. */
  readonly ahead: number;
  readonly left: number;
}

/**
 * How an element closes over axle travel at its station, where its ratio changes with it: made by links and mounts.
 * Between the places a cubic by value and slope; beyond, straight on.
 */
export interface ElementPath {
  /** Axle travel, rising in even steps, zero among it [m]. */
  readonly travel: readonly number[];
  /** Of the element, from ride height [m], and its slope by the travel: at zero that is the element's `ratio`. */
  readonly compression: readonly number[];
  readonly ratio: readonly number[];
}

export interface AxleModel {
  readonly mass: number;
  readonly rollInertia: number;
  readonly halfTrack: number;
  readonly spring: {
    readonly halfStation: number;
    readonly rate: number;
    readonly ratio: number;
    readonly path?: ElementPath;
  };
  readonly shock: {
    readonly halfStation: number;
    readonly ratio: number;
    readonly path?: ElementPath;
    readonly speed: readonly number[];
    readonly force: readonly number[];
    /** Push of its gas at ride height and the rate of that, along the shaft [N], [N/m]. */
    readonly gas?: { readonly force: number; readonly rate: number };
    /** Its own ends, in axle travel at its station: bump travel to closed, droop travel to open [m], and their rate. */
    readonly ends?: { readonly closedAt: number; readonly openAt: number; readonly rate: number };
  };
  /** Moment on tilt between axle and body [N·m/rad]. */
  readonly antiRollRate?: number;
  readonly stop: {
    readonly halfStation: number;
    readonly ratio: number;
    readonly path?: ElementPath;
    /** Tip to pad along the stop, per side [m]. */
    readonly gap: Readonly<Record<Side, number>>;
    readonly crush: readonly number[];
    readonly force: readonly number[];
    readonly rateFactor: number;
    /** Oil driven through a hole while closing: force = factor·speed² [N·s²/m²]. */
    readonly oilFactor?: number;
    /** Friction as a share of the elastic force; then `force` is what the stop gives back (elements/stop-loss). */
    readonly friction?: FrictionBranch;
    readonly maxwell?: MaxwellBranch;
  };
  /** Metal behind the stop, in stop crush, per side; adds rate·(crush − at). */
  readonly metal: { readonly atCrush: Readonly<Record<Side, number>>; readonly rate: number };
  /** Acts at the shock's station: pulls when compression < −at. */
  readonly droopLimit: { readonly at: number; readonly rate: number; readonly rateFactor: number };
  readonly tyre: { readonly rate: number; readonly damping: number };
}
