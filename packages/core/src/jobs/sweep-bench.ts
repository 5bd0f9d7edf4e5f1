import type { Track } from '../course/sampled.ts';
import { sampleCourse } from '../course/track.ts';
import type { Place } from '../finding/place.ts';
import { bad, good, type Problem, type Result } from '../finding/problem.ts';
import { rideModels } from '../ride/from-setup.ts';
import type { RideModel } from '../ride/model.ts';
import { runRide } from '../ride/run.ts';
import type { CourseShape } from '../rig/course-spec.ts';
import type { Rig } from '../rig/rig.ts';
import { resolveSetup } from '../rig/setup-resolve.ts';
import { travelNeeds } from '../travel/travel.ts';
import type { Bench } from './bench.ts';
import { drawsToDrive, durationOf, TRIAL_TOLERANCE } from './driving.ts';
import { CRITERIA, type Criterion, criteriaOf } from './sweep-criteria.ts';
import { sweepProblems } from './sweep-range.ts';

/** How fast may it go: setups of a rig over one course, at every speed of a range. */
export interface SweepRequest {
  readonly rig: Rig;
  /** Names of setups; the first is the one asked about, a second one is held beside it. */
  readonly setups: readonly string[];
  readonly course: CourseShape;
  readonly courseName: string;
  /** Speed at which the owner wants to drive the course [m/s]; null when he said none. */
  readonly wantedSpeed: number | null;
  /** Slowest and fastest speed [m/s]. */
  readonly from: number;
  readonly to: number;
  /** Largest distance between two speeds of the scan [m/s]. */
  readonly step: number;
  /** Rigs over the measurement tolerances, beside the nominal one; 0 gives no intervals. */
  readonly trials: number;
  readonly seed: number;
}

/** How a criterion stands at one speed; `unknown` where the run was given up before it could be told. */
export const STATES = ['held', 'broken', 'unknown', 'no-limit'] as const;
export type State = (typeof STATES)[number];
export const HELD = 0;
const BROKEN = 1;
const UNKNOWN = 2;
export const NO_LIMIT = 3;

export const PLACES: readonly Place[] = ['front', 'rear', 'rig'];

/** A crossing is pinned down to a sixteenth of the scan. */
const HALVINGS = 4;
export const REFINED = 2 ** -HALVINGS;

/** Where things stand in the row of one rig. */
export class SweepLayout {
  readonly speeds: Float64Array;
  readonly width: number;

  constructor({ from, to, step }: SweepRequest) {
    const pieces = Math.max(1, Math.ceil((to - from) / step - 1e-9));
    this.speeds = Float64Array.from({ length: pieces + 1 }, (_, i) =>
      i === pieces ? to : from + (i * (to - from)) / pieces,
    );
    this.width = CRITERIA.length * (3 * this.speeds.length + 1);
  }

  value(criterion: number, speed: number): number {
    return criterion * this.speeds.length + speed;
  }
  state(criterion: number, speed: number): number {
    return (CRITERIA.length + criterion) * this.speeds.length + speed;
  }
  /** Speed at which the criterion changes between this speed of the scan and the next; NaN where it was not sought. */
  edge(criterion: number, speed: number): number {
    return (2 * CRITERIA.length + criterion) * this.speeds.length + speed;
  }
  /** Index in `PLACES` where it is first not held. */
  place(criterion: number): number {
    return 3 * CRITERIA.length * this.speeds.length + criterion;
  }
}

/**
 * A sweep as units: one rig over all speeds each. First the nominal rigs of all setups, then trial by trial, so that
 * the same trial of two setups comes in together.
 *
 * Each rig is driven at every speed of the scan, because a response need not grow with speed: whoops can be worst at
 * the speed that shakes the rig at its own frequency. Then crossings are halved: all of the nominal rig, the first one
 * of a trial.
 */
