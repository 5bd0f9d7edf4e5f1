/** x forward, y left, z up [m]; see `AxleGeometry` for the origin. */
export type Vector = readonly [number, number, number];

/** A rod with a joint at each end. `id` as in the rig file: `lower-left`, `upper-right`, `upper`, `arm-left`, `panhard`. */
export interface Link {
  readonly id: string;
  /** Joint that moves with the axle. */
  readonly axle: Vector;
  /** Joint that stays on the body. */
  readonly body: Vector;
  /** By how much it is longer than its joints stand apart here [m]: adjusted, or with a mount that was moved. */
  readonly longer?: number;
}

/** Spring, shock or stop between its real points. Of a stop: the tip and the centre of its pad, whichever sits where. */
export interface Strut {
  readonly axle: Vector;
  readonly body: Vector;
}

export const LINKAGE_KINDS = ['three-link', 'four-link', 'triangulated', 'radius-arms', 'leaf'] as const;
export type LinkageKind = (typeof LINKAGE_KINDS)[number];

export const STRUT_IDS = [
  'spring-left',
  'spring-right',
  'shock-left',
  'shock-right',
  'stop-left',
  'stop-right',
] as const;
export type StrutId = (typeof STRUT_IDS)[number];

/**
 * Where everything of one axle is, at the ride height of the setup as measured.
 *
 * Frame: x forward from the front hub line (the rear axle stands at x = −wheelbase), y left from the centre line,
 * z up from level ground.
 */
export interface AxleGeometry {
  readonly kind: LinkageKind;
  /** Hub-line centre of the axle. */
  readonly centre: Vector;
  readonly links: readonly Link[];
  /** Half the track [m]. */
  readonly halfTrack: number;
  /** Loaded radius of the tyres [m]. */
  readonly tyreRadius: number;
  readonly struts: Readonly<Partial<Record<StrutId, Strut>>>;
}

/**
 * Rigid motion of the axle relative to the body, away from ride height.
 *
 *     moved = centre + shift + rotation·(point − centre)
 */
export interface AxlePose {
  /** Of the hub-line centre, in the body's frame [m]; its third number is the bump. */
  readonly shift: Vector;
  /** 3×3 row-major, from axle to body frame. */
  readonly rotation: readonly number[];
  /** Largest error with which the pose meets its conditions [m]. */
  readonly residual: number;
}

/** What a pose asks of a joint that the linkage could not take with rigid rods. Zero where the rods fix the axle exactly. */
export interface BushGive {
  readonly link: string;
  /** Length that the bushes of a rod must give: moved minus measured [m]; 0 for a radius arm. */
  readonly length: number;
  /** Turn about the hub line that the clamp of a radius arm must give [rad]; 0 for a rod. */
  readonly turn: number;
}

/** Why a pose cannot be had. */
export interface Unreachable {
  /** `short`: one rod stands square to all that it should let through; `over-centre`: several stand in line. */
  readonly why: 'short' | 'over-centre';
  /** Ids of the links that stop it, the most to blame first. */
  readonly links: readonly string[];
  /** Bump [m] and roll [rad] up to which it went. */
  readonly bump: number;
  readonly roll: number;
  /** Length that the first of these links would have to give at the pose asked for [m], absolute. */
  readonly gap: number;
}

export type PoseResult =
  | { readonly status: 'reached'; readonly pose: AxlePose; readonly gives: readonly BushGive[] }
  | { readonly status: 'unreachable'; readonly unreachable: Unreachable };

/**
 * Where a point of the axle goes in a pose.
 *
 * @param point – of the axle, as measured at ride height [m]
 * @returns the same point after the move, in the body's frame [m]
 */
export function movedPoint(pose: AxlePose, geometry: AxleGeometry, point: Vector): Vector {
  const from = geometry.centre;
  const arm = [point[0] - from[0], point[1] - from[1], point[2] - from[2]] as const;
  const at = (axis: 0 | 1 | 2) => {
    const row = 3 * axis;
    const turned = [0, 1, 2].reduce(
      (sum, k) => sum + (pose.rotation[row + k] ?? 0) * (arm[k as 0 | 1 | 2] ?? 0),
      0,
    );
    return from[axis] + pose.shift[axis] + turned;
  };
  return [at(0), at(1), at(2)];
}
