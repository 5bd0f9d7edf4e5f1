import { cornerAt, type End, SIDES } from '../finding/place.ts';
import type { RideModel } from '../ride/model.ts';
import { runRide } from '../ride/run.ts';
import type { CourseShape } from '../rig/course-spec.ts';
import type { Setup } from '../rig/setup.ts';
import { durationOf, TRIAL_TOLERANCE } from './driving.ts';
import type { FeltGrounds } from './felt-ground.ts';

/** A course and the speed at which it has to be driven. */
export interface Demand {
  readonly name: string;
  readonly course: CourseShape;
  /** [m/s] */
  readonly speed: number;
}

/**
 * What a stop breaks: it lets the axle past the reserve, shakes the body too much, loads its bracket too much, or is
 * itself crushed further than it bears.
 */
export const BROKEN = ['clearance', 'body', 'bracket', 'crush'] as const;
export type Broken = (typeof BROKEN)[number];

/** The worst of a stop at one end over all demands. */
export interface StopWorst {
  /** Gap to metal less flex allowance and reserve, axle travel [m]; below zero the reserve is used up. */
  readonly spare: number;
  /** The same of the other end. */
  readonly otherSpare: number;
  /** Largest body acceleration above rest [m/s²]. */
  readonly body: number;
  /** Largest force of stop and metal at one corner [N]. */
  readonly force: number;
  /** Deepest crush [m]. */
  readonly crush: number;
  /** False where a run was given up: then the rest holds only up to there. */
  readonly isFinished: boolean;
}

const NOTHING_YET: StopWorst = {
  spare: Number.POSITIVE_INFINITY,
  otherSpare: Number.POSITIVE_INFINITY,
  body: 0,
  force: 0,
  crush: 0,
  isFinished: true,
};

export interface DriveOptions {
  readonly grounds: FeltGrounds;
  /** Of each demand's speed, 0 … 1. */
  readonly share?: number;
  /** Asked after each demand: true leaves out the others. */
  readonly isEnough?: (worst: StopWorst) => boolean;
}

/** Drives a model over all demands and keeps the worst of its stop at one end. */
export function driveStop(
  model: RideModel,
  setup: Setup,
  end: End,
  demands: readonly Demand[],
  { grounds, share = 1, isEnough }: DriveOptions,
): StopWorst {
  const keepAt = (at: End): number => setup.ends[at].base.flex.value + setup.rig.limits.reserve.value;
  const other: End = end === 'front' ? 'rear' : 'front';
  let worst = NOTHING_YET;
  for (const demand of demands) {
    const track = grounds.of(demand.course, setup);
    const speed = demand.speed * share;
    const run = runRide(model, track, {
      speed,
      duration: durationOf(track, model.sprung.toFrontAxle + model.sprung.toRearAxle, speed),
      historyRate: 0,
      tolerance: TRIAL_TOLERANCE,
    });
    const cornersAt = (at: End) => SIDES.map((side) => run.corners[cornerAt(at, side)]);
    const leastSpare = (at: End): number =>
      Math.min(...cornersAt(at).map(({ clearance }) => clearance)) - keepAt(at);
    const corners = cornersAt(end);
    worst = {
      spare: Math.min(worst.spare, leastSpare(end)),
      otherSpare: Math.min(worst.otherSpare, leastSpare(other)),
      body: Math.max(worst.body, run.body.peakAcceleration),
      force: Math.max(worst.force, ...corners.map(({ peakStopForce }) => peakStopForce)),
      crush: Math.max(worst.crush, ...corners.map(({ peakCrush }) => peakCrush)),
      isFinished: worst.isFinished && run.status === 'finished',
    };
    if (isEnough?.(worst)) break;
  }
  return worst;
}

/** Which of the owner's limits the worst breaks; a run that was given up counts as past the reserve. */
export function brokenBy({ spare, body, force, isFinished }: StopWorst, setup: Setup): ReadonlySet<Broken> {
  const { bodyAcceleration, bracketForce } = setup.rig.limits;
  const broken = new Set<Broken>();
  if (!isFinished || spare < 0) broken.add('clearance');
  if (body > bodyAcceleration.value) broken.add('body');
  if (bracketForce && force > bracketForce.value) broken.add('bracket');
  return broken;
}

export interface StopCurve {
  /** From 0, rising [m]. */
  readonly crush: readonly number[];
  /** From 0, rising [N]. */
  readonly force: readonly number[];
}

const TABLE_POINTS = 12;

/** F = full·(c/room)^power, carried on past the room with its end slope by the table. */
export function powerCurve(room: number, power: number, full: number): StopCurve {
  const share = Array.from({ length: TABLE_POINTS + 1 }, (_, k) => k / TABLE_POINTS);
  return { crush: share.map((s) => s * room), force: share.map((s) => full * s ** power) };
}

/** The model with another stop at one end: its curve and rate factor, no other loss. */
export function withStopCurve(model: RideModel, end: End, curve: StopCurve): RideModel {
  const axle = model.axles[end];
  const { halfStation, ratio, gap, rateFactor } = axle.stop;
  const stop = { halfStation, ratio, gap, rateFactor, ...curve };
  return { ...model, axles: { ...model.axles, [end]: { ...axle, stop } } };
}

/** Crush of the worse side from touch to where flex allowance and reserve begin [m]. */
export function roomToCrush(model: RideModel, setup: Setup, end: End): number {
  const { metal, stop } = model.axles[end];
  const keep = setup.ends[end].base.flex.value + setup.rig.limits.reserve.value;
  return Math.min(...SIDES.map((side) => metal.atCrush[side])) - keep * stop.ratio;
}
