import { type End, SIDES, type Side } from '../finding/place.ts';
import { type SteeringPoints, tapedValue } from '../rig/linkage.ts';
import { nominal, type ValueOf } from '../rig/reading.ts';
import type { Setup } from '../rig/setup.ts';
import type { DragLink } from './curves-result.ts';
import type { RigLinks } from './from-setup.ts';
import type { Vector } from './geometry.ts';
import { behindFront, placeOf } from './measured-geometry.ts';
import type { MovingLine } from './reach.ts';
import { directed, placed, type RigidMotion } from './rigid-motion.ts';

/** A hose at the ride height of a setup. */
export interface HoseLine {
  /** Null for one in the middle. */
  readonly side: Side | null;
  readonly line: MovingLine;
  /** [m] */
  readonly freeLength: number;
  /** Outer diameter [m]; null when not measured. */
  readonly diameter: number | null;
  /** Id of the link that it may be tied along, `lower-left`; null when none. */
  readonly tieTo: string | null;
}

/**
 * The hoses of one end at the ride height of a setup, in the frame of its links.
 *
 * @param links – `linksOf` the same setup with the same readings
 * @returns empty where hose ends or links were not measured
 * @validity an outer end that steers turns about its kingpin, which stands at hub height at half the kingpin spread
 */
export function hosesOf(
  setup: Setup,
  end: End,
  links: RigLinks,
  read: ValueOf = nominal,
): readonly HoseLine[] {
  const { base } = setup.ends[end];
  const { hose, steering } = base.points;
  const at = links.ends[end];
  if (!hose || !at) return [];
  const behind = behindFront(setup.rig, end, read);
  const alone = hose.points.left === hose.points.right;
  return SIDES.filter((side) => !alone || side === 'left').map((side): HoseLine => {
    const { axle, frame } = hose.points[side];
    const names = at.geometry.links.map(({ id }) => id);
    const own = hose.tieTo && [`${hose.tieTo}-${side}`, hose.tieTo].find((id) => names.includes(id));
    const foot: Vector = [-behind, 0, read(base.tyre.radius)];
    return {
      side: alone ? null : side,
      line: {
        body: placed(links.body, placeOf(frame, behind, read)),
        axle: placed(at.axle, placeOf(axle, behind, read)),
        kingpin: hose.steers && steering && !alone ? kingpinOf(steering, side, foot, at.axle, read) : null,
      },
      freeLength: read(hose.freeLength),
      diameter: hose.diameter ? read(hose.diameter) : null,
      tieTo: own ?? null,
    };
  });
}

/** Kingpin of one side: top back by caster, in by inclination. */
function kingpinOf(
  { kingpinSpread, caster, inclination }: SteeringPoints,
  side: Side,
  [x, , z]: Vector,
  axle: RigidMotion,
  read: ValueOf,
): MovingLine['kingpin'] {
  if (!kingpinSpread) return null;
  const out = side === 'left' ? 1 : -1;
  const lean = (angle: typeof caster) => (angle ? Math.tan(read(angle)) : 0);
  const up: Vector = [-lean(caster), -out * lean(inclination), 1];
  const length = Math.hypot(...up);
  return {
    point: placed(axle, [x, (out * read(kingpinSpread)) / 2, z]),
    axis: directed(axle.rotation, [up[0] / length, up[1] / length, 1 / length]),
  };
}

/**
 * The drag link of one end at the ride height of a setup; its lever points ahead where its ball is ahead of the axle.
 *
 * @returns null where drag link or links were not measured
 */
export function dragLinkOf(
  setup: Setup,
  end: End,
  links: RigLinks,
  read: ValueOf = nominal,
): DragLink | null {
  const measured = setup.ends[end].base.points.steering?.dragLink ?? null;
  const axle = links.ends[end]?.axle;
  if (!measured || !axle) return null;
  const behind = behindFront(setup.rig, end, read);
  const { points, armLength } = measured;
  return {
    body: placed(links.body, placeOf(points.frame, behind, read)),
    axle: placed(axle, placeOf(points.axle, behind, read)),
    arm: tapedValue(points.axle.ahead, read) < 0 ? -read(armLength) : read(armLength),
  };
}
