import type { Track } from '../course/sampled.ts';
import { CORNERS, type Corner } from '../finding/place.ts';
import { contactMotion, contactSwitch } from './contact-motion.ts';
import { type Dynamics, makeDynamics } from './dynamics.ts';
import { heldByTyre, storedEnergy } from './energy.ts';
import { type Event, makeEventFinder } from './events.ts';
import * as at from './layout.ts';
import type { RideModel } from './model.ts';
import { makePeaks, type Peaks } from './peaks.ts';
import { makeRecorder } from './recorder.ts';
import type { CornerRide, EnergyBalance, RideRun, RideStatus } from './result.ts';
import { makeStepper, type Stepper } from './stepper.ts';
import { clearanceAt, crushAt } from './stop-reading.ts';

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

export const DEFAULT_TOLERANCE = 1e-4;

/** What one unit of relative error means: lengths [m], angles [rad] and their speeds, from the size of a stop's crush. */
const LENGTH_SCALE = 0.02;
const ANGLE_SCALE = 0.02;
const SPEED_SCALE = 0.6;

const SHORTEST_STEP = 1e-9;
const LONGEST_STEP = 0.05;
/** At least this many steps over the shortest thing on the ground, so that none is jumped. */
const STEPS_PER_FEATURE = 4;

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
  const dynamics = makeDynamics(model, track, speed);
  const stepper = makeStepper(dynamics.accelerate, {
    coordinates: at.COORDINATES,
    sums: at.SUMS,
    positionScale: scaleOf(tolerance, LENGTH_SCALE, ANGLE_SCALE),
    speedScale: scaleOf(tolerance, SPEED_SCALE, SPEED_SCALE),
  });
  for (const i of [at.HEAVE, at.AXLE, at.AXLE + 2]) stepper.start.position[i] = track.initialLift;
  dynamics.contacts = contactsAtRest(dynamics, stepper);
  stepper.evaluateStart(0);

  const findEvent = makeEventFinder(dynamics);
  const peaks = makePeaks(dynamics);
  const recorder = historyRate > 0 ? makeRecorder(dynamics, historyRate, duration) : null;
  const breaks = breakTimes(model, track, speed, duration);
  const longest = Math.min(LONGEST_STEP, track.shortestFeature / speed / STEPS_PER_FEATURE);
  const touches = new Int32Array(4 * at.CONTACTS);
  const storedAtStart = storedEnergy(dynamics, 0, stepper.start);

  let time = 0;
  let step = Math.min(1e-3, longest);
  let steps = 0;
  let rejected = 0;
  let events = 0;
  let nextBreak = 0;
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
    while (nextBreak < breaks.length && breaks[nextBreak] <= time + SHORTEST_STEP) nextBreak += 1;
    const left = (nextBreak < breaks.length ? breaks[nextBreak] : duration) - time;
    // The last two steps before a break share what is left, so that none of them is a crumb.
    const h = step >= left ? left : 2 * step > left ? left / 2 : step;
    const error = stepper.attempt(time, h);
    if (!(error <= 1)) {
      if (h <= SHORTEST_STEP) {
        status = 'left-validity';
        break;
      }
      rejected += 1;
      // The local error goes with the cube of the step.
      step = h * (error > 1 ? Math.max(0.2, 0.9 / Math.cbrt(error)) : 0.2);
      continue;
    }
    // A step cut short by a break says nothing against the longer one that was planned.
    const grown = Math.min(longest, h * Math.min(4, 0.9 / Math.cbrt(Math.max(error, 1e-6))));
    step = h < step ? Math.max(grown, step) : grown;

    const changed = dynamics.wanted ^ dynamics.contacts;
    const event = changed === 0 ? null : findEvent(stepper, time, h, changed);
    const taken = event === null ? h : event.theta * h;
    if (taken > SHORTEST_STEP) {
      if (taken < h) stepper.attempt(time, taken);
      peaks.afterStep(stepper, time, taken);
      recorder?.afterStep(stepper, time, taken);
      stepper.accept();
      time = taken === duration - time ? duration : time + taken;
      steps += 1;
    }
    if (event !== null) {
      events += 1;
      switchContacts(dynamics, stepper, time, event, touches);
      stepper.evaluateStart(time);
    }
    if (outOfValidity(stepper)) {
      status = 'left-validity';
      break;
    }
  }

  const { position, sums } = stepper.start;
  return {
    status,
    time,
    duration,
    corners: Object.fromEntries(
      CORNERS.map((corner, k) => [corner, cornerRide(dynamics, peaks, touches, k, time)]),
    ) as Record<Corner, CornerRide>,
    body: {
      peakAcceleration: peaks.bodyAcceleration,
      rmsAcceleration: time > 0 ? Math.sqrt(sums[at.SQUARED_ACCELERATION] / time) : 0,
      peakPitch: peaks.pitch,
      peakRoll: peaks.roll,
      heaveAtEnd: position[at.HEAVE],
      pitchAtEnd: position[at.PITCH],
    },
    energy: energyBalance(storedAtStart, storedEnergy(dynamics, time, stepper.start), sums),
    counters: { steps, rejected, events, evaluations: stepper.evaluations },
    history: recorder?.finish() ?? null,
  };
}

