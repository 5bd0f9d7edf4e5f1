import type { AxleGeometry, AxlePose } from './geometry.ts';
import { type Shaft, type ShaftState, shaftIn } from './shaft.ts';
import { bindsAt } from './shaft-limits.ts';
import { type Extreme, largestOver, type SampledRange, sampleRange, smallestOver } from './travel-range.ts';

/** What a driveshaft does over all that its axle can do. */
export interface ShaftTravel {
  readonly atRide: ShaftState;
  readonly shortest: Extreme;
  readonly longest: Extreme;
  /** Longest − shortest [m]: what the slip has to give. */
  readonly swing: number;
  /** From ride height, both ≥ 0 [m]. */
  readonly goesIn: number;
  readonly comesOut: number;
  /** Largest operating angle of each joint [rad]. */
  readonly caseAngle: Extreme;
  readonly pinionAngle: Extreme;
  readonly slip: {
    /** Usable slip − swing [m]. */
    readonly spare: number;
    /** Left at the shortest, and at the longest before the engagement suffers [m]; null while its place at ride is unknown. */
    readonly leftIn: number | null;
    readonly leftOut: number | null;
  } | null;
  /** Sampled places that the links cannot reach; nothing here is known of them. */
  readonly missed: number;
}

const RIDE: AxlePose = { shift: [0, 0, 0], rotation: [1, 0, 0, 0, 1, 0, 0, 0, 1], residual: 0 };

/**
 * Length, plunge and angles of a driveshaft over the travel of its axle.
 *
 * @returns null when no sampled place can be reached
 * @validity as `largestOver`
 */
export function shaftOver(shaft: Shaft, geometry: AxleGeometry, sampled: SampledRange): ShaftTravel | null {
  const atRide = shaftIn(shaft, geometry, RIDE);
  const over = (of: (state: ShaftState) => number) => (pose: AxlePose) => of(shaftIn(shaft, geometry, pose));
  const longest = largestOver(
    sampled,
    over(({ length }) => length),
  );
  const shortest = smallestOver(
    sampled,
    over(({ length }) => length),
  );
  const caseAngle = largestOver(
    sampled,
    over(({ caseAngle: angle }) => angle),
  );
  const pinionAngle = largestOver(
    sampled,
    over(({ pinionAngle: angle }) => angle),
  );
  if (!(longest && shortest && caseAngle && pinionAngle)) return null;
  const swing = longest.value - shortest.value;
  const goesIn = Math.max(0, atRide.length - shortest.value);
  const comesOut = Math.max(0, longest.value - atRide.length);
  const { slip } = shaft;
  return {
    atRide,
    shortest,
    longest,
    swing,
    goesIn,
    comesOut,
    caseAngle,
    pinionAngle,
    slip: slip && {
      spare: slip.usable - swing,
      leftIn: slip.inAtRide === null ? null : slip.inAtRide - goesIn,
      leftOut: slip.inAtRide === null ? null : slip.usable - slip.inAtRide - comesOut,
    },
    missed: sampled.missed,
  };
}

/**
 * The most droop of the wheels at which the slip can still follow, and no joint binds.
 *
 * @param allowedSwing – usable slip less its uncertainty [m]
 * @returns [m], ≥ 0, to a thousandth of the range; null when even no droop at all leaves too much
 * @validity bump as in the range; as `largestOver`
 */
export function droopThatFits(
  shaft: Shaft,
  geometry: AxleGeometry,
  { range, poses }: SampledRange,
  allowedSwing: number,
): number | null {
  const fits = (droop: number): boolean => {
    const travel = shaftOver(
      shaft,
      geometry,
      sampleRange(geometry, { ...range, droop, lock: 0 }, poses, COARSE),
    );
    return (
      travel !== null &&
      travel.swing <= allowedSwing &&
      travel.caseAngle.value <= bindsAt(shaft.caseJoint) &&
      travel.pinionAngle.value <= bindsAt(shaft.pinionJoint)
    );
  };
  if (fits(range.droop)) return range.droop;
  if (!fits(0)) return null;
  let [low, high] = [0, range.droop];
  while (high - low > range.droop / 1024) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** Lengths and angles vary so smoothly that five places across each wheel's travel find the corner to refine from. */
const COARSE = { across: 5 };
