import { type End, SIDES, type Side } from '../finding/place.ts';
import { heightOf, type TapedPair, type TapedPoint, tapedValue } from '../rig/linkage.ts';
import type { Reading, Sided, ValueOf } from '../rig/reading.ts';
import type { Rig } from '../rig/rig.ts';
import type { Setup } from '../rig/setup.ts';
import type { PointPatch } from '../rig/setup-patch.ts';
import type { AxleGeometry, Link, Strut, StrutId, Vector } from './geometry.ts';

/** How far behind the front hub line the axle of an end stands [m]. */
export const behindFront = (rig: Rig, end: End, read: ValueOf): number =>
  end === 'front' ? 0 : read(rig.wheelbase);

/** A taped point in the frame of the rig [m]: ahead of the front hub line, left of the centreline, above the floor. */
export const placeOf = (point: TapedPoint, behind: number, read: ValueOf): Vector => [
  tapedValue(point.ahead, read) - behind,
  tapedValue(point.left, read),
  heightOf(point, read),
];

/**
 * The geometry of one end as its owner measured it, at the ride height of the day, with what a setup moves of it.
 *
 * A mount that is moved takes its joint with it and the link keeps the length that it was measured with: the link then
 * says by how much it is `longer` than its two points are apart, and the axle has to give way. An adjuster adds to it.
 *
 * @param read – readings as measured, or as they are in a trial
 * @returns null where no links were measured
 * @validity axle tube straight, hub line through its centre, tyres alike: the centre stands at the loaded radius
 */
export function geometryAsMeasured(setup: Setup, end: End, read: ValueOf): AxleGeometry | null {
  const { base, patch } = setup.ends[end];
  const { linkage, mounts } = base.points;
  if (!linkage) return null;
  const behind = behindFront(setup.rig, end, read);
  const radius = read(base.tyre.radius);
  const at = (point: TapedPoint) => placeOf(point, behind, read);
  const links = linkage.links.map(({ id, name, side, axle, frame }): Link => {
    const change = patch.links?.[name];
    const was = { axle: at(axle), body: at(frame) };
    if (!change) return { id, ...was };
    const now = {
      axle: moved(was.axle, change.axle, side, read),
      body: moved(was.body, change.frame, side, read),
    };
    const length = apart(was.axle, was.body) + valueOr(change.longer, read);
    return { id, ...now, longer: length - apart(now.axle, now.body) };
  });
  // Coil seat and stop are let down together; all other mounts stay where they are.
  const drop = valueOr(patch.seatAndStopDrop, read);
  const struts: Partial<Record<StrutId, Strut>> = {};
  const put = (part: 'spring' | 'shock' | 'stop', pairs: Sided<TapedPair> | null, down: number) => {
    for (const side of SIDES) {
      if (!pairs) continue;
      const [x, y, z] = at(pairs[side].frame);
      struts[`${part}-${side}`] = { axle: at(pairs[side].axle), body: [x, y, z - down] };
    }
  };
  put('spring', mounts.spring, drop);
  put('shock', mounts.shock, 0);
  put('stop', mounts.stop?.points ?? null, drop);
  return {
    kind: linkage.kind,
    centre: [-behind, 0, radius],
    links,
    halfTrack: read(base.track) / 2,
    tyreRadius: radius,
    struts,
  };
}

/** Where a setup puts a point: out is away from the centreline, of a point that stands alone to the left. */
export function moved(
  [x, y, z]: Vector,
  patch: PointPatch | undefined,
  side: Side | null,
  read: ValueOf,
): Vector {
  const out = valueOr(patch?.out, read);
  return [x + valueOr(patch?.ahead, read), y + (side === 'right' ? -out : out), z + valueOr(patch?.up, read)];
}

const valueOr = (reading: Reading | undefined, read: ValueOf): number => (reading ? read(reading) : 0);

const apart = (a: Vector, b: Vector): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
