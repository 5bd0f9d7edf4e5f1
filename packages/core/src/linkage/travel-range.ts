import type { AxleGeometry, AxlePose, Vector } from './geometry.ts';
import { movedPoint } from './geometry.ts';
import { posesFrom } from './pose.ts';

/** How far an axle can go, as the travel of its wheels from ride height, both ≥ 0 [m]; full lock to either side [rad]. */
export interface TravelRange {
  readonly bump: number;
  readonly droop: number;
  readonly lock: number;
}

/** One place in it: travel of each wheel, bump positive [m]; turn of the steered wheel about its kingpin, left positive [rad]. */
export interface TravelPlace {
  readonly left: number;
  readonly right: number;
  readonly steer: number;
}

/** Where the axle stands at a bump [m] and roll [rad]; null where its links cannot follow. */
export type PoseSource = (bump: number, roll: number) => AxlePose | null;

/** The poses of an axle on its links. */
export const posesOn = (geometry: AxleGeometry): PoseSource => {
  const poseAt = posesFrom(geometry);
  return (bump, roll) => {
    const found = poseAt(bump, roll);
    return found.status === 'reached' ? found.pose : null;
  };
};

/** What is asked of each place where the axle can stand. */
export type PlaceValue = (pose: AxlePose, place: TravelPlace) => number;

export interface Extreme {
  readonly value: number;
  readonly place: TravelPlace;
}

/** Sampled places with the poses that were found there, made once and used for everything that is asked. */
export interface SampledRange {
  readonly range: TravelRange;
  readonly halfTrack: number;
  readonly poses: PoseSource;
  readonly places: readonly { readonly place: TravelPlace; readonly pose: AxlePose }[];
  /** Sampled places that the links cannot reach. */
  readonly missed: number;
}

export interface SamplingOptions {
  /** Places along each wheel's travel, odd so that ride height is one of them when bump equals droop. */
  readonly across?: number;
}

/**
 * Samples everything that the wheels of one axle can do: each wheel anywhere between droop and bump, so that heave,
 * one wheel up and the other down and all between are in it; steer at both locks and straight on.
 *
 *     bump = (left + right)/2      sin roll = (left − right) ÷ track
 */
export function sampleRange(
  geometry: AxleGeometry,
  range: TravelRange,
  poses: PoseSource,
  { across = 11 }: SamplingOptions = {},
): SampledRange {
  const steers = range.lock > 0 ? [-1, -0.5, 0, 0.5, 1].map((share) => share * range.lock) : [0];
  // The last is the end itself, not what rounding makes of it.
  const travels = Array.from({ length: across }, (_, i) =>
    i === across - 1 ? range.bump : -range.droop + ((range.bump + range.droop) * i) / (across - 1),
  );
  const { halfTrack } = geometry;
  const found: { place: TravelPlace; pose: AxlePose }[] = [];
  let missed = 0;
  for (const left of travels)
    for (const right of travels) {
      const pose = poseAt(poses, halfTrack, left, right);
      if (pose === null) missed += 1;
      else for (const steer of steers) found.push({ place: { left, right, steer }, pose });
    }
  return { range, halfTrack, poses, places: found, missed };
}

/** Places from which the best is looked for: peaks that stand apart. */
const STARTS = 3;
/** Share of the range within which two sampled places belong to one peak. */
const APART = 0.25;
/** The search ends where its steps are this share of the first: a smooth peak is then told to its square. */
const FINEST = 2 ** -11;

/**
 * The largest value over the whole range: sampled, then refined by a pattern search from the best places, which keeps
 * to the range and looks along and across both wheels' travel.
 *
 * @returns null when no place can be reached
 * @validity right for values that change smoothly and not faster than the sampling, as lengths of rods, shafts and
 * hoses do; tested against random places. A place between links that lock and links that do not may be missed.
 */
export function largestOver(sampled: SampledRange, value: PlaceValue): Extreme | null {
  const { range } = sampled;
  const starts = peaksOf(sampled, value);
  let best: Extreme | null = null;
  for (const start of starts) {
    const refined = climb(sampled, value, start, (range.bump + range.droop) / 10, range.lock / 4);
    if (best === null || refined.value > best.value) best = refined;
  }
  return best;
}

