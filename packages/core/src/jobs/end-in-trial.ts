import type { End, Side } from '../finding/place.ts';
import type { EndLinks, RigLinks } from '../linkage/from-setup.ts';
import type { AxlePose, Vector } from '../linkage/geometry.ts';
import { movedPoint } from '../linkage/geometry.ts';
import { type HoseLine, hosesOf } from '../linkage/lines-from-setup.ts';
import type { MovingLine, Reach } from '../linkage/reach.ts';
import { type Shaft, shaftIn } from '../linkage/shaft.ts';
import { shaftOf } from '../linkage/shaft-from-setup.ts';
import type { ShaftTravel } from '../linkage/shaft-travel.ts';
import {
  type Extreme,
  knucklePoint,
  posesOn,
  type TravelPlace,
  type TravelRange,
} from '../linkage/travel-range.ts';
import { minus, size } from '../linkage/vector.ts';
import type { ValueOf } from '../rig/reading.ts';
import type { Setup } from '../rig/setup.ts';

/** Where the nominal rig of a setup is at its furthest: looked up anew in each trial. */
export interface EndExtremes {
  readonly range: TravelRange;
  readonly shaft: ShaftTravel | null;
  /** By side, `middle` for one in the middle. */
  readonly reaches: ReadonlyMap<Side | 'middle', Reach>;
}

/** Shaft and hoses of an end in one trial. */
export interface EndInTrial {
  readonly shaft: { readonly shaft: Shaft; readonly travel: ShaftTravel | null } | null;
  readonly hoses: readonly { readonly hose: HoseLine; readonly reach: Reach | null }[];
}

const RIDE: AxlePose = { shift: [0, 0, 0], rotation: [1, 0, 0, 0, 1, 0, 0, 0, 1], residual: 0 };

/**
 * Shaft and hoses of a trial at the places where those of the nominal rig are at their furthest, the range stretched
 * as the trial has it. Where a largest value lies at an end of the range its place does not move with the readings, and
 * where it lies within, a shift of its place changes it by the square of that shift only.
 */
export function endInTrial(
  setup: Setup,
  end: End,
  { links, at, read }: { readonly links: RigLinks; readonly at: EndLinks; readonly read: ValueOf },
  nominal: EndExtremes,
  range: TravelRange,
): EndInTrial {
  const { geometry } = at;
  const poses = posesOn(geometry);
  const stretched = (travel: number) =>
    travel >= 0 ? (travel * range.bump) / nominal.range.bump : (travel * range.droop) / nominal.range.droop;
  const there = ({ left, right, steer }: TravelPlace) => {
    const place = { left: stretched(left), right: stretched(right), steer };
    const roll = Math.asin(Math.max(-1, Math.min(1, (place.left - place.right) / (2 * geometry.halfTrack))));
    return { place, pose: poses((place.left + place.right) / 2, roll) };
  };
  const again = (extreme: Extreme, value: (pose: AxlePose, steer: number) => number): Extreme => {
    const { place, pose } = there(extreme.place);
    return { place, value: pose ? value(pose, place.steer) : Number.NaN };
  };
  const shaft = shaftOf(setup, end, links, read);
  return {
    shaft: shaft && { shaft, travel: nominal.shaft && travelOf(shaft, nominal.shaft) },
    hoses: hosesOf(setup, end, links, read).map((hose) => {
      const known = nominal.reaches.get(hose.side ?? 'middle');
      return { hose, reach: known ? reachOfTrial(hose.line, known) : null };
    }),
  };

  function travelOf(of: Shaft, known: ShaftTravel): ShaftTravel {
    const state = (pose: AxlePose) => shaftIn(of, geometry, pose);
    const atRide = state(RIDE);
    const shortest = again(known.shortest, (pose) => state(pose).length);
    const longest = again(known.longest, (pose) => state(pose).length);
    const swing = longest.value - shortest.value;
    const goesIn = atRide.length - shortest.value;
    const comesOut = longest.value - atRide.length;
    const { slip } = of;
    return {
      atRide,
      shortest,
      longest,
      swing,
      goesIn,
      comesOut,
      caseAngle: again(known.caseAngle, (pose) => state(pose).caseAngle),
      pinionAngle: again(known.pinionAngle, (pose) => state(pose).pinionAngle),
      slip: slip && {
        spare: slip.usable - swing,
        leftIn: slip.inAtRide === null ? null : slip.inAtRide - goesIn,
        leftOut: slip.inAtRide === null ? null : slip.usable - slip.inAtRide - comesOut,
      },
      missed: known.missed,
    };
  }

  function reachOfTrial(line: MovingLine, known: Reach): Reach {
    const distance = (pose: AxlePose, steer: number) => {
      const moving: Vector = line.kingpin
        ? knucklePoint(pose, geometry, line.axle, line.kingpin, steer)
        : movedPoint(pose, geometry, line.axle);
      return size(minus(moving, line.body));
    };
    return {
      atRide: distance(RIDE, 0),
      longest: again(known.longest, distance),
      shortest: again(known.shortest, distance),
      missed: known.missed,
    };
  }
}