export function sweepBench(request: SweepRequest): Result<Bench> {
  const problems = problemsOf(request);
  if (problems.length > 0) return bad(...problems);
  const { rig, setups, trials } = request;
  const layout = new SweepLayout(request);
  // Made when the first rig is driven: who only shares the work out needs none of it.
  let made: { readonly track: Track; readonly contenders: readonly Contender[] } | null = null;
  const make = () => {
    const draws = drawsToDrive(rig, request);
    const contenders = setups.map((id): Contender => {
      const resolved = resolveSetup(rig, id);
      if (!resolved.ok) throw new Error(`setup ${id} was resolved before`);
      return { modelOf: rideModels(resolved.value, draws), criteria: criteriaOf(resolved.value, draws) };
    });
    return { track: sampleCourse(request.course), contenders };
  };
  return good({
    units: setups.length * (1 + trials),
    width: layout.width,
    cost: () => 1,
    run(unit, rows, at) {
      made ??= make();
      const { modelOf, criteria } = made.contenders[unit % setups.length];
      const trial = Math.floor(unit / setups.length);
      const look = looker(modelOf(trial), made.track, criteria, trial);
      sweepOne(look, layout, trial === 0, rows.subarray(at, at + layout.width));
    },
  });
}

interface Contender {
  readonly modelOf: (trial: number) => RideModel;
  readonly criteria: readonly Criterion[];
}

function problemsOf(request: SweepRequest): Problem[] {
  const problems = [...sweepProblems(request)];
  for (const id of request.setups) {
    const resolved = resolveSetup(request.rig, id);
    problems.push(...(resolved.ok ? travelNeeds(resolved.value) : resolved.problems));
  }
  return problems;
}

/** What all criteria say at one speed. */
interface Sight {
  readonly values: readonly number[];
  readonly states: readonly number[];
  readonly places: readonly number[];
}
type Look = (speed: number) => Sight;

/** Drives a rig at a speed when it is asked for the first time, so that criteria share their runs. */
function looker(model: RideModel, track: Track, criteria: readonly Criterion[], trial: number): Look {
  const seen = new Map<number, Sight>();
  const wheelbase = model.sprung.toFrontAxle + model.sprung.toRearAxle;
  const historyRate = Math.max(...criteria.map((one) => one.historyRate));
  return (speed) => {
    const known = seen.get(speed);
    if (known) return known;
    const run = runRide(model, track, {
      speed,
      duration: durationOf(track, wheelbase, speed),
      tolerance: trial === 0 ? undefined : TRIAL_TOLERANCE,
      historyRate,
    });
    const measured = criteria.map((one) => one.measure(run, trial));
    const states = criteria.map(({ limit, keeps, isPeak }, k) => {
      if (limit === null) return NO_LIMIT;
      const { value } = measured[k];
      const isBroken = keeps === 'above' ? value < limit(trial) : value > limit(trial);
      if (run.status === 'finished') return isBroken ? BROKEN : HELD;
      return isBroken && isPeak ? BROKEN : UNKNOWN;
    });
    const sight = {
      values: measured.map(({ value }, k) => (states[k] === UNKNOWN ? Number.NaN : value)),
      states,
      places: measured.map(({ place }) => PLACES.indexOf(place)),
    };
    seen.set(speed, sight);
    return sight;
  };
}

function sweepOne(look: Look, layout: SweepLayout, all: boolean, row: Float64Array): void {
  const { speeds } = layout;
  const scan = Array.from(speeds, look);
  CRITERIA.forEach((_, k) => {
    scan.forEach(({ values, states }, i) => {
      row[layout.value(k, i)] = values[k];
      row[layout.state(k, i)] = states[k];
      row[layout.edge(k, i)] = Number.NaN;
    });
    const first = scan.findIndex(({ states }) => states[k] !== HELD);
    row[layout.place(k)] = first < 0 ? Number.NaN : scan[first].places[k];
    for (let i = 1; i < speeds.length; i += 1) {
      const [before, after] = [scan[i - 1].states[k], scan[i].states[k]];
      if ((before === HELD) === (after === HELD) || !(all || i === first)) continue;
      row[layout.edge(k, i - 1)] = crossing(look, k, speeds[i - 1], speeds[i], before === HELD);
    }
  });
}

/** Halves the way between a speed that holds and one that does not; the middle of what is left. */
function crossing(look: Look, criterion: number, below: number, above: number, heldBelow: boolean): number {
  let [low, high] = [below, above];
  for (let n = 0; n < HALVINGS; n += 1) {
    const middle = (low + high) / 2;
    if ((look(middle).states[criterion] === HELD) === heldBelow) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
