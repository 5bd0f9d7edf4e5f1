import type { Dimension, Figure } from '../finding/figure.ts';
import { CORNERS, type Corner } from '../finding/place.ts';
import type { RideStatus } from '../ride/result.ts';
import { type TyreFeel, USUAL_FEEL } from '../rig/tyre-feel.ts';
import { type BatchRequest, CORNER, ROW, STATUSES, unitsOfOne } from './batch-bench.ts';
import type { Fold } from './fold.ts';
import type { CornerInterval } from './protocol.ts';

/** What came of one setup on one course, reduced from all its runs. */
export interface SetupCourse {
  readonly setup: string;
  readonly course: string;
  /** [m/s] */
  readonly speed: number;
  /** How the nominal run ended. */
  readonly status: RideStatus;
  /** Trials that did not get to their end; with one, no figure has an interval. */
  readonly unfinished: number;
  readonly corners: Readonly<
    Record<Corner, Omit<CornerInterval, 'peakTravel'> & { readonly metalContacts: number }>
  >;
  readonly body: { readonly peakAcceleration: Figure; readonly rmsAcceleration: Figure };
  /** Share of the trials in which metal is hit somewhere; null without trials. */
  readonly metalShare: number | null;
}

export interface BatchAnswer {
  readonly trials: number;
  readonly seed: number;
  readonly tyres: TyreFeel;
  /** Setup by setup, in each course by course. */
  readonly results: readonly SetupCourse[];
}

/**
 * Reduces a batch as its runs come in. Of a setup-course the nominal row and a sum of squares are kept while its trials
 * come, and then only its figures: memory does not grow with the number of trials.
 *
 * @invariant one setup-course has the figures that `rideRig` gives it, to the last bit
 */
export function batchFold(request: BatchRequest): Fold<BatchAnswer> {
  const { setups, courses, trials, seed, tyres = USUAL_FEEL } = request;
  const each = unitsOfOne(request);
  const results: SetupCourse[] = [];
  const nominal = new Float64Array(ROW.corners + CORNERS.length * CORNER.count);
  const squares = new Float64Array(nominal.length);
  let done = 0;
  let unfinished = 0;
  let metal = 0;

  const one = (): SetupCourse => {
    const cell = results.length;
    const { name, speed } = courses[cell % courses.length];
    const figure = (dimension: Dimension, k: number): Figure => ({
      dimension,
      value: nominal[k],
      // A trial that left the model's validity has no figure: without it, the spread would be that of the survivors.
      tolerance: trials < 2 || unfinished > 0 ? null : 2 * Math.sqrt(squares[k] / trials),
    });
    const corners = {} as Record<Corner, SetupCourse['corners'][Corner]>;
    CORNERS.forEach((corner, c) => {
      const first = ROW.corners + c * CORNER.count;
      corners[corner] = {
        peakCrush: figure('length', first + CORNER.peakCrush),
        clearance: figure('length', first + CORNER.clearance),
        peakStopForce: figure('force', first + CORNER.peakStopForce),
        airborneShare: figure('ratio', first + CORNER.airborneShare),
        metalContacts: nominal[first + CORNER.metalContacts],
      };
    });
    return {
      setup: setups[Math.floor(cell / courses.length)],
      course: name,
      speed,
      status: STATUSES[nominal[ROW.status]],
      unfinished,
      corners,
      body: {
        peakAcceleration: figure('acceleration', ROW.peakAcceleration),
        rmsAcceleration: figure('acceleration', ROW.rmsAcceleration),
      },
      metalShare: trials === 0 ? null : metal / trials,
    };
  };

  return {
    take(rows, at) {
      if (done === 0) {
        nominal.set(rows.subarray(at, at + nominal.length));
        squares.fill(0);
        unfinished = 0;
        metal = 0;
      } else {
        for (let k = 0; k < nominal.length; k += 1) squares[k] += (rows[at + k] - nominal[k]) ** 2;
        if (rows[at + ROW.status] !== 0) unfinished += 1;
        if (hitsMetal(rows, at)) metal += 1;
      }
      done += 1;
      if (done < each) return;
      results.push(one());
      done = 0;
    },
    finish: () => ({ trials, seed, tyres, results }),
  };
}

function hitsMetal(rows: Float64Array, at: number): boolean {
  for (let c = 0; c < CORNERS.length; c += 1)
    if (rows[at + ROW.corners + c * CORNER.count + CORNER.metalContacts] > 0) return true;
  return false;
}
