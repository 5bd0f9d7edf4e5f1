import type { Track } from '../course/sampled.ts';
import { CORNERS, type Corner } from '../finding/place.ts';
import { storedEnergy } from './energy.ts';
import { type Kernel, rideKernel } from './kernel.ts';
import * as at from './layout.ts';
import type { Memory } from './memory.ts';
import type { RideModel } from './model.ts';
import { makeRecorder, type Recorder } from './recorder.ts';
import type { CornerRide, EnergyBalance, RideRun, RideStatus } from './result.ts';
import { makeShakeRecorder } from './shake.ts';
import { rideOf, sizeOf, writeStart } from './start.ts';
import { clearanceAt, crushAt } from './stop-reading.ts';

export interface RunOptions {
  /** Forward, constant [m/s] > 0. */
  readonly speed: number;
  /** [s] > 0 */
  readonly duration: number;
  /**
   * Local error accepted a step, relative to the scales of `drive.ts`. The default keeps peak crush and r.m.s. acceleration
   * within 0.1 % on the house's reference cases (docs/theory/ride.md shows error against it).
   */
  readonly tolerance?: number;
  /** Samples a second of the history; 0 records none. */
  readonly historyRate?: number;
  /** Samples a second of what shakes a seat; 0 records none. Metal rings at tens of Hz: 1000 sees it. */
  readonly shakeRate?: number;
  readonly stepLimit?: number;
  /** Asked every thousand steps; true ends the run with status `cancelled`. */
  readonly isCancelled?: () => boolean;
}

/** Steps between two questions whether to go on. */
const STEPS_PER_ASK = 1000;

export const DEFAULT_TOLERANCE = 2e-4;

/**
 * Drives the model over a track: adaptive fourth-order steps; every touch, lift-off and metal contact is found in time
 * and the step is made to end there, so that inside a step nothing switches.
 *
 * @returns peaks, sums, energy books and counters; `status` says how it ended. Never NaN in a finished run.
 * @validity constant speed, small angles, vertical elements; ends with `left-validity` beyond 45° or when not finite
 */
export function runRide(model: RideModel, track: Track, options: RunOptions): RideRun {
  return runRideOn(rideKernel(), model, track, options);
}

/** The same on a given kernel. */
export function runRideOn(kernel: Kernel, model: RideModel, track: Track, options: RunOptions): RideRun {
  const { speed, duration, tolerance = DEFAULT_TOLERANCE, stepLimit = 5_000_000 } = options;
  const { historyRate = 0, shakeRate = 0 } = options;
  const hasSeat = model.seat !== undefined;
  const ride = rideOf(model, track, { speed, duration, tolerance });
  const m = kernel.memoryFor(sizeOf(ride));
  writeStart(m, ride);
  const storedAtStart = storedEnergy(m, ride, at.ONE_END);
  const recorder = historyRate > 0 ? makeRecorder(historyRate, duration, hasSeat) : null;
  const shaker = shakeRate > 0 ? makeShakeRecorder(shakeRate, duration, hasSeat) : null;
  const recorders = [recorder, shaker].filter((each) => each !== null);
  const status = drive(kernel, m, recorders, stepLimit, options.isCancelled);
  const state = m[at.FROM];
  const time = m[state + at.TIME];
  const rms = (sum: number): number => (time > 0 ? Math.sqrt(m[state + sum] / time) : 0);
  return {
    status,
    time,
    duration,
    corners: Object.fromEntries(CORNERS.map((corner, k) => [corner, cornerRide(m, k, time)])) as Record<
      Corner,
      CornerRide
    >,
    body: {
      peakAcceleration: m[at.PEAK_ACCELERATION],
      rmsAcceleration: rms(at.SQUARED_ACCELERATION),
      peakPitch: m[at.PEAK_PITCH],
      peakRoll: m[at.PEAK_ROLL],
      heaveAtEnd: m[state + at.HEAVE],
      pitchAtEnd: m[state + at.PITCH],
    },
    seat: model.seat ? { peakAcceleration: m[at.PEAK_SEAT], rmsAcceleration: rms(at.SQUARED_SEAT) } : null,
    energy: energyBalance(
      storedAtStart,
      storedEnergy(m, ride, state),
      m[state + at.GROUND_WORK],
      m[state + at.DISSIPATED],
    ),
    counters: {
      steps: m[at.STEPS],
      rejected: m[at.REJECTED],
      events: m[at.EVENTS],
      evaluations: m[at.EVALUATIONS],
    },
    history: recorder?.finish() ?? null,
    shake: shaker?.finish() ?? null,
  };
}

/** Steps to the end of the run, or to what ends it before. */
function drive(
  kernel: Kernel,
  m: Memory,
  recorders: readonly Pick<Recorder, 'afterStep'>[],
  stepLimit: number,
  isCancelled: RunOptions['isCancelled'],
): RideStatus {
  let tried = 0;
  let nextAsk = STEPS_PER_ASK;
  for (;;) {
    if (m[at.LEFT_VALIDITY] !== 0) return 'left-validity';
    const from = m[at.FROM];
    if (m[from + at.TIME] >= m[at.DURATION]) return 'finished';
    if (tried >= stepLimit) return 'step-limit';
    // Who records wants to see every step.
    const count = recorders.length > 0 ? 1 : Math.min(STEPS_PER_ASK, stepLimit - tried);
    kernel.takeSteps(count);
    // A try that gets nowhere, because a contact switches at once, counts as well.
    tried += count;
    if (m[at.FROM] !== from) for (const one of recorders) one.afterStep(m, from, m[at.FROM]);
    if (m[at.STEPS] >= nextAsk) {
      nextAsk += STEPS_PER_ASK;
      if (isCancelled?.() === true) return 'cancelled';
    }
  }
}

function cornerRide(m: Memory, corner: number, time: number): CornerRide {
  const travel = m[at.PEAK_TRAVEL + corner];
  const touches = (which: number): number => m[at.TOUCHES + at.CONTACTS * corner + which];
  return {
    peakCrush: crushAt(m, corner, travel),
    peakTravel: travel,
    clearance: clearanceAt(m, corner, travel),
    peakStopForce: m[at.PEAK_STOP_FORCE + corner],
    airborneShare: time > 0 ? m[at.AIRBORNE + corner] / time : 0,
    contacts: {
      stop: touches(at.STOP),
      metal: touches(at.METAL),
      droop: touches(at.DROOP),
      shockOpen: touches(at.OPEN),
      shockClosed: touches(at.CLOSED),
    },
    peakShockSpeed: { compression: m[at.PEAK_COMPRESSION + corner], rebound: m[at.PEAK_REBOUND + corner] },
  };
}

function energyBalance(
  storedAtStart: number,
  storedAtEnd: number,
  putInByGround: number,
  dissipated: number,
): EnergyBalance {
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
