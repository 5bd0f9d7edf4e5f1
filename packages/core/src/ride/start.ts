import type { Track } from '../course/sampled.ts';
import { contactMotion, contactSwitch } from './contact-motion.ts';
import { holdContacts } from './drive.ts';
import { accelerateAndLook } from './dynamics.ts';
import { groundPieces, writeGround } from './ground.ts';
import * as at from './layout.ts';
import type { i32, Memory } from './memory.ts';
import type { RideModel } from './model.ts';
import { type PackedRig, packedRig } from './packed-rig.ts';
import { scheduleOf } from './schedule.ts';

/** What one unit of relative error means: lengths [m], angles [rad] and their speeds, from the size of a stop's crush. */
const LENGTH_SCALE = 0.02;
const ANGLE_SCALE = 0.02;
const SPEED_SCALE = 0.6;

const FIRST_STEP = 1e-3;
const LONGEST_STEP = 0.05;

/** A ride to be driven. */
export interface Ride {
  readonly model: RideModel;
  readonly rig: PackedRig;
  readonly track: Track;
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
  const rig = packedRig(model);
  const wheelbase = model.sprung.toFrontAxle + model.sprung.toRearAxle;
  const longest = Math.min(LONGEST_STEP, rig.longestStableStep);
  const schedule = scheduleOf(track, { speed, wheelbase, duration, longest });
  return { model, rig, track, schedule, speed, duration, tolerance };
}

/** Places that a ride takes in the memory. */
export function sizeOf({ track, rig, schedule }: Ride): number {
  const ground = groundPieces(track.left).length + groundPieces(track.right).length;
  return at.HEAP + rig.tables.length + schedule.length + 1 + ground;
}

/** Writes a ride into the memory, with the rig at the start of it. */
export function writeStart(m: Memory, { rig, track, speed, duration, schedule, tolerance }: Ride): void {
  m.fill(0, at.ONE_END, at.HEAP);
  m.set(rig.constants, at.BODY);
  m.set(rig.tables, at.HEAP);
  m[at.RIDE_SPEED] = speed;
  m[at.DURATION] = duration;
  m[at.SIGN] = 1;
  m[at.SIGN + 1] = -1;
  let free: i32 = at.HEAP + rig.tables.length;
  m[at.NEXT_BREAK] = free;
  m.set(schedule, free);
  free += schedule.length;
  m[free] = Infinity;
  free = writeGround(m, 0, track.left, speed, free + 1);
  writeGround(m, 1, track.right, speed, free);
  writeAcceptedErrors(m, tolerance);

  m[at.PLANNED_STEP] = FIRST_STEP;
  m[at.LAST_ROOT] = 1;
  m.fill(-Infinity, at.PEAK_TRAVEL, at.PEAK_TRAVEL + 4);
  m[at.FROM] = at.ONE_END;
  for (const i of HEIGHTS) m[at.ONE_END + i] = track.initialLift;
  holdContacts(m, contactsAtRest(m, at.ONE_END));
  accelerateAndLook(m, at.ONE_END);
  m[at.EVALUATIONS] = 1;
}

/** Coordinates that are heights; the others are angles. */
const HEIGHTS = [at.HEAVE, at.AXLE, at.AXLE + 2, at.SEAT];

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
