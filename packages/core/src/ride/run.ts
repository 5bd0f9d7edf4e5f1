import type { Track } from '../course/sampled.ts';
import { CORNERS, type Corner } from '../finding/place.ts';
import { startDrive, takeStep } from './drive.ts';
import { storedEnergy } from './energy.ts';
import * as at from './layout.ts';
import type { RideModel } from './model.ts';
import type { Peaks } from './peaks.ts';
import type { CornerRide, EnergyBalance, RideRun } from './result.ts';
import type { Dynamics } from './state.ts';
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
  readonly stepLimit?: number;
  /** Asked every thousand steps; true ends the run with status `cancelled`. */
  readonly isCancelled?: () => boolean;
}

/** Steps between two questions whether to go on. */
const STEPS_PER_ASK = 1000;

export const DEFAULT_TOLERANCE = 1e-4;

/**
 * Drives the model over a track: adaptive third-order steps; every touch, lift-off and metal contact is found in time
 * and the step is made to end there, so that inside a step nothing switches.
 *
 * @returns peaks, sums, energy books and counters; `status` says how it ended. Never NaN in a finished run.
 * @validity constant speed, small angles, vertical elements; ends with `left-validity` beyond 45° or when not finite
 */
export function runRide(model: RideModel, track: Track, options: RunOptions): RideRun {
  const { speed, duration, tolerance = DEFAULT_TOLERANCE, historyRate = 0, stepLimit = 5_000_000 } = options;
  const drive = startDrive(model, track, { speed, duration, tolerance, historyRate });
  const { dynamics, stepper, peaks, touches, recorder } = drive;
  const storedAtStart = storedEnergy(dynamics, 0, stepper.start);
  let nextAsk = STEPS_PER_ASK;
  while (drive.time < duration && drive.status === 'finished') {
    takeStep(drive);
    if (drive.steps + drive.rejected >= stepLimit) drive.status = 'step-limit';
    if (drive.steps >= nextAsk) {
      nextAsk += STEPS_PER_ASK;
      if (options.isCancelled?.() === true) drive.status = 'cancelled';
    }
  }
  const { status, time, steps, rejected, events } = drive;
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
    seat: model.seat
      ? {
          peakAcceleration: peaks.seatAcceleration,
          rmsAcceleration: time > 0 ? Math.sqrt(sums[at.SQUARED_SEAT] / time) : 0,
        }
      : null,
    energy: energyBalance(storedAtStart, storedEnergy(dynamics, time, stepper.start), sums),
    counters: { steps, rejected, events, evaluations: stepper.evaluations },
    history: recorder?.finish() ?? null,
  };
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
      shockOpen: touches[first + at.OPEN],
      shockClosed: touches[first + at.CLOSED],
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
