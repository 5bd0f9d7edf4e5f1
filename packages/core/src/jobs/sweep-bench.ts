import type { Track } from '../course/sampled.ts';
import type { SeatPlace } from '../exposure/seat.ts';
import { bad, good, type Problem, type Result } from '../finding/problem.ts';
import { rideModels } from '../ride/from-setup.ts';
import type { RideModel } from '../ride/model.ts';
import { runRide } from '../ride/run.ts';
import type { CourseShape } from '../rig/course-spec.ts';
import type { Rig } from '../rig/rig.ts';
import { resolveSetup } from '../rig/setup-resolve.ts';
import type { TyreFeel } from '../rig/tyre-feel.ts';
import { travelNeeds } from '../travel/travel.ts';
import type { Bench } from './bench.ts';
import { drawsToDrive, durationOf, TRIAL_TOLERANCE } from './driving.ts';
import { FeltGrounds } from './felt-ground.ts';
import { SWEEP_SEAT_RATE, seatPlaces, seatRecord } from './seat-record.ts';
import { type Criterion, criteriaOf } from './sweep-criteria.ts';
import { sweepProblems } from './sweep-range.ts';
import {
  BROKEN,
  HELD,
  type Look,
  NO_LIMIT,
  PLACES,
  type Sight,
  SweepLayout,
  scanRig,
  UNKNOWN,
} from './sweep-scan.ts';

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
  /** How the tyres read the ground; a moving footprint when left out. */
  readonly tyres?: TyreFeel;
  /** How far such ground is driven in a day [m]; left out or null when nobody said. */
  readonly distancePerDay?: number | null;
}

/**
 * A sweep as units: one rig over all speeds each. First the nominal rigs of all setups, then trial by trial, so that
 * the same trial of two setups comes in together.
 * Of the nominal rig all crossings are found, of a trial the first ones.
 */
export function sweepBench(request: SweepRequest): Result<Bench> {
  const problems = problemsOf(request);
  if (problems.length > 0) return bad(...problems);
  const { rig, setups, trials } = request;
  const layout = new SweepLayout(request);
  const make = () => {
    const draws = drawsToDrive(rig, request);
    const grounds = new FeltGrounds(request.tyres);
    const contenders = setups.map((id): Contender => {
      const resolved = resolveSetup(rig, id);
      if (!resolved.ok) throw new Error(`setup ${id} was resolved before`);
      return {
        modelOf: rideModels(resolved.value, draws),
        criteria: criteriaOf(resolved.value, draws, request.distancePerDay ?? null),
        track: grounds.of(request.course, resolved.value),
      };
    });
    return { contenders, placeOf: seatPlaces(request) };
  };
  // Made when the first rig is driven: who only shares the work out needs none of it.
  let made: ReturnType<typeof make> | null = null;
  return good({
    units: setups.length * (1 + trials),
    width: layout.width,
    cost: () => 1,
    run(unit, rows, at) {
      made ??= make();
      const { modelOf, criteria, track } = made.contenders[unit % setups.length];
      const trial = Math.floor(unit / setups.length);
      const model = modelOf(trial);
      const look = looker(model, track, criteria, { trial, seatAt: made.placeOf(model, trial) });
      scanRig(look, layout, trial === 0, rows.subarray(at, at + layout.width));
    },
  });
}

const NO_RECORD = new Float64Array(0);

interface Contender {
  readonly modelOf: (trial: number) => RideModel;
  readonly criteria: readonly Criterion[];
  readonly track: Track;
}

function problemsOf(request: SweepRequest): Problem[] {
  const problems = [...sweepProblems(request)];
  for (const id of request.setups) {
    const resolved = resolveSetup(request.rig, id);
    problems.push(...(resolved.ok ? travelNeeds(resolved.value) : resolved.problems));
  }
  return problems;
}

/** Drives a rig at a speed when it is asked for the first time, so that criteria share their runs. */
function looker(
  model: RideModel,
  track: Track,
  criteria: readonly Criterion[],
  { trial, seatAt }: { readonly trial: number; readonly seatAt: SeatPlace },
): Look {
  const seen = new Map<number, Sight>();
  const wheelbase = model.sprung.toFrontAxle + model.sprung.toRearAxle;
  return (speed) => {
    const known = seen.get(speed);
    if (known) return known;
    const run = runRide(model, track, {
      speed,
      duration: durationOf(track, wheelbase, speed),
      tolerance: trial === 0 ? undefined : TRIAL_TOLERANCE,
      shakeRate: SWEEP_SEAT_RATE,
    });
    const seat = seatRecord(run, seatAt) ?? NO_RECORD;
    const measured = criteria.map((one) => one.measure({ run, trial, speed, seat }));
    const states = criteria.map(({ limit, keeps, isPeak }, k) => {
      if (limit === null) return NO_LIMIT;
      const { value } = measured[k];
      const isBroken = keeps === 'above' ? value < limit(trial) : value > limit(trial);
      if (run.status === 'finished') return isBroken ? BROKEN : HELD;
      return isBroken && isPeak ? BROKEN : UNKNOWN;
    });
    const sight: Sight = {
      values: measured.map(({ value }, k) => (states[k] === UNKNOWN ? Number.NaN : value)),
      states,
      places: measured.map(({ place }) => PLACES.indexOf(place)),
    };
    seen.set(speed, sight);
    return sight;
  };
}
