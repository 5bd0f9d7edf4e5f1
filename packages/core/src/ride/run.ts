import type { Track } from '../course/sampled.ts';
import { CORNERS, type Corner } from '../finding/place.ts';
import { makeEquations } from './equations.ts';
import { type Event, makeEventFinder } from './events.ts';
import {
  AXLE,
  COORDINATES,
  DISSIPATED,
  DROOP,
  GROUND_WORK,
  HEAVE,
  METAL,
  MOTION,
  PITCH,
  ROLL,
  STATE,
  STOP,
  SWITCHES,
  TYRE,
} from './layout.ts';
import type { RideModel } from './model.ts';
import { makePeaks } from './peaks.ts';
import { makeRecorder } from './recorder.ts';
import type { CornerRide, RideRun, RideStatus } from './result.ts';
import { makeStepper, ORDER } from './stepper.ts';

export interface RunOptions {
  /** Forward, constant [m/s] > 0. */
  readonly speed: number;
  /** [s] > 0 */
  readonly duration: number;
  /**
   * Local error accepted a step, relative to the scales below. The default keeps peak crush and r.m.s. acceleration
   * within 0.1 % on the house's reference cases (docs/theory/ride.md shows error against it).
   */
  readonly tolerance?: number;
  /** Samples a second of the history; 0 records none. */
  readonly historyRate?: number;
  readonly stepLimit?: number;
  /** Asked every thousand steps; true ends the run with status `cancelled`. */
  readonly isCancelled?: () => boolean;
}

export const DEFAULT_TOLERANCE = 3e-5;

/** What one unit of relative error means: lengths [m], angles [rad] and their speeds, from the size of a stop's crush. */
const LENGTH_SCALE = 0.02;
const ANGLE_SCALE = 0.02;
const SPEED_SCALE = 0.6;

const SHORTEST_STEP = 1e-9;
/** At least this many steps over the shortest thing on the ground, so that none is jumped. */
const STEPS_PER_FEATURE = 4;
const LONGEST_STEP = 0.05;

/** Small angles and vertical elements are no longer a fair picture beyond this (45°). */
const LARGEST_ANGLE = Math.PI / 4;

/**
 * Drives the model over a track: adaptive third-order steps; every touch, lift-off and metal contact is found in time
 * and the step is made to end there, so that inside a step nothing switches.
 *
 * @returns peaks, sums, energy books and counters; `status` says how it ended. Never NaN in a finished run.
 * @validity constant speed, small angles, vertical elements; ends with `left-validity` beyond 45° or when not finite
 */
