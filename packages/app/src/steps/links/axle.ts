import {
  type AxleGeometry,
  type AxlePose,
  type CheckResult,
  type CurveOptions,
  cornerAt,
  type DragLink,
  ENDS,
  type End,
  type Problem,
  poseOf,
  type Setup,
  type Shaft,
  SIDES,
  type Unreachable,
} from '@lastinch/core';
import { dragLinkOf, linksOf, shaftOf } from '@lastinch/core/links';

/** Links of one axle in one setup, as they stand at its ride height. */
export interface LinkedAxle {
  readonly geometry: AxleGeometry;
  readonly shaft: Shaft | null;
  readonly dragLink: DragLink | null;
  readonly anti: CurveOptions['anti'];
}

export type AxleAnswer =
  | { readonly status: 'linked'; readonly axle: LinkedAxle }
  | { readonly status: 'not-measured' }
  | { readonly status: 'broken'; readonly problems: readonly Problem[] };

/** The links of an end in a setup; how far the setup lifts the body is the travel column's own answer. */
export function axleOf(setup: Setup, check: CheckResult, end: End): AxleAnswer {
  const lift = Object.fromEntries(
    ENDS.map((each) => [each, check.travel.corners[cornerAt(each, 'left')].lift.value]),
  ) as Record<End, number>;
  const found = linksOf(setup, { lift });
  if (!found.ok) return { status: 'broken', problems: found.problems };
  const links = found.value;
  const at = links.ends[end];
  if (at === null) return { status: 'not-measured' };
  return {
    status: 'linked',
    axle: {
      geometry: at.geometry,
      shaft: shaftOf(setup, end, links),
      dragLink: dragLinkOf(setup, end, links),
      anti: {
        wheelbase: setup.rig.wheelbase.value,
        cgHeight: check.stance.cg.height.value,
        driveShare: 1,
        brakeShare: 1,
      },
    },
  };
}

/** How far an axle is followed from ride height, both ≥ 0 [m]. */
export interface Reach {
  readonly bump: number;
  readonly droop: number;
}

const USUAL_DROOP = 0.1;

/** Up to the stop fully crushed, and down to the first limit of droop, whichever setup goes further. */
export function reachOf(checks: readonly CheckResult[], end: End): Reach {
  const columns = checks.flatMap(({ travel }) => SIDES.map((side) => travel.corners[cornerAt(end, side)]));
  const most = (of: readonly number[], least: number): number =>
    Math.ceil(1000 * Math.max(least, ...of.filter(Number.isFinite))) / 1000;
  return {
    bump: most(
      columns.map(({ freeBump, crush }) => freeBump.value + crush.value),
      0.05,
    ),
    droop: most(
      columns.map(({ droop }) => droop[0]?.travel.value ?? USUAL_DROOP),
      0.05,
    ),
  };
}

export interface AxleStand {
  /** Travel of the axle's middle, bump positive [m]; roll of the axle, left side up positive [rad]. */
  readonly bump: number;
  readonly roll: number;
}

export const AT_RIDE: AxleStand = { bump: 0, roll: 0 };

export type PosedAxle =
  | { readonly status: 'reached'; readonly pose: AxlePose }
  | { readonly status: 'unreachable'; readonly unreachable: Unreachable };

export const posedAxle = ({ geometry }: LinkedAxle, { bump, roll }: AxleStand): PosedAxle =>
  poseOf(geometry, bump, roll);
