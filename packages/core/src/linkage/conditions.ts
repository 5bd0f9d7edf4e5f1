import type { AxleGeometry, Link, LinkageKind } from './geometry.ts';
import {
  BUMP,
  COORDINATES,
  FREE,
  FROM_BODY,
  GIVE,
  LENGTH,
  MOST,
  ON_AXLE,
  ROD,
  ROLL,
  STATES,
  WIND,
  X,
  Y,
  YAW,
} from './layout.ts';
import { turnInto } from './turn.ts';

/**
 * What the links of one axle demand, as numbers, with the room to work in. Made once per geometry; its arrays are
 * written by every evaluation.
 */
export interface Conditions {
  readonly geometry: AxleGeometry;
  /** Conditions to be met: 4, or 5 where five rods share one unknown give. */
  readonly count: 4 | 5;
  readonly rods: Float64Array;
  readonly rodCount: number;
  /** How five rods share a locked-in give; its squares sum to 1. Empty otherwise. */
  readonly share: Float64Array;
  /** Radius arms: mean length, by which a turn of the clamps is counted as a length, and each arm's own direction. */
  readonly arms: { readonly lever: number; readonly rest: readonly [number, number] } | null;
  readonly turn: Float64Array;
  /** By how much each condition is missed [m]. */
  readonly errors: Float64Array;
  /** Row by row: how that changes with each coordinate. */
  readonly slopes: Float64Array;
  /** Turn of each radius arm in its clamp [rad]. */
  readonly clamps: Float64Array;
  readonly line: Float64Array;
}

export const PANHARD = 'panhard';

const LINK_COUNT: Readonly<Record<LinkageKind, number>> = {
  'three-link': 4,
  'four-link': 5,
  triangulated: 4,
  'radius-arms': 3,
  leaf: 0,
};

/**
 * The conditions of a geometry whose links are known to be of its kind.
 *
 * @throws when they are not: `geometryProblems` was not asked first
 *
 * Four rods fix an axle but for bump and roll: each keeps its length. Five rods are one too many: with equal bushes
 * the one give that they can lock in is shared in fixed proportions, those of ride height. Radius arms keep the
 * distance from clamp to body joint, and their clamps turn alike about the hub line: the mean turn is none. A leaf
 * pair is no linkage: its axle is guided straight up and turns about its own middle.
 */
export function conditionsOf(geometry: AxleGeometry): Conditions {
  const isArms = geometry.kind === 'radius-arms';
  // Arms first, left before right, so that the rows of the clamps are known.
  const links = isArms ? [...geometry.links].sort((a, b) => rank(a) - rank(b)) : geometry.links;
  const sorted: AxleGeometry = { ...geometry, links };
  const rods = new Float64Array(ROD * links.length);
  links.forEach(({ axle, body, longer = 0 }, i) => {
    for (let k = 0; k < 3; k += 1) {
      rods[i * ROD + ON_AXLE + k] = axle[k] - geometry.centre[k];
      rods[i * ROD + FROM_BODY + k] = geometry.centre[k] - body[k];
    }
    rods[i * ROD + LENGTH] = Math.hypot(axle[0] - body[0], axle[1] - body[1], axle[2] - body[2]) + longer;
  });
  if (links.length !== LINK_COUNT[geometry.kind])
    throw new Error(`a ${geometry.kind} axle with ${links.length} links was not checked by geometryProblems`);
  const count = links.length === MOST ? 5 : 4;
  const bare: Conditions = {
    geometry: sorted,
    count,
    rods,
    rodCount: links.length,
    share: new Float64Array(0),
    arms: isArms ? armsOf(rods) : null,
    turn: new Float64Array(9),
    errors: new Float64Array(count),
    slopes: new Float64Array(count * COORDINATES),
    clamps: new Float64Array(isArms ? 2 : 0),
    line: new Float64Array(LINE),
  };
  if (count === 4) return bare;
  evaluate(bare, new Float64Array(STATES));
  return { ...bare, share: shareOf(bare.slopes) };
}

const rank = ({ id, axle }: Link): number => (id === PANHARD ? Number.POSITIVE_INFINITY : -axle[1]);

const armsOf = (rods: Float64Array): NonNullable<Conditions['arms']> => ({
  lever: (rods[LENGTH] + rods[ROD + LENGTH]) / 2,
  rest: [restOf(rods, 0), restOf(rods, ROD)],
});

/** Direction of an arm from clamp to body joint in the side view of the axle, right hand about the hub line. */
const restOf = (rods: Float64Array, at: number): number =>
  Math.atan2(rods[at + FROM_BODY + 2] + rods[at + ON_AXLE + 2], -(rods[at + FROM_BODY] + rods[at + ON_AXLE]));

/** The one set of forces along five rods that cancel each other: signed minors of their four free columns. */
function shareOf(slopes: Float64Array): Float64Array {
  const share = new Float64Array(MOST);
  for (let left = 0; left < MOST; left += 1) {
    const rows = [0, 1, 2, 3, 4].filter((row) => row !== left);
    share[left] = (left % 2 === 0 ? 1 : -1) * minor(slopes, rows, [0, 1, 2, 3]);
  }
  const size = Math.hypot(...share);
  return size === 0 ? share : share.map((part) => part / size);
}

