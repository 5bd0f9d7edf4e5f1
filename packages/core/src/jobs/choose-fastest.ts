import type { Track } from '../course/sampled.ts';
import type { Place } from '../finding/place.ts';
import type { RideModel } from '../ride/model.ts';
import { runRide } from '../ride/run.ts';
import type { FastestCourse } from '../rig/choices.ts';
import { durationOf, TRIAL_TOLERANCE } from './driving.ts';
import type { Criterion, CriterionId } from './sweep-criteria.ts';

/** Criteria that need no record of the seat, which costs more than the ride. */
const QUICK: ReadonlySet<CriterionId> = new Set([
  'metal-contact',
  'clearance',
  'body-shock',
  'bracket-load',
  'tyre-contact',
]);

export const quickCriteria = (all: readonly Criterion[]): readonly Criterion[] =>
  all.filter(({ id }) => QUICK.has(id));

/** What is broken first: a criterion, or the model itself, which a rig leaves that tumbles. */
export type BrokenBy = CriterionId | 'left-validity';

/** How fast a rig may go over a course. */
export interface Fastest {
  /** Middle of the two speeds below; the end of the range where only one of them is there [m/s]. */
  readonly speed: number;
  /** Fastest speed tried below the first that broke something; null when the slowest did. */
  readonly held: number | null;
  /** Slowest speed tried that broke something; null when none did: then it may go faster than was looked at. */
  readonly broken: number | null;
  readonly by: BrokenBy | null;
  readonly place: Place;
}

/** Pieces of the range, gone through from the slowest, and how often the one that breaks is halved. */
const RUNGS = 8;
const HALVINGS = 4;

export const ladderStep = ({ from, to }: FastestCourse): number => (to - from) / RUNGS / 2 ** HALVINGS;

/** One rig on the course where the speed is asked for. */
export interface Climber {
  readonly model: RideModel;
  readonly track: Track;
  readonly criteria: readonly Criterion[];
  readonly trial: number;
}

/**
 * Climbs through a range of speeds until something breaks, and halves the step before it.
 *
 * @validity what breaks only between two rungs below the first rung that breaks is not seen: a resonance narrower than
 * an eighth of the range
 */
export function climb(climber: Climber, { from, to }: FastestCourse): Fastest {
  let held: number | null = null;
  for (let rung = 0; rung <= RUNGS; rung += 1) {
    const speed = from + ((to - from) * rung) / RUNGS;
    const broken = breaksAt(climber, speed);
    if (broken !== null) return halved(climber, held, { speed, ...broken }, HALVINGS);
    held = speed;
  }
  return { speed: to, held: to, broken: null, by: null, place: 'rig' };
}

/**
 * The same in a trial, sought from where the nominal rig breaks: up or down in growing steps until it breaks on one
 * side only.
 * @validity takes it that nothing breaks further down than where it is found
 */
export function climbNear(climber: Climber, course: FastestCourse, nominal: Fastest): Fastest {
  const { from, to } = course;
  let step = 2 * ladderStep(course);
  let held = nominal.held;
  let broken: Broken | null = null;
  let speed = nominal.broken ?? to;
  for (;;) {
    const verdict = breaksAt(climber, speed);
    if (verdict === null) {
      held = speed;
      if (broken !== null) break;
      if (speed >= to) return { speed: to, held: to, broken: null, by: null, place: 'rig' };
      speed = Math.min(to, speed + step);
    } else {
      const wentUp = broken === null && held !== null && held !== nominal.held;
      broken = { speed, ...verdict };
      if (wentUp || speed <= from) break;
      held = null;
      speed = Math.max(from, speed - step);
    }
    step *= 2;
  }
  if (broken.speed <= from) return halved(climber, null, broken, 0);
  const wide = broken.speed - (held ?? from);
  return halved(
    climber,
    held,
    broken,
    Math.max(0, Math.ceil(Math.log2(wide / (2 * ladderStep(course)) - 1e-9))),
  );
}

interface Broken {
  readonly speed: number;
  readonly by: BrokenBy;
  readonly place: Place;
}

/** Halves the step between a speed that held and one that broke something. */
function halved(climber: Climber, from: number | null, first: Broken, times: number): Fastest {
  if (from === null) return { ...first, held: null, broken: first.speed };
  let [held, broken] = [from, first];
  for (let k = 0; k < times; k += 1) {
    const speed = (held + broken.speed) / 2;
    const verdict = breaksAt(climber, speed);
    if (verdict === null) held = speed;
    else broken = { speed, ...verdict };
  }
  const { by, place } = broken;
  return { speed: (held + broken.speed) / 2, held, broken: broken.speed, by, place };
}

function breaksAt(
  { model, track, criteria, trial }: Climber,
  speed: number,
): { readonly by: BrokenBy; readonly place: Place } | null {
  const run = runRide(model, track, {
    speed,
    duration: durationOf(track, model.sprung.toFrontAxle + model.sprung.toRearAxle, speed),
    tolerance: TRIAL_TOLERANCE,
  });
  for (const { id, limit, keeps, measure } of criteria) {
    if (limit === null) continue;
    const { value, place } = measure({ run, trial, speed, seat: NO_SEAT });
    const line = limit(trial);
    if (keeps === 'above' ? value < line : value > line) return { by: id, place };
  }
  return run.status === 'finished' ? null : { by: 'left-validity', place: 'rig' };
}

const NO_SEAT = new Float64Array(0);