export function runRide(model: RideModel, track: Track, options: RunOptions): RideRun {
  const { speed, duration, tolerance = DEFAULT_TOLERANCE, historyRate = 0, stepLimit = 5_000_000 } = options;
  const equations = makeEquations(model, track, speed);
  const { switches } = equations;
  const stepper = makeStepper(equations.derivative, STATE, errorScale(tolerance));
  const findEvent = makeEventFinder(equations);
  const peaks = makePeaks(equations);
  const recorder = historyRate > 0 ? makeRecorder(equations, historyRate, duration) : null;
  const landings = landingTimes(model, track, speed, duration);
  const longest = Math.min(LONGEST_STEP, track.shortestFeature / speed / STEPS_PER_FEATURE);

  for (const i of [HEAVE, AXLE, AXLE + 2]) stepper.state[i] = track.initialLift;
  for (let i = 0; i < switches.length; i += 1) {
    switches[i] = equations.switchValue(i, 0, stepper.state) > 0 ? 1 : 0;
  }
  equations.derivative(0, stepper.state, stepper.start);
  const storedAtStart = equations.storedEnergy(0, stepper.state);

  let time = 0;
  let step = Math.min(1e-3, longest);
  let steps = 0;
  let rejected = 0;
  let events = 0;
  let restarts = 1;
  let landing = 0;
  let status: RideStatus = 'finished';

  while (time < duration) {
    if (steps + rejected >= stepLimit) {
      status = 'step-limit';
      break;
    }
    if ((steps & 1023) === 1023 && options.isCancelled?.() === true) {
      status = 'cancelled';
      break;
    }
    while (landing < landings.length && landings[landing] <= time + SHORTEST_STEP) landing += 1;
    const until = landing < landings.length ? landings[landing] : duration;
    const left = until - time;
    let h = step < left ? (2 * step < left ? step : Math.max(step, left / 2)) : left;
    if (h > left) h = left;
    const error = stepper.attempt(time, h);
    if (!(error <= 1)) {
      if (h <= SHORTEST_STEP) {
        status = 'left-validity';
        break;
      }
      rejected += 1;
      step = h * (error > 1 ? Math.max(0.2, 0.9 * error ** (-1 / ORDER)) : 0.2);
      continue;
    }
    const next = Math.min(longest, h * Math.min(4, 0.9 * Math.max(error, 1e-6) ** (-1 / ORDER)));

    const event = findEvent(stepper, time, h);
    if (event.count > 0) {
      events += 1;
      const toEvent = event.theta * h;
      if (toEvent > SHORTEST_STEP) {
        if (event.theta < 1) stepper.attempt(time, toEvent);
        finishStep(toEvent);
      }
      flip(event);
      equations.derivative(time, stepper.state, stepper.start);
      restarts += 1;
      step = Math.min(step, next);
    } else {
      finishStep(h);
      // A step cut short by a landing says nothing against the longer one planned before it.
      step = h < step ? Math.max(next, Math.min(step, longest)) : next;
    }
    if (outOfValidity(stepper.state)) {
      status = 'left-validity';
      break;
    }
  }

  function finishStep(h: number): void {
    peaks.afterStep(stepper, time, h);
    recorder?.afterStep(stepper, time, h);
    stepper.accept();
    time = h === duration - time ? duration : time + h;
    steps += 1;
  }

  function flip(event: Event): void {
    for (let k = 0; k < event.count; k += 1) {
      const index = event.indices[k];
      switches[index] = 1 - switches[index];
      if (switches[index] === 1) peaks.touches[index] += 1;
      if (index % SWITCHES === TYRE) {
        // A tyre lets go a little before it is unpressed, while its damping pulls: what it still held is lost.
        const held = equations.heldByTyre(Math.floor(index / SWITCHES), time, stepper.state);
        stepper.state[DISSIPATED] += switches[index] === 1 ? -held : held;
      }
    }
  }

  const storedAtEnd = equations.storedEnergy(time, stepper.state);
  const putInByGround = stepper.state[GROUND_WORK];
  const dissipated = stepper.state[DISSIPATED];
  const turnedOver = Math.max(Math.abs(putInByGround), dissipated, Math.abs(storedAtEnd - storedAtStart), 1);
  const cornerRide = (k: number): CornerRide => {
    const end = equations.ends[k >> 1];
    const base = k * SWITCHES;
    const travel = peaks.travel[k];
    const gap = end.stopGap[k & 1];
    return {
      peakCrush: Math.max(0, end.stopRatio * travel - gap),
      peakTravel: travel,
      clearance: (gap + end.metalAt[k & 1]) / end.stopRatio - travel,
      peakStopForce: peaks.stopForce[k],
      airborneShare: time > 0 ? peaks.airborne[k] / time : 0,
      contacts: {
        stop: peaks.touches[base + STOP],
        metal: peaks.touches[base + METAL],
        droop: peaks.touches[base + DROOP],
      },
      peakShockSpeed: { compression: peaks.compressionSpeed[k], rebound: peaks.reboundSpeed[k] },
    };
  };

  return {
    status,
    time,
    duration,
    corners: Object.fromEntries(CORNERS.map((corner, k) => [corner, cornerRide(k)])) as Record<
      Corner,
      CornerRide
    >,
    body: {
      peakAcceleration: peaks.bodyAcceleration,
      rmsAcceleration: time > 0 ? Math.sqrt(peaks.squaredAcceleration / time) : 0,
      peakPitch: peaks.pitch,
      peakRoll: peaks.roll,
      heaveAtEnd: stepper.state[HEAVE],
      pitchAtEnd: stepper.state[PITCH],
    },
    energy: {
      relativeResidual: Math.abs(storedAtEnd - storedAtStart + dissipated - putInByGround) / turnedOver,
      putInByGround,
      dissipated,
      storedAtEnd,
      storedAtStart,
    },
    counters: { steps, rejected, events, evaluations: stepper.evaluations + restarts },
    history: recorder?.finish() ?? null,
  };
}

function errorScale(tolerance: number): Float64Array {
  const scale = new Float64Array(MOTION);
  for (let i = 0; i < COORDINATES; i += 1) {
    const isAngle = i === PITCH || i === ROLL || i === AXLE + 1 || i === AXLE + 3;
    scale[i] = tolerance * (isAngle ? ANGLE_SCALE : LENGTH_SCALE);
    scale[COORDINATES + i] = tolerance * SPEED_SCALE;
  }
  return scale;
}

/** Times at which a tyre meets a place where the ground changes its law, rising. */
function landingTimes(model: RideModel, track: Track, speed: number, duration: number): Float64Array {
  const wheelbase = model.sprung.toFrontAxle + model.sprung.toRearAxle;
  const times = [track.left, track.right]
    .flatMap((side) => side.breaks)
    .flatMap((distance) => [distance / speed, (distance + wheelbase) / speed])
    .filter((t) => t > 0 && t < duration);
  return Float64Array.from(new Set(times)).sort();
}

function outOfValidity(state: Float64Array): boolean {
  return !(
    Math.abs(state[PITCH]) < LARGEST_ANGLE &&
    Math.abs(state[ROLL]) < LARGEST_ANGLE &&
    Number.isFinite(state[HEAVE])
  );
}