function minor(slopes: Float64Array, rows: readonly number[], columns: readonly number[]): number {
  if (rows.length === 1) return slopes[rows[0] * COORDINATES + columns[0]];
  const rest = rows.slice(1);
  return columns.reduce(
    (sum, column, k) =>
      sum +
      (k % 2 === 0 ? 1 : -1) *
        slopes[rows[0] * COORDINATES + column] *
        minor(
          slopes,
          rest,
          columns.filter((other) => other !== column),
        ),
    0,
  );
}

/** The scratch line: a unit force, the arm from the axle's centre to it, and the roll axis seen from above. */
const FORCE = 0;
const ARM = 3;
const COSINE = 6;
const SINE = 7;
const LINE = 8;

/**
 * Errors of all conditions at the coordinates `q`, and their exact slopes.
 *
 *     rod:   e = |d| − L,           d = centre + shift + R·a − b
 *     ∂e/∂shift = d/|d|,  ∂e/∂turn about an axis w = w·(R·a × d/|d|)
 *
 * A clamp turns by the change of direction of its arm as the axle sees it, w = −Rᵀ·(centre + shift − b) − a, in the
 * axle's own x–z plane.
 */
export function evaluate(conditions: Conditions, q: Float64Array): void {
  const { rods, rodCount, share, turn, errors, slopes, line } = conditions;
  turnInto(q, turn);
  slopes.fill(0);
  if (rodCount === 0) {
    for (let row = 0; row < FREE; row += 1) {
      errors[row] = q[row];
      slopes[row * COORDINATES + row] = 1;
    }
    return;
  }
  line[COSINE] = Math.cos(q[YAW]);
  line[SINE] = Math.sin(q[YAW]);
  for (let i = 0; i < rodCount; i += 1) {
    const at = i * ROD;
    const ax = rods[at];
    const ay = rods[at + 1];
    const az = rods[at + 2];
    const px = turn[0] * ax + turn[1] * ay + turn[2] * az;
    const py = turn[3] * ax + turn[4] * ay + turn[5] * az;
    const pz = turn[6] * ax + turn[7] * ay + turn[8] * az;
    const dx = rods[at + FROM_BODY] + q[X] + px;
    const dy = rods[at + FROM_BODY + 1] + q[Y] + py;
    const dz = rods[at + FROM_BODY + 2] + q[BUMP] + pz;
    const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
    errors[i] = length - rods[at + LENGTH] - (share.length === 0 ? 0 : share[i] * q[GIVE]);
    line[FORCE] = dx / length;
    line[FORCE + 1] = dy / length;
    line[FORCE + 2] = dz / length;
    line[ARM] = px;
    line[ARM + 1] = py;
    line[ARM + 2] = pz;
    addRow(conditions, i, 1);
  }
  if (conditions.arms !== null) clampRow(conditions, q, conditions.arms);
}

/** The last condition of radius arms: their clamps turn alike and opposite, so that the mean turn is none. */
function clampRow(
  conditions: Conditions,
  q: Float64Array,
  { lever, rest }: NonNullable<Conditions['arms']>,
): void {
  const { rods, turn, errors, clamps, line } = conditions;
  for (let i = 0; i < 2; i += 1) {
    const at = i * ROD;
    const gx = rods[at + FROM_BODY] + q[X];
    const gy = rods[at + FROM_BODY + 1] + q[Y];
    const gz = rods[at + FROM_BODY + 2] + q[BUMP];
    const wx = -(turn[0] * gx + turn[3] * gy + turn[6] * gz) - rods[at];
    const wz = -(turn[2] * gx + turn[5] * gy + turn[8] * gz) - rods[at + 2];
    const size = wx * wx + wz * wz;
    const angle = Math.atan2(-wz, wx) - rest[i];
    clamps[i] = angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
    // The slope in the body's frame. Turned as a whole about its body joint, an arm looks the same to the axle.
    const ux = wz / size;
    const uz = -wx / size;
    line[FORCE] = -(turn[0] * ux + turn[2] * uz);
    line[FORCE + 1] = -(turn[3] * ux + turn[5] * uz);
    line[FORCE + 2] = -(turn[6] * ux + turn[8] * uz);
    line[ARM] = -gx;
    line[ARM + 1] = -gy;
    line[ARM + 2] = -gz;
    addRow(conditions, 3, lever / 2);
  }
  errors[3] = (lever * (clamps[0] + clamps[1])) / 2;
}

/** Adds to the slopes of a condition what the scratch line works against, times a factor. */
function addRow({ slopes, turn, line }: Conditions, row: number, factor: number): void {
  const at = row * COORDINATES;
  const tx = line[ARM + 1] * line[FORCE + 2] - line[ARM + 2] * line[FORCE + 1];
  const ty = line[ARM + 2] * line[FORCE] - line[ARM] * line[FORCE + 2];
  const tz = line[ARM] * line[FORCE + 1] - line[ARM + 1] * line[FORCE];
  slopes[at + X] += factor * line[FORCE];
  slopes[at + Y] += factor * line[FORCE + 1];
  slopes[at + YAW] += factor * tz;
  slopes[at + WIND] += factor * (turn[1] * tx + turn[4] * ty + turn[7] * tz);
  slopes[at + BUMP] += factor * line[FORCE + 2];
  slopes[at + ROLL] += factor * (line[COSINE] * tx + line[SINE] * ty);
}