function scaleOf(tolerance: number, heave: number, angle: number): Float64Array {
  const scale = new Float64Array(at.COORDINATES).fill(tolerance * angle);
  for (const i of [at.HEAVE, at.AXLE, at.AXLE + 2]) scale[i] = tolerance * heave;
  return scale;
}

function contactsAtRest(dynamics: Dynamics, { start }: Stepper): number {
  let contacts = 0;
  for (let contact = 0; contact < 4 * at.CONTACTS; contact += 1) {
    const position = contactMotion(dynamics, contact, start.position);
    if (contactSwitch(dynamics, contact, 0, position, 0) > 0) contacts |= 1 << contact;
  }
  return contacts;
}

/** Switches the contacts of an event, counts touches, and enters in the books what a tyre holds as it lets go. */
function switchContacts(
  dynamics: Dynamics,
  { start }: Stepper,
  time: number,
  event: Event,
  touches: Int32Array,
): void {
  dynamics.contacts ^= event.contacts;
  for (let contact = 0; contact < touches.length; contact += 1) {
    if (((event.contacts >> contact) & 1) === 0) continue;
    const isOn = ((dynamics.contacts >> contact) & 1) === 1;
    if (isOn) touches[contact] += 1;
    if (contact % at.CONTACTS === at.TYRE) {
      const held = heldByTyre(dynamics, Math.floor(contact / at.CONTACTS), time, start);
      start.sums[at.DISSIPATED] += isOn ? -held : held;
    }
  }
}

/** Times at which a tyre meets a place where the ground changes its law, rising. */
function breakTimes(model: RideModel, track: Track, speed: number, duration: number): Float64Array {
  const wheelbase = model.sprung.toFrontAxle + model.sprung.toRearAxle;
  const times = [track.left, track.right]
    .flatMap((side) => side.breaks)
    .flatMap((distance) => [distance / speed, (distance + wheelbase) / speed])
    .filter((t) => t > 0 && t < duration);
  return Float64Array.from(new Set(times)).sort();
}

function outOfValidity({ start: { position } }: Stepper): boolean {
  return !(
    Math.abs(position[at.PITCH]) < LARGEST_ANGLE &&
    Math.abs(position[at.ROLL]) < LARGEST_ANGLE &&
    Number.isFinite(position[at.HEAVE])
  );
}

function cornerRide(
  dynamics: Dynamics,
  peaks: Peaks,
  touches: Int32Array,
  corner: number,
  time: number,
): CornerRide {
  const travel = peaks.travel[corner];
  const first = at.CONTACTS * corner;
  return {
    peakCrush: crushAt(dynamics, corner, travel),
    peakTravel: travel,
    clearance: clearanceAt(dynamics, corner, travel),
    peakStopForce: peaks.stopForce[corner],
    airborneShare: time > 0 ? peaks.airborne[corner] / time : 0,
    contacts: {
      stop: touches[first + at.STOP],
      metal: touches[first + at.METAL],
      droop: touches[first + at.DROOP],
    },
    peakShockSpeed: { compression: peaks.compressionSpeed[corner], rebound: peaks.reboundSpeed[corner] },
  };
}

function energyBalance(storedAtStart: number, storedAtEnd: number, sums: Float64Array): EnergyBalance {
  const putInByGround = sums[at.GROUND_WORK];
  const dissipated = sums[at.DISSIPATED];
  const gained = storedAtEnd - storedAtStart;
  const turnedOver = Math.max(Math.abs(putInByGround), Math.abs(dissipated), Math.abs(gained), 1);
  return {
    relativeResidual: Math.abs(gained + dissipated - putInByGround) / turnedOver,
    putInByGround,
    dissipated,
    storedAtEnd,
    storedAtStart,
  };
}
