import type { Track } from '../course/sampled.ts';
import { contactMotion, contactSwitch } from './contact-motion.ts';
import { makeDynamics } from './dynamics.ts';
import { heldByTyre } from './energy.ts';
import { type Event, makeEventFinder } from './events.ts';
import * as at from './layout.ts';
import type { RideModel } from './model.ts';
import { makePeaks, type Peaks } from './peaks.ts';
import { makeRecorder, type Recorder } from './recorder.ts';
import type { RideStatus } from './result.ts';
import type { Dynamics } from './state.ts';
import { makeStepper, type Stepper } from './stepper.ts';
import { crushAt, frictionGain, UNTURNED } from './stop-reading.ts';

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

/** A drive under way. */
export interface Drive {
  readonly dynamics: Dynamics;
  readonly stepper: Stepper;
  readonly peaks: Peaks;
  readonly recorder: Recorder | null;
  readonly findEvent: ReturnType<typeof makeEventFinder>;
  /** Contacts newly made, by bit number. */
  readonly touches: Int32Array;
  /** Times at which a tyre meets a place where the ground changes its law, rising; the end is the last. */
  readonly breaks: Float64Array;
  readonly duration: number;
  readonly longestStep: number;
  status: RideStatus;
  time: number;
  /** The step planned next. */
  step: number;
  steps: number;
  rejected: number;
  events: number;
  nextBreak: number;
}

/**
 * @param tolerance – local error accepted a step, relative to the scales above
 * @param historyRate – samples a second; 0 records none
 */
export function startDrive(
  model: RideModel,
  track: Track,
  {
    speed,
    duration,
    tolerance,
    historyRate,
  }: { speed: number; duration: number; tolerance: number; historyRate: number },
): Drive {
  const dynamics = makeDynamics(model, track, speed);
  const stepper = makeStepper(dynamics.accelerate, {
    coordinates: dynamics.coordinates,
    sums: dynamics.sums,
    positionScale: scaleOf(dynamics, tolerance, LENGTH_SCALE, ANGLE_SCALE),
    speedScale: scaleOf(dynamics, tolerance, SPEED_SCALE, SPEED_SCALE),
    ...(dynamics.hasInner && { sumScale: sumScaleOf(dynamics, tolerance) }),
  });
  for (const i of heaves(dynamics)) stepper.start.position[i] = track.initialLift;
  dynamics.contacts = contactsAtRest(dynamics, stepper);
  stepper.evaluateStart(0);
  const longestStep = Math.min(LONGEST_STEP, track.shortestFeature / speed / STEPS_PER_FEATURE);
  return {
    dynamics,
    stepper,
    peaks: makePeaks(dynamics),
    recorder: historyRate > 0 ? makeRecorder(dynamics, historyRate, duration) : null,
    findEvent: makeEventFinder(dynamics),
    touches: new Int32Array(4 * at.CONTACTS),
    breaks: breakTimes(model, track, speed, duration),
    duration,
    longestStep,
    status: 'finished',
    time: 0,
    step: Math.min(1e-3, longestStep),
    steps: 0,
    rejected: 0,
    events: 0,
    nextBreak: 0,
  };
}

/**
 * Tries one step; takes it as far as the first contact that switches in it. A function of its own and not the body of
 * a loop, so that the compiler sees it often and whole.
 */
export function takeStep(drive: Drive): void {
  const { dynamics, stepper, breaks } = drive;
  const { time } = drive;
  while (breaks[drive.nextBreak] <= time + SHORTEST_STEP) drive.nextBreak += 1;
  const until = breaks[drive.nextBreak];
  const left = until - time;
  const planned = drive.step;
  // The last two steps before a break share what is left, so that none of them is a crumb.
  const h = planned >= left ? left : 2 * planned > left ? left / 2 : planned;
  const error = stepper.attempt(time, h);
  if (!(error <= 1)) {
    if (h <= SHORTEST_STEP) drive.status = 'left-validity';
    drive.rejected += 1;
    // The local error goes with the cube of the step.
    drive.step = h * (error > 1 ? Math.max(0.2, 0.9 / Math.cbrt(error)) : 0.2);
    return;
  }
  // A step cut short by a break says nothing against the longer one that was planned.
  const grown = Math.min(drive.longestStep, h * Math.min(4, 0.9 / Math.cbrt(Math.max(error, 1e-6))));
  drive.step = h < planned ? Math.max(grown, planned) : grown;

  const changed = dynamics.wanted ^ dynamics.contacts;
  const event = changed === 0 ? null : drive.findEvent(stepper, time, h, changed);
  const taken = event === null ? h : event.theta * h;
  if (taken > SHORTEST_STEP) {
    if (taken < h) stepper.attempt(time, taken);
    drive.peaks.afterStep(stepper, time, taken);
    if (drive.recorder !== null) drive.recorder.afterStep(stepper, time, taken);
    stepper.accept();
    drive.time = taken === left ? until : time + taken;
    drive.steps += 1;
  }
  if (event !== null) {
    drive.events += 1;
    switchContacts(drive, event);
    stepper.evaluateStart(drive.time);
  }
  if (outOfValidity(stepper)) drive.status = 'left-validity';
}

