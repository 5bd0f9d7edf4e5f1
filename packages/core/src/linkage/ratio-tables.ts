import { hermiteValue } from '../numerics/hermite.ts';
import { curvesOf } from './curves.ts';
import type { StrutCurves } from './curves-result.ts';
import type { AxleGeometry, StrutId } from './geometry.ts';

/** How one strut closes with the axle, for an engine that wants one number in and one out. */
export interface StrutTable {
  /** Sideways place at which axle travel counts for it [m], left positive: its slope by roll ÷ that by bump. */
  readonly station: number;
  /** Axle travel at that station [m], bump positive, rising evenly; with ride height (0) among them. */
  readonly travel: readonly number[];
  /** Compression of the strut from ride height [m], and its slope by the travel [1], at each. */
  readonly compression: readonly number[];
  readonly ratio: readonly number[];
  /** The same over roll alone [rad], bump held at ride height: compression [m] and slope [m/rad]. */
  readonly roll: readonly number[];
  readonly compressionInRoll: readonly number[];
  readonly slopeInRoll: readonly number[];
  /** Farthest that table of travel and links differ over the whole range of bump and roll [m]. */
  readonly mostOff: number;
}

export interface RatioRange {
  /** Farthest wanted, from ride height, both ≥ 0 [m]; roll to either side [rad]. */
  readonly bump: number;
  readonly droop: number;
  readonly roll: number;
}

/** Steps to each side of ride height. */
const STEPS = 20;

/**
 * Compression of spring, shock and stop at their real points over axle travel, as tables with exact slopes.
 *
 *     compression(bump, roll) ≈ table(bump + station·roll)
 *
 * One table of one number keeps the energy books of whoever uses it exact: force·ratio on bump and
 * force·ratio·station on roll come from one potential. What that leaves out of the true motion in roll is `mostOff`.
 *
 * @returns a table for each strut there is; shorter than asked where the links reach no farther
 * @validity as `poseOf`; between its entries a cubic by value and slope
 * @source kinematics of the linkage, virtual work
 */
export function ratioTables(
  geometry: AxleGeometry,
  { bump, droop, roll }: RatioRange,
): Readonly<Partial<Record<StrutId, StrutTable>>> {
  const bumps = [...even(droop, -1).reverse(), 0, ...even(bump, 1)];
  const rolls = [...even(roll, -1).reverse(), 0, ...even(roll, 1)];
  const curves = curvesOf(geometry, { bumps, rolls, end: 'rear' });
  const middleRow = bumps.indexOf(0);
  const middleColumn = rolls.indexOf(0);
  const width = rolls.length;
  const rows = [...bumps.keys()].filter((i) => curves.reached[i * width + middleColumn] === 1);
  const columns = [...rolls.keys()].filter((j) => curves.reached[middleRow * width + j] === 1);
  const tableOf = ({ length, byBump, byRoll }: StrutCurves): StrutTable => {
    const ride = middleRow * width + middleColumn;
    const closed = (at: number) => length[ride] - length[at];
    const inHeave = rows.map((i) => i * width + middleColumn);
    const inRoll = columns.map((j) => middleRow * width + j);
    const travel = rows.map((i) => bumps[i]);
    const compression = inHeave.map(closed);
    const ratio = inHeave.map((at) => byBump[at]);
    const station = byRoll[ride] / byBump[ride];
    let mostOff = 0;
    for (const [i, up] of bumps.entries())
      for (const [j, angle] of rolls.entries()) {
        const said = valueAt(travel, compression, ratio, up + station * angle);
        const at = i * width + j;
        if (curves.reached[at] === 1 && said !== null)
          mostOff = Math.max(mostOff, Math.abs(said - closed(at)));
      }
    return {
      station,
      travel,
      compression,
      ratio,
      roll: columns.map((j) => rolls[j]),
      compressionInRoll: inRoll.map(closed),
      slopeInRoll: inRoll.map((at) => byRoll[at]),
      mostOff,
    };
  };
  return Object.fromEntries(Object.entries(curves.struts).map(([id, strut]) => [id, tableOf(strut)]));
}

/** Away from ride height, without it; none for no range. */
const even = (far: number, sign: 1 | -1): number[] =>
  far > 0 ? Array.from({ length: STEPS }, (_, k) => (sign * far * (k + 1)) / STEPS) : [];

/** Cubic by value and slope; null outside the table. */
function valueAt(
  xs: readonly number[],
  values: readonly number[],
  slopes: readonly number[],
  x: number,
): number | null {
  if (x < xs[0] || x > xs[xs.length - 1]) return null;
  let k = 0;
  while (k < xs.length - 2 && xs[k + 1] < x) k += 1;
  const width = xs[k + 1] - xs[k];
  return hermiteValue(values[k], slopes[k], values[k + 1], slopes[k + 1], width, (x - xs[k]) / width);
}
