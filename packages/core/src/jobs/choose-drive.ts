import type { Track } from '../course/sampled.ts';
import { CORNERS, type Corner, type End, endOf } from '../finding/place.ts';
import type { RideModel } from '../ride/model.ts';
import { runRide } from '../ride/run.ts';
import type { DrivenCourse } from '../rig/choices.ts';
import type { Rig } from '../rig/rig.ts';
import type { Setup } from '../rig/setup.ts';
import type { Draws } from '../stance/draws.ts';
import { durationOf, TRIAL_TOLERANCE } from './driving.ts';
import { FeltGrounds } from './felt-ground.ts';

/** One course driven once. */
export interface Pass {
  /** False where the model was left before the end: then the rest tells only of the way up to there. */
  readonly isFinished: boolean;
  /**
   * Root mean square of what the seat takes up and down, of the body's centre of gravity where nobody sits
   * [m/s²], and how long such ground is driven in a day [s].
   */
  readonly shaking: number;
  readonly seconds: number;
  /** Least gap to metal less flex allowance and reserve [m], and where. */
  readonly spare: number;
  readonly corner: Corner;
  /** Largest body acceleration above rest [m/s²]. */
  readonly body: number;
}

/** Tracks as the tyres of a setup feel them, each laid out once: of all that is chosen only pressures shape them. */
export class ChoiceGrounds {
  readonly #grounds = new FeltGrounds();
  readonly #tracks = new Map<string, Track>();

  constructor(private readonly rig: Rig) {}

  /** The course itself. */
  plain(course: string): Track {
    return this.#grounds.plain(this.rig.courses[course].shape);
  }

  of(course: string, setup: Setup): Track {
    const { front, rear } = setup.ends;
    const pressures = [front, rear].map(({ patch }) => patch.tyrePressure?.value ?? '');
    const key = [course, ...pressures].join(' ');
    const known = this.#tracks.get(key);
    if (known) return known;
    const track = this.#grounds.of(this.rig.courses[course].shape, setup);
    this.#tracks.set(key, track);
    return track;
  }
}

/** Time on such ground in a day [s]; without a distance, once over it by the nominal rig: no choice changes that. */
export function secondsOf(rig: Rig, { course, speed, perDay }: DrivenCourse, grounds: ChoiceGrounds): number {
  return perDay === null ? durationOf(grounds.plain(course), rig.wheelbase.value, speed) : perDay / speed;
}

export interface PassAsk {
  /** [m/s] */
  readonly speed: number;
  /** Time on such ground in a day [s]. */
  readonly seconds: number;
  /** What must stay clear at each end in this trial [m]. */
  readonly keep: Readonly<Record<End, number>>;
}

/** Drives a model over a course. */
export function passOver(model: RideModel, track: Track, { speed, seconds, keep }: PassAsk): Pass {
  const duration = durationOf(track, model.sprung.toFrontAxle + model.sprung.toRearAxle, speed);
  const run = runRide(model, track, { speed, duration, tolerance: TRIAL_TOLERANCE });
  let spare = Number.POSITIVE_INFINITY;
  let corner: Corner = CORNERS[0];
  for (const one of CORNERS) {
    const left = run.corners[one].clearance - keep[endOf(one)];
    if (left < spare) [spare, corner] = [left, one];
  }
  return {
    isFinished: run.status === 'finished',
    shaking: run.seat === null ? run.body.rmsAcceleration : run.seat.rmsAcceleration,
    seconds,
    spare,
    corner,
    body: run.body.peakAcceleration,
  };
}

/** What must stay clear at each end in a trial [m]: flex allowance and the owner's reserve. */
export function keepIn(setup: Setup, draws: Draws, trial: number): Readonly<Record<End, number>> {
  const reserve = draws.of(setup.rig.limits.reserve)[trial];
  const at = (end: End) => draws.of(setup.ends[end].base.flex)[trial] + reserve;
  return { front: at('front'), rear: at('rear') };
}

/** Σ seconds·shaking²: the sum of courses, so what was driven so far is a bound of the whole. */
export const squaresOf = (passes: readonly Pass[]): number =>
  passes.reduce((sum, { shaking, seconds }) => sum + seconds * shaking ** 2, 0);