/** Coordinates that are heights; the others are angles. */
const heaves = ({ model }: Dynamics): readonly number[] =>
  model.seat ? [at.HEAVE, at.AXLE, at.AXLE + 2, at.SEAT] : [at.HEAVE, at.AXLE, at.AXLE + 2];

function scaleOf(dynamics: Dynamics, tolerance: number, height: number, angle: number): Float64Array {
  const scale = new Float64Array(dynamics.coordinates).fill(tolerance * angle);
  for (const i of heaves(dynamics)) scale[i] = tolerance * height;
  return scale;
}

function sumScaleOf({ sums }: Dynamics, tolerance: number): Float64Array {
  return new Float64Array(sums).fill(Infinity, 0, at.INNER).fill(tolerance * LENGTH_SCALE, at.INNER);
}

function contactsAtRest(dynamics: Dynamics, { start }: Stepper): number {
  let contacts = 0;
  for (let contact = 0; contact < 4 * at.CONTACTS; contact += 1) {
    const position = contactMotion(dynamics, contact, start.position);
    if (contactSwitch(dynamics, contact, 0, position, 0, 0) > 0) contacts |= 1 << contact;
  }
  return contacts;
}

/** Switches the contacts of an event, counts touches, and keeps what a switch leaves behind. */
function switchContacts({ dynamics, stepper, touches, time }: Drive, event: Event): void {
  const { start } = stepper;
  dynamics.contacts ^= event.contacts;
  for (let contact = 0; contact < touches.length; contact += 1) {
    if (((event.contacts >> contact) & 1) === 0) continue;
    const corner = Math.floor(contact / at.CONTACTS);
    const isOn = ((dynamics.contacts >> contact) & 1) === 1;
    if (isOn) touches[contact] += 1;
    switch (contact - at.CONTACTS * corner) {
      case at.TYRE: {
        // What a tyre holds as it lets go is lost; touched again before it is unpressed, it is held again.
        const held = heldByTyre(dynamics, corner, time, start);
        start.sums[at.DISSIPATED] += isOn ? -held : held;
        break;
      }
      case at.STOP:
        if (isOn) {
          dynamics.reversals[corner] = UNTURNED;
          dynamics.contacts |= 1 << (at.CONTACTS * corner + at.CLOSING);
        }
        break;
      case at.CLOSING: {
        const crush = crushAt(dynamics, corner, contactMotion(dynamics, contact, start.position));
        dynamics.reversals[corner] = { travel: crush, force: frictionGain(dynamics, corner, crush) - 1 };
        break;
      }
    }
  }
}

function breakTimes(model: RideModel, track: Track, speed: number, duration: number): Float64Array {
  const wheelbase = model.sprung.toFrontAxle + model.sprung.toRearAxle;
  const times = [track.left, track.right]
    .flatMap((side) => side.breaks)
    .flatMap((distance) => [distance / speed, (distance + wheelbase) / speed])
    .filter((t) => t > 0 && t < duration);
  return Float64Array.from(new Set([...times, duration])).sort();
}

function outOfValidity({ start: { position } }: Stepper): boolean {
  return !(
    Math.abs(position[at.PITCH]) < LARGEST_ANGLE &&
    Math.abs(position[at.ROLL]) < LARGEST_ANGLE &&
    Number.isFinite(position[at.HEAVE])
  );
}
