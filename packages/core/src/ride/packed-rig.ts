import * as at from './layout.ts';
import type { i32, Memory } from './memory.ts';
import type { AxleModel, RideModel } from './model.ts';
import { type AxleTables, axleTables, writeAxle } from './packed-axle.ts';
import { longestStableStep } from './stable-step.ts';
import { cubicSize, linearSize, pathSize, writeCubic, writeLinear, writePath } from './tables.ts';

/** A rig as it stands in the memory, made once for all its rides. */
export interface PackedRig {
  readonly front: AxleTables;
  readonly rear: AxleTables;
  /** From `BODY` on, body and axles. */
  readonly constants: Float64Array;
  /** From `HEAP` on. */
  readonly tables: Float64Array;
  /** [s] */
  readonly longestStableStep: number;
}

const made = new WeakMap<RideModel, PackedRig>();

export function packedRig(model: RideModel): PackedRig {
  const before = made.get(model);
  if (before) return before;
  const packed = pack(model);
  made.set(model, packed);
  return packed;
}

function pack(model: RideModel): PackedRig {
  const front = axleTables(model, 'front');
  const rear = axleTables(model, 'rear');
  const m = new Float64Array(at.HEAP + sizeOfTables(front) + sizeOfTables(rear));
  writeBody(m, model);
  writeAxle(m, at.FRONT, model, 'front');
  writeAxle(m, at.REAR, model, 'rear');
  writeTables(m, at.REAR, rear, writeTables(m, at.FRONT, front, at.HEAP));
  return {
    front,
    rear,
    constants: m.slice(at.BODY, at.ORIGIN),
    tables: m.slice(at.HEAP),
    longestStableStep: longestStableStep(model),
  };
}

const sizeOfTables = ({ shock, stop, paths }: AxleTables): number =>
  linearSize(shock) + cubicSize(stop) + paths.reduce((all, path) => all + (path ? pathSize(path) : 0), 0);

/** @returns the place behind */
function writeTables(m: Memory, c: i32, { shock, stop, paths }: AxleTables, place: i32): i32 {
  m[c + at.SHOCK_TABLE] = place;
  let free = writeLinear(m, place, shock);
  m[c + at.STOP_TABLE] = free;
  free = writeCubic(m, free, stop);
  for (const [k, path] of paths.entries()) {
    if (path === null) continue;
    m[c + at.SPRING_PATH + k] = free;
    free = writePath(m, free, path);
  }
  return free;
}

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
