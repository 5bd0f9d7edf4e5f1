import type { AxleGeometry, AxlePose, Link, Vector } from './geometry.ts';
import { movedPoint } from './geometry.ts';
import {
  type Extreme,
  knucklePoint,
  largestOver,
  type PlaceValue,
  type SampledRange,
  smallestOver,
} from './travel-range.ts';
import { minus, size } from './vector.ts';

/** A hose, brake line, breather or wire between a point on the body and one that moves, at ride height. */
export interface MovingLine {
  readonly body: Vector;
  readonly axle: Vector;
  /** Kingpin about which the moving end turns with the wheel; null for an end that sits on the axle. */
  readonly kingpin: { readonly point: Vector; readonly axis: Vector } | null;
}

/** Distance between two ends over all that the axle can do [m]. */
export interface Reach {
  readonly atRide: number;
  /** The free length that is needed before any slack. */
  readonly longest: Extreme;
  /** Where the line hangs in its largest loop. */
  readonly shortest: Extreme;
  /** Sampled places that the links cannot reach; nothing here is known of them. */
  readonly missed: number;
}

/**
 * The free length that a hose needs: the largest distance of its ends over bump, droop, roll and steer.
 *
 * @returns null when no place can be reached
 * @validity straight between its ends: nothing in the way, no clip between; as `largestOver`. A hose shortens by up to
 * 4 % under pressure and its fittings want a straight piece: both come on top.
 */
export function reachOf(line: MovingLine, geometry: AxleGeometry, sampled: SampledRange): Reach | null {
  return reachOver(sampled, size(minus(line.axle, line.body)), (pose, { steer }) =>
    size(minus(movingEnd(line, geometry, pose, steer), line.body)),
  );
}

function reachOver(sampled: SampledRange, atRide: number, distance: PlaceValue): Reach | null {
  const longest = largestOver(sampled, distance);
  const shortest = smallestOver(sampled, distance);
  return longest && shortest && { atRide, longest, shortest, missed: sampled.missed };
}

function movingEnd(line: MovingLine, geometry: AxleGeometry, pose: AxlePose, steer: number): Vector {
  const { axle, kingpin } = line;
  return kingpin ? knucklePoint(pose, geometry, axle, kingpin, steer) : movedPoint(pose, geometry, axle);
}

/** A line tied to a link: two parts that share what has to be given. */
export interface TiePoint {
  /** Along the link from its body joint, share of its length 0…1, and as a length [m]. */
  readonly fraction: number;
  readonly fromBody: number;
  /** From the body's end to the tie, and from the tie to the moving end. */
  readonly bodyPart: Reach;
  readonly axlePart: Reach;
}

/** Share of the link to which a tie is found; nobody clamps to better. */
const FINE = 1e-5;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Where to tie a line to a link, so that the larger need of its two parts is as small as it can be.
 *
 * A distance to a point that slides along a straight line is convex in its place; so is the largest of any number of
 * them, and the larger of two such. So there is one smallest value, and a golden-section search finds it. It runs over
 * the sampled places; both parts are then worked out anew with refinement.
 *
 * @returns null when no place can be reached
 * @validity link without bends, tied on the line between its joints; no twist of the line is counted
 * @source Kiefer 1953, golden-section search (from memory)
 */
export function tiePointOn(
  link: Link,
  line: MovingLine,
  geometry: AxleGeometry,
  sampled: SampledRange,
): TiePoint | null {
  const moved = sampled.places.map(({ pose, place }) => ({
    joint: movedPoint(pose, geometry, link.axle),
    end: movingEnd(line, geometry, pose, place.steer),
  }));
  const need = (fraction: number) =>
    moved.reduce((largest, { joint, end }) => {
      const tie = along(link.body, joint, fraction);
      return Math.max(largest, size(minus(tie, line.body)), size(minus(end, tie)));
    }, 0);
  const fraction = smallestOfConvex(need);
  const bodyPart = reachOver(sampled, size(minus(along(link.body, link.axle, fraction), line.body)), (pose) =>
    size(minus(along(link.body, movedPoint(pose, geometry, link.axle), fraction), line.body)),
  );
  const axlePart = reachOver(
    sampled,
    size(minus(line.axle, along(link.body, link.axle, fraction))),
    (pose, { steer }) =>
      size(
        minus(
          movingEnd(line, geometry, pose, steer),
          along(link.body, movedPoint(pose, geometry, link.axle), fraction),
        ),
      ),
  );
  return (
    bodyPart &&
    axlePart && { fraction, fromBody: fraction * size(minus(link.axle, link.body)), bodyPart, axlePart }
  );
}

const along = (from: Vector, to: Vector, share: number): Vector => [
  from[0] + share * (to[0] - from[0]),
  from[1] + share * (to[1] - from[1]),
  from[2] + share * (to[2] - from[2]),
];

/** Where a convex function on 0…1 is smallest. */
function smallestOfConvex(value: (share: number) => number): number {
  let [low, high] = [0, 1];
  let [left, right] = [1 - GOLDEN, GOLDEN];
  let [atLeft, atRight] = [value(left), value(right)];
  while (high - low > FINE) {
    if (atLeft <= atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = value(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = value(right);
    }
  }
  return (low + high) / 2;
}
