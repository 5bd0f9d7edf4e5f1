import { type AxleGeometry, type AxlePose, movedPoint, type Vector } from '@lastinch/core';
import { isInside, type LinkView, onPaper, type PaperPoint, withinBox } from './link-view.ts';
import type { Box } from './scene.ts';

/** One setup of an axle in a pose. All points at ride height, in the frame of its geometry. */
export interface DrawnAxle {
  /** What tells it from the other setup where both need a name: `now`, `proposed`. */
  readonly name: string;
  readonly geometry: AxleGeometry;
  readonly pose: AxlePose;
  /** Centres of the joints of the driveshaft; null when it was not measured. */
  readonly shaft: { readonly pinion: Vector; readonly case: Vector } | null;
  /** Balls of the drag link; null when there is none. */
  readonly dragLink: { readonly axle: Vector; readonly body: Vector } | null;
  /** Instant centre seen from the side [m]; null where the axle does not turn. */
  readonly instant: { readonly x: number; readonly z: number } | null;
  /** Height of the roll centre, and rise of the roll axis to the front [1]. */
  readonly rollCentre: { readonly z: number; readonly rise: number } | null;
}

/** A point of the axle where it stands in the pose. */
export const posedAt = ({ geometry, pose }: DrawnAxle, view: LinkView, point: Vector): PaperPoint =>
  onPaper(view, movedPoint(pose, geometry, point));

/** Contact patch of a side: straight below the hub of the posed axle. */
export const patchOf = (axle: DrawnAxle, side: 1 | -1): Vector => {
  const { centre, halfTrack, tyreRadius } = axle.geometry;
  const [x, y, z] = movedPoint(axle.pose, axle.geometry, [centre[0], side * halfTrack, centre[2]]);
  return [x, y, z - tyreRadius];
};

/** Instant centre, which only the side view shows. */
export const instantOf = ({ instant }: DrawnAxle, view: LinkView): PaperPoint | null =>
  instant === null || view !== 'side' || !Number.isFinite(instant.x) || !Number.isFinite(instant.z)
    ? null
    : [instant.x, instant.z];

/** Roll centre, in the plane across the axle; from above it is a point of the centre line like any other. */
export const rollOf = (axle: DrawnAxle, view: LinkView): PaperPoint | null => {
  if (axle.rollCentre === null || view === 'top' || !Number.isFinite(axle.rollCentre.z)) return null;
  const [x] = movedPoint(axle.pose, axle.geometry, axle.geometry.centre);
  return onPaper(view, [x, 0, axle.rollCentre.z]);
};

/** From between the contact patches towards the instant centre, as far as the paper goes. */
export const forceLine = (
  axle: DrawnAxle,
  instant: PaperPoint,
  bounds: Box,
): readonly [PaperPoint, PaperPoint] => {
  const [x1, y1] = onPaper('side', patchOf(axle, -1));
  const [x2, y2] = onPaper('side', patchOf(axle, 1));
  const from: PaperPoint = [(x1 + x2) / 2, (y1 + y2) / 2];
  return [from, withinBox(bounds, from, instant)];
};

/** The roll axis seen from the side, from edge to edge; null where its roll centre is off the paper. */
export const rollAxis = (axle: DrawnAxle, bounds: Box): readonly [PaperPoint, PaperPoint] | null => {
  const roll = rollOf(axle, 'side');
  if (roll === null || axle.rollCentre === null || !isInside(bounds, roll)) return null;
  const { rise } = axle.rollCentre;
  const reach = bounds.right - bounds.left;
  const end = (way: 1 | -1) => withinBox(bounds, roll, [roll[0] + way * reach, roll[1] + way * reach * rise]);
  return [end(-1), end(1)];
};

/** Points that may be taken hold of, in the view [m]: joints of the links where they stand in the pose. */
export const linkHandles = (
  axle: DrawnAxle,
  view: LinkView,
): readonly { readonly id: string; readonly at: PaperPoint }[] => [
  ...axle.geometry.links.flatMap(({ id, axle: on, body }) => [
    { id: `${id}.axle`, at: posedAt(axle, view, on) },
    { id: `${id}.frame`, at: onPaper(view, body) },
  ]),
  ...(axle.shaft === null ? [] : [{ id: 'case', at: onPaper(view, axle.shaft.case) }]),
];
