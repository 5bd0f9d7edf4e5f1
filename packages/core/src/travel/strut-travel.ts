import type { Side } from '../finding/place.ts';
import { type AxleGeometry, movedPoint, type Strut, type StrutId } from '../linkage/geometry.ts';
import { poseOf } from '../linkage/pose.ts';
import type { AxleStand } from './axle-balance.ts';

/** Steps and reach of the table: finer than a tenth of a millimetre for shocks of half a metre. */
const HEAVE = { step: 0.02, count: 31, from: -0.3 } as const;
const ROLL = { step: 0.03, count: 43, from: -0.63 } as const;

/** By how much a strut is shorter than at ride height [m]; null where its links do not go. */
export type Shortening = (part: 'spring' | 'shock' | 'stop', side: Side, stand: AxleStand) => number | null;

/**
 * How real mounts on real links move, over heave and roll: a table worked out once, read in between.
 *
 * @param geometry – at ride height; roll here is left side up positive, as in `poseOf`
 */
export function shorteningOf(geometry: AxleGeometry): Shortening {
  const rows = new Map<StrutId, Float64Array>();
  const struts = Object.entries(geometry.struts) as [StrutId, Strut][];
  for (const [id] of struts) rows.set(id, new Float64Array(HEAVE.count * ROLL.count).fill(Number.NaN));
  for (let r = 0; r < ROLL.count; r += 1)
    for (let h = 0; h < HEAVE.count; h += 1) {
      const result = poseOf(geometry, HEAVE.from + h * HEAVE.step, ROLL.from + r * ROLL.step);
      if (result.status === 'unreachable') continue;
      for (const [id, { axle, body }] of struts) {
        const moved = movedPoint(result.pose, geometry, axle);
        const table = rows.get(id);
        if (table) table[r * HEAVE.count + h] = apart(axle, body) - apart(moved, body);
      }
    }
  return (part, side, { heave, roll }) => {
    const table = rows.get(`${part}-${side}`);
    if (!table) return null;
    const x = (heave - HEAVE.from) / HEAVE.step;
    const y = (roll - ROLL.from) / ROLL.step;
    const h = Math.floor(x);
    const r = Math.floor(y);
    if (h < 0 || r < 0 || h + 1 >= HEAVE.count || r + 1 >= ROLL.count) return null;
    const at = (row: number, column: number) => table[row * HEAVE.count + column];
    const low = at(r, h) * (1 - x + h) + at(r, h + 1) * (x - h);
    const high = at(r + 1, h) * (1 - x + h) + at(r + 1, h + 1) * (x - h);
    const value = low * (1 - y + r) + high * (y - r);
    return Number.isNaN(value) ? null : value;
  };
}

/**
 * How far the tip of a stop is from the middle of its pad along the face of the pad, which lies level at ride height [m].
 *
 * @returns null where the links do not go or the stop was not measured
 */
export function padOffset(
  geometry: AxleGeometry,
  side: Side,
  carrier: 'axle' | 'frame',
  { heave, roll }: AxleStand,
): number | null {
  const stop = geometry.struts[`stop-${side}`];
  const result = poseOf(geometry, heave, roll);
  if (!stop || result.status === 'unreachable') return null;
  const moved = movedPoint(result.pose, geometry, stop.axle);
  const apartNow = [0, 1, 2].map((k) => (moved[k] ?? 0) - (stop.body[k] ?? 0));
  // A pad on the axle turns with it: its upright is the third column of the rotation.
  const upright =
    carrier === 'frame' ? [2, 5, 8].map((k) => result.pose.rotation[k] ?? 0) : ([0, 0, 1] as const);
  const along = apartNow.reduce((sum, part, k) => sum + part * (upright[k] ?? 0), 0);
  return Math.sqrt(Math.max(0, apartNow.reduce((sum, part) => sum + part * part, 0) - along * along));
}

const apart = (a: readonly number[], b: readonly number[]): number =>
  Math.hypot((a[0] ?? 0) - (b[0] ?? 0), (a[1] ?? 0) - (b[1] ?? 0), (a[2] ?? 0) - (b[2] ?? 0));
