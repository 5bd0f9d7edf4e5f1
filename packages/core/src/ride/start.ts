import type { Track } from '../course/sampled.ts';
import { contactMotion, contactSwitch } from './contact-motion.ts';
import { holdContacts } from './drive.ts';
import { accelerateAndLook } from './dynamics.ts';
import { groundPieces, writeGround } from './ground.ts';
import * as at from './layout.ts';
import type { i32, Memory } from './memory.ts';
import type { AxleModel, RideModel } from './model.ts';
import { type AxleTables, axleTables, writeAxle } from './packed-axle.ts';
import { scheduleOf } from './schedule.ts';
import { longestStableStep } from './stable-step.ts';
import { cubicSize, linearSize, pathSize, writeCubic, writeLinear, writePath } from './tables.ts';

/** What one unit of relative error means: lengths [m], angles [rad] and their speeds, from the size of a stop's crush. */
const LENGTH_SCALE = 0.02;
const ANGLE_SCALE = 0.02;
const SPEED_SCALE = 0.6;

const FIRST_STEP = 1e-3;
const LONGEST_STEP = 0.05;

/** A ride to be driven. */
export interface Ride {
  readonly model: RideModel;
  readonly track: Track;
  readonly front: AxleTables;
  readonly rear: AxleTables;
  /** Times to land on, and the longest steps between. */
  readonly schedule: Float64Array;
  readonly speed: number;
  readonly duration: number;
  /** Local error accepted a step, relative to the scales above. */
  readonly tolerance: number;
}

export function rideOf(
  model: RideModel,
  track: Track,
  { speed, duration, tolerance }: { speed: number; duration: number; tolerance: number },
): Ride {
  const { sprung } = model;
  return {
    model,
    track,
    front: axleTables(model, 'front'),
    rear: axleTables(model, 'rear'),
    schedule: scheduleOf(track, {
      speed,
      wheelbase: sprung.toFrontAxle + sprung.toRearAxle,
      duration,
      longest: Math.min(LONGEST_STEP, longestStableStep(model)),
    }),
    speed,
    duration,
    tolerance,
  };
}

/** Places that a ride takes in the memory. */
export function sizeOf({ track, front, rear, schedule }: Ride): number {
  const tables = [front, rear].reduce(
    (sum, { shock, stop, paths }) =>
      sum +
      linearSize(shock) +
      cubicSize(stop) +
      paths.reduce((all, path) => all + (path ? pathSize(path) : 0), 0),
    0,
  );
  const ground = groundPieces(track.left).length + groundPieces(track.right).length;
  return at.HEAP + tables + schedule.length + 1 + ground;
}

/** Writes a ride into the memory, with the rig at the start of it. */
export function writeStart(m: Memory, ride: Ride): void {
  const { model, track, speed, duration } = ride;
  m.fill(0, at.ONE_END, at.HEAP);
  m[at.RIDE_SPEED] = speed;
  m[at.SIGN] = 1;
  m[at.SIGN + 1] = -1;
  m[at.DURATION] = duration;
  writeBody(m, model);
  writeAxle(m, at.FRONT, model, 'front');
  writeAxle(m, at.REAR, model, 'rear');
  let free: i32 = at.HEAP;
  for (const [c, { shock, stop, paths }] of [
    [at.FRONT, ride.front],
    [at.REAR, ride.rear],
  ] as const) {
    m[c + at.SHOCK_TABLE] = free;
    free = writeLinear(m, free, shock);
    m[c + at.STOP_TABLE] = free;
    free = writeCubic(m, free, stop);
    for (const [k, path] of paths.entries()) {
      if (path === null) continue;
      m[c + at.SPRING_PATH + k] = free;
      free = writePath(m, free, path);
    }
  }
  m[at.NEXT_BREAK] = free;
  m.set(ride.schedule, free);
  free += ride.schedule.length;
  m[free] = Infinity;
  free = writeGround(m, 0, track.left, speed, free + 1);
  writeGround(m, 1, track.right, speed, free);
  writeAcceptedErrors(m, ride.tolerance);

  m[at.PLANNED_STEP] = FIRST_STEP;
  m[at.LAST_ERROR] = 1;
  m.fill(-Infinity, at.PEAK_TRAVEL, at.PEAK_TRAVEL + 4);
  m[at.FROM] = at.ONE_END;
  for (const i of HEIGHTS) m[at.ONE_END + i] = track.initialLift;
  holdContacts(m, contactsAtRest(m, at.ONE_END));
  accelerateAndLook(m, at.ONE_END);
  m[at.EVALUATIONS] = 1;
}

/** Coordinates that are heights; the others are angles. */
const HEIGHTS = [at.HEAVE, at.AXLE, at.AXLE + 2, at.SEAT];

function writeBody(m: Memory, { sprung, gravity, seat, axles }: RideModel): void {
  const bodyMass = sprung.mass - (seat?.mass ?? 0);
  m[at.PER_BODY_MASS] = 1 / bodyMass;
  m[at.RESTING_LIFT] = seat ? (sprung.mass * gravity) / bodyMass : gravity;
  m[at.PER_PITCH_INERTIA] = 1 / sprung.pitchInertia;
  m[at.PER_ROLL_INERTIA] = 1 / sprung.rollInertia;
  m[at.GRAVITY] = gravity;
  m[at.SEAT_MASS] = seat?.mass ?? 0;
  m[at.SEAT_RATE] = seat?.rate ?? 0;
  m[at.SEAT_DAMPING] = seat?.damping ?? 0;
  m[at.SEAT_AHEAD] = seat?.ahead ?? 0;
  m[at.SEAT_LEFT] = seat?.left ?? 0;
  m[at.IS_PLAIN] = [axles.front, axles.rear].every(isPlain) ? 1 : 0;
  m[at.HAS_INNER] = axles.front.stop.maxwell || axles.rear.stop.maxwell ? 1 : 0;
}

/** Whether an axle has nothing but coil, shock, stop, metal, droop limit and tyre, each at one ratio. */
function isPlain({ spring, shock, stop }: AxleModel): boolean {
  const further = [
    spring.path,
    shock.path,
    shock.gas,
    shock.ends,
    stop.path,
    stop.oilFactor,
    stop.friction,
    stop.maxwell,
  ];
  return further.every((each) => !each);
}

function writeAcceptedErrors(m: Memory, tolerance: number): void {
  for (let i = 0; i < at.COORDINATES; i += 1) {
    const unit = HEIGHTS.includes(i) ? LENGTH_SCALE : ANGLE_SCALE;
    m[at.PER_ERROR + i] = 1 / (tolerance * unit);
    m[at.PER_ERROR + at.COORDINATES + i] = 1 / (tolerance * SPEED_SCALE);
  }
  m.fill(1 / (tolerance * LENGTH_SCALE), at.PER_INNER_ERROR, at.PER_INNER_ERROR + at.INNER_SIZE);
}

function contactsAtRest(m: Memory, state: i32): i32 {
  let contacts = 0;
  for (let contact = 0; contact < at.ALL_CONTACTS; contact += 1) {
    const position = contactMotion(m, contact, state);
    if (contactSwitch(m, contact, 0, position, 0, 0) > 0) contacts |= 1 << contact;
  }
  return contacts;
}
