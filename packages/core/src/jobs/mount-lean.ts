import type { End } from '../finding/place.ts';
import type { MountName } from '../rig/bracket.ts';
import { heightOf, type TapedPair, tapedValue } from '../rig/linkage.ts';
import type { ValueOf } from '../rig/reading.ts';
import type { Setup } from '../rig/setup.ts';

/**
 * Angle between what pushes on a mount and the upright [rad]: between its two points where both were measured; of a shock
 * else the angle whose cosine is its travel ratio; null where nothing is known.
 *
 * @validity at ride height; links that swing the axle turn it by some degrees more
 */
export function leanOf(setup: Setup, end: End, mount: MountName, read: ValueOf): number | null {
  const { points, shock } = setup.ends[end].base;
  const { mounts } = points;
  const pair = mount === 'stop' ? mounts.stop?.points.left : mounts[mount]?.left;
  if (pair) return between(pair, read);
  if (mount !== 'shock') return null;
  const ratio = read(shock.ratio);
  return ratio < 1 ? Math.acos(ratio) : 0;
}

function between({ axle, frame }: TapedPair, read: ValueOf): number {
  const aside = Math.hypot(
    tapedValue(axle.ahead, read) - tapedValue(frame.ahead, read),
    tapedValue(axle.left, read) - tapedValue(frame.left, read),
  );
  return Math.atan2(aside, Math.abs(heightOf(frame, read) - heightOf(axle, read)));
}
