import { CORNERS } from '../finding/place.ts';
import { bad, good, type Problem, type Result } from '../finding/problem.ts';
import { rideModels } from '../ride/from-setup.ts';
import type { RideModel } from '../ride/model.ts';
import type { RideRun, RideStatus } from '../ride/result.ts';
import { runRide } from '../ride/run.ts';
import type { CourseShape } from '../rig/course-spec.ts';
import type { Rig } from '../rig/rig.ts';
import type { Setup } from '../rig/setup.ts';
import { resolveSetup } from '../rig/setup-resolve.ts';
import type { TyreFeel } from '../rig/tyre-feel.ts';
import { travelNeeds } from '../travel/travel.ts';
import type { Bench } from './bench.ts';
import { drawsToDrive, durationOf, speedProblem, TRIAL_TOLERANCE } from './driving.ts';
import { FeltGrounds } from './felt-ground.ts';

/** A course at the speed at which it is driven. */
export interface BatchCourse {
  readonly name: string;
  readonly shape: CourseShape;
  /** [m/s] > 0. */
  readonly speed: number;
}

/** Many setups, each over many courses, each in many sampled rigs. */
export interface BatchRequest {
  readonly rig: Rig;
  /** Names of setups of the rig. */
  readonly setups: readonly string[];
  readonly courses: readonly BatchCourse[];
  /** Rigs over the measurement tolerances, beside the nominal one; 0 gives no intervals. */
  readonly trials: number;
  readonly seed: number;
  /** Local error accepted in the nominal runs; the ride's own default when left out. */
  readonly tolerance?: number;
  /** How the tyres read the ground; a moving footprint when left out. */
  readonly tyres?: TyreFeel;
}

/** Where the figures of a run stand in its row. */
export const ROW = {
  status: 0,
  peakAcceleration: 1,
  rmsAcceleration: 2,
  /** First corner; `CORNER` numbers each. */
  corners: 3,
} as const;
export const CORNER = {
  clearance: 0,
  peakCrush: 1,
  peakStopForce: 2,
  airborneShare: 3,
  metalContacts: 4,
  count: 5,
} as const;
const WIDTH = ROW.corners + CORNERS.length * CORNER.count;

export const STATUSES: readonly RideStatus[] = ['finished', 'step-limit', 'left-validity', 'cancelled'];

/** Units of one setup over one course: the nominal rig, then the trials. */
export const unitsOfOne = (request: BatchRequest): number => 1 + request.trials;

/**
 * A batch as units: setup by setup, in each course by course, in each the nominal rig and then the trials, so that
 * whoever takes the rows in order needs to keep one setup-course at a time.
 */
export function batchBench(request: BatchRequest): Result<Bench> {
  const problems = problemsOf(request);
  if (problems.length > 0) return bad(...problems);
  const { rig, setups, courses, trials, seed, tolerance } = request;
  const each = unitsOfOne(request);
  const grounds = new FeltGrounds(request.tyres);
  let ofSetup = -1;
  let driven: { readonly setup: Setup; readonly modelOf: (trial: number) => RideModel } | null = null;
  const setupAt = (index: number) => {
    if (driven === null || ofSetup !== index) {
      const resolved = resolveSetup(rig, setups[index]);
      if (!resolved.ok) throw new Error(`setup ${setups[index]} was resolved before`);
      const setup = resolved.value;
      driven = { setup, modelOf: rideModels(setup, drawsToDrive(rig, { trials, seed })) };
      ofSetup = index;
    }
    return driven;
  };
  const wheelbase = rig.wheelbase.value;
  return good({
    units: setups.length * courses.length * each,
    width: WIDTH,
    cost(unit) {
      const course = Math.floor(unit / each) % courses.length;
      return durationOf(grounds.plain(courses[course].shape), wheelbase, courses[course].speed);
    },
    run(unit, rows, at) {
      const trial = unit % each;
      const cell = (unit - trial) / each;
      const course = cell % courses.length;
      const { setup, modelOf } = setupAt((cell - course) / courses.length);
      const { shape, speed } = courses[course];
      const track = grounds.of(shape, setup);
      const model = modelOf(trial);
      const duration = durationOf(track, model.sprung.toFrontAxle + model.sprung.toRearAxle, speed);
      const run = runRide(model, track, {
        speed,
        duration,
        tolerance: trial === 0 ? tolerance : TRIAL_TOLERANCE,
      });
      writeRow(run, rows, at);
    },
  });
}

function problemsOf({ rig, setups, courses, trials }: BatchRequest): Problem[] {
  const problems: Problem[] = [];
  for (const id of setups) {
    const resolved = resolveSetup(rig, id);
    problems.push(...(resolved.ok ? travelNeeds(resolved.value) : resolved.problems));
  }
  for (const { speed } of courses) problems.push(...speedProblem(speed));
  if (!(Number.isInteger(trials) && trials >= 0)) throw new Error(`batch: ${trials} trials`);
  return problems;
}

function writeRow(run: RideRun, rows: Float64Array, at: number): void {
  rows[at + ROW.status] = STATUSES.indexOf(run.status);
  rows[at + ROW.peakAcceleration] = run.body.peakAcceleration;
  rows[at + ROW.rmsAcceleration] = run.body.rmsAcceleration;
  CORNERS.forEach((name, k) => {
    const corner = run.corners[name];
    const first = at + ROW.corners + k * CORNER.count;
    rows[first + CORNER.clearance] = corner.clearance;
    rows[first + CORNER.peakCrush] = corner.peakCrush;
    rows[first + CORNER.peakStopForce] = corner.peakStopForce;
    rows[first + CORNER.airborneShare] = corner.airborneShare;
    rows[first + CORNER.metalContacts] = corner.contacts.metal;
  });
}