export function smallestOver(sampled: SampledRange, value: PlaceValue): Extreme | null {
  const found = largestOver(sampled, (pose, place) => -value(pose, place));
  return found && { value: -found.value, place: found.place };
}

/** The best places sampled, each away from the better ones. */
function peaksOf({ range, places }: SampledRange, value: PlaceValue): readonly Extreme[] {
  const travel = APART * (range.bump + range.droop);
  const lock = 2 * APART * range.lock;
  const all = places.map(({ place, pose }) => ({ value: value(pose, place), place }));
  all.sort((a, b) => b.value - a.value);
  const peaks: Extreme[] = [];
  for (const each of all) {
    const near = peaks.some(
      ({ place }) =>
        Math.abs(place.left - each.place.left) <= travel &&
        Math.abs(place.right - each.place.right) <= travel &&
        Math.abs(place.steer - each.place.steer) <= lock,
    );
    if (near) continue;
    peaks.push(each);
    if (peaks.length === STARTS) break;
  }
  return peaks;
}

function climb(
  sampled: SampledRange,
  value: PlaceValue,
  start: Extreme,
  travelStep: number,
  steerStep: number,
): Extreme {
  let best = start;
  for (let share = 1; share > FINEST; ) {
    let better = best;
    for (const [left, right, steer] of directions(steerStep > 0)) {
      const place = within(sampled.range, {
        left: best.place.left + left * share * travelStep,
        right: best.place.right + right * share * travelStep,
        steer: best.place.steer + steer * share * steerStep,
      });
      if (same(place, best.place)) continue;
      const pose = poseAt(sampled.poses, sampled.halfTrack, place.left, place.right);
      if (pose === null) continue;
      const there = value(pose, place);
      if (there > better.value) better = { value: there, place };
    }
    if (better === best) share /= 2;
    best = better;
  }
  return best;
}

const ACROSS = [-1, 0, 1].flatMap((left) => [-1, 0, 1].map((right) => [left, right] as const));
const PLAIN = ACROSS.filter(([left, right]) => left !== 0 || right !== 0).map(
  ([left, right]) => [left, right, 0] as const,
);
const STEERED = ACROSS.flatMap(([left, right]) =>
  [-1, 0, 1].map((steer) => [left, right, steer] as const),
).filter((each) => each.some((step) => step !== 0));
const directions = (steers: boolean) => (steers ? STEERED : PLAIN);

const clamp = (x: number, low: number, high: number) => Math.min(high, Math.max(low, x));
const within = ({ bump, droop, lock }: TravelRange, place: TravelPlace): TravelPlace => ({
  left: clamp(place.left, -droop, bump),
  right: clamp(place.right, -droop, bump),
  steer: clamp(place.steer, -lock, lock),
});
const same = (a: TravelPlace, b: TravelPlace) =>
  a.left === b.left && a.right === b.right && a.steer === b.steer;

const poseAt = (poses: PoseSource, halfTrack: number, left: number, right: number) =>
  poses((left + right) / 2, Math.asin(clamp((left - right) / (2 * halfTrack), -1, 1)));

/** Where a point on a turned knuckle goes: about its kingpin first, then with the axle. */
export function knucklePoint(
  pose: AxlePose,
  geometry: AxleGeometry,
  point: Vector,
  kingpin: { readonly point: Vector; readonly axis: Vector },
  steer: number,
): Vector {
  return movedPoint(pose, geometry, turnedAbout(point, kingpin.point, kingpin.axis, steer));
}

/** Rotation of a point about a line. @source Rodrigues' formula (from memory) */
function turnedAbout(point: Vector, through: Vector, axis: Vector, angle: number): Vector {
  const length = Math.hypot(...axis);
  const [kx, ky, kz] = axis.map((each) => each / length);
  const [x, y, z] = [point[0] - through[0], point[1] - through[1], point[2] - through[2]];
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const along = (kx * x + ky * y + kz * z) * (1 - cos);
  return [
    through[0] + x * cos + (ky * z - kz * y) * sin + kx * along,
    through[1] + y * cos + (kz * x - kx * z) * sin + ky * along,
    through[2] + z * cos + (kx * y - ky * x) * sin + kz * along,
  ];
}
