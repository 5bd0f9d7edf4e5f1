import type { End } from '../finding/place.ts';
import type { Driveline, JointKind } from '../rig/linkage.ts';
import { nominal, type Reading, type ValueOf } from '../rig/reading.ts';
import type { Setup } from '../rig/setup.ts';
import type { RigLinks } from './from-setup.ts';
import type { Vector } from './geometry.ts';
import { behindFront, moved, placeOf } from './measured-geometry.ts';
import { directed, placed } from './rigid-motion.ts';
import type { Shaft, ShaftJoint, Slip } from './shaft.ts';
import { minus, size } from './vector.ts';

/**
 * The driveshaft of one end at the ride height of a setup, in the frame of its links: pinion moved and turned with the
 * axle, case with the body and by what the setup moves of it.
 *
 *     slip left to go in = as measured + (length between the joints now − as measured)
 *
 * @param links – `linksOf` the same setup with the same readings
 * @returns null where shaft or links were not measured
 * @validity pinion and output lie in planes along the rig, as a level reads them; another joint than the one that was
 * measured binds where its kind usually does
 */
export function shaftOf(setup: Setup, end: End, links: RigLinks, read: ValueOf = nominal): Shaft | null {
  const { base, patch } = setup.ends[end];
  const { driveline } = base.points;
  const axle = links.ends[end]?.axle;
  if (!driveline || !axle) return null;
  const behind = behindFront(setup.rig, end, read);
  const pinion = placeOf(driveline.pinion, behind, read);
  const measuredCase = placeOf(driveline.case, behind, read);
  const pinionPoint = placed(axle, pinion);
  const casePoint = placed(links.body, moved(measuredCase, patch.shaft?.case, null, read));
  // The pinion looks from its axle to the middle of the rig, the output of the case back at it.
  const inward = end === 'front' ? -1 : 1;
  const pointing = (sense: number, angle: number): Vector => [sense * Math.cos(angle), 0, Math.sin(angle)];
  const valueOr = (reading: Reading | null) => (reading ? read(reading) : null);
  const joint = (
    kind: JointKind,
    own: JointKind,
    bindsAt: Reading | null,
    point: Vector,
    axis: Vector,
  ): ShaftJoint => ({
    kind,
    point,
    axis,
    bindsAt: kind === own ? valueOr(bindsAt) : null,
    evenAt: 0,
  });
  const { pinionJoint, caseJoint, pinionBindsAt, caseBindsAt, yokeTwist, tubeOutside, tubeWall } = driveline;
  const pinionAxis = directed(axle.rotation, pointing(inward, read(driveline.pinionAngle)));
  const caseAxis = directed(links.body.rotation, pointing(-inward, read(driveline.caseAngle)));
  return {
    pinionJoint: joint(
      patch.shaft?.pinionJoint ?? pinionJoint,
      pinionJoint,
      pinionBindsAt,
      pinionPoint,
      pinionAxis,
    ),
    caseJoint: joint(patch.shaft?.caseJoint ?? caseJoint, caseJoint, caseBindsAt, casePoint, caseAxis),
    yokeTwist: valueOr(yokeTwist) ?? 0,
    slip: slipOf(
      setup,
      end,
      driveline,
      size(minus(casePoint, pinionPoint)) - size(minus(measuredCase, pinion)),
      read,
    ),
    tube: tubeOutside && tubeWall ? { outside: read(tubeOutside), wall: read(tubeWall) } : null,
  };
}

function slipOf(setup: Setup, end: End, driveline: Driveline, longer: number, read: ValueOf): Slip | null {
  const change = setup.ends[end].patch.shaft;
  if (change?.slip)
    return { usable: read(change.slip), inAtRide: change.slipIn ? read(change.slipIn) : null };
  if (!driveline.slip) return null;
  const measured = driveline.slipIn ? read(driveline.slipIn) + longer : null;
  return { usable: read(driveline.slip), inAtRide: change?.slipIn ? read(change.slipIn) : measured };
}
