import type { Vector } from '@lastinch/core';
import { type DrawnAxle, forceLine, instantOf, patchOf, posedAt, rollAxis, rollOf } from './link-axle.ts';
import {
  centreItems,
  coilLine,
  crossItems,
  type Hand,
  jointItems,
  lineItem,
  ringItem,
} from './link-marks.ts';
import { namesOf } from './link-names.ts';
import { isInside, type LinkView, onPaper, type PaperPoint } from './link-view.ts';
import { placeWords } from './link-words.ts';
import type { Box, Item, Scene } from './scene.ts';

export interface LinkSceneOptions {
  readonly view: LinkView;
  readonly width: number;
  /** What is visible; `linkBounds` of the same axles at rest, so that nothing jumps while something moves. */
  readonly bounds: Box;
  /** A stretch to read the scale by, and its length in words. */
  readonly scale: { readonly length: number; readonly text: string };
}

/** Room around what is drawn [m]. */
const ROOM = 0.1;
/** What the drawing keeps free for bump and droop, and for words [m]. */
const MOVES = 0.12;
const WIDE_TYRE = 0.62;

/**
 * The part of the paper that one view of an axle needs, in all its setups.
 *
 * @param travel – how far the axle is going to be posed, both ≥ 0 [m]; room is kept for it
 */
export const linkBounds = (
  axles: readonly DrawnAxle[],
  view: LinkView,
  travel: { readonly bump: number; readonly droop: number } = { bump: 0, droop: 0 },
): Box => {
  const points = axles.flatMap(({ geometry, shaft, dragLink }): PaperPoint[] => {
    const { centre, halfTrack, tyreRadius: r, links, struts } = geometry;
    const out = halfTrack + (r * WIDE_TYRE) / 2;
    const corners = [-1, 1].flatMap((way): Vector[] => [
      [centre[0] - r, way * out, centre[2] - r],
      [centre[0] + r, way * out, centre[2] + r],
    ]);
    const parts = [
      ...links,
      ...Object.values(struts),
      ...(shaft === null ? [] : [{ axle: shaft.pinion, body: shaft.case }]),
      ...(dragLink === null ? [] : [dragLink]),
    ];
    return [...corners, ...parts.flatMap(({ axle, body }) => [axle, body])].map((at) => onPaper(view, at));
  });
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  // In the rear view one side goes further down when the axle rolls.
  const rolls = view === 'rear' ? ROOM : 0;
  const room = (of: number): number => (view === 'top' ? ROOM : Math.max(MOVES, of + MOVES / 2 + rolls));
  return {
    left: Math.min(...xs) - ROOM,
    right: Math.max(...xs) + ROOM,
    bottom: Math.min(...ys) - room(travel.droop),
    top: Math.max(...ys) + room(view === 'rear' ? 0 : travel.bump / 2),
  };
};

/**
 * An axle with everything that guides it, seen from one side, to scale, in one or two setups: the first in unbroken
 * lines with round joints, the second in broken lines with square joints. The body stands still, the axle moves, and
 * the ground with it. Tyre width and coil diameter are only drawn.
 */
export const linkScene = (axles: readonly DrawnAxle[], options: LinkSceneOptions): Scene => {
  const { view, width, bounds } = options;
  const pixel = (bounds.right - bounds.left) / width;
  const hands = axles.map((axle, k): [DrawnAxle, Hand] => [
    axle,
    { role: k === 0 ? 'first' : 'second', pixel },
  ]);
  const items: Item[] = [];
  if (view !== 'top' && axles[0] !== undefined) items.push(groundItem(axles[0], view, bounds));
  for (const [axle, hand] of hands) items.push(...tyreItems(axle, view, hand));
  for (const [axle, hand] of hands) items.push(...axleItems(axle, view, hand));
  for (const [axle, hand] of hands) items.push(...partItems(axle, view, hand));
  for (const [axle, hand] of hands) items.push(...centres(axle, view, hand, bounds));
  items.push(...scaleItems(options, pixel));
  items.push(...placeWords(namesOf(axles, view, bounds), items, bounds, pixel));
  return { bounds, items, layoutWidth: width };
};

const groundItem = (axle: DrawnAxle, view: LinkView, bounds: Box): Item => {
  const [left, right] = [patchOf(axle, 1), patchOf(axle, -1)];
  const [x1, y1] = onPaper(view, left);
  const [x2, y2] = onPaper(view, right);
  const rise = view === 'side' ? 0 : (y2 - y1) / (x2 - x1);
  const middle = (y1 + y2) / 2;
  const height = (x: number): number => middle + rise * (x - (x1 + x2) / 2);
  const under = bounds.bottom - 1;
  const { left: from, right: to } = bounds;
  return {
    kind: 'polygon',
    role: 'ground',
    points: [from, height(from), to, height(to), to, under, from, under],
    name: 'ground',
  };
};

const tyreItems = (axle: DrawnAxle, view: LinkView, hand: Hand): readonly Item[] => {
  const { role } = hand;
  const { centre, halfTrack, tyreRadius: r } = axle.geometry;
  const wide = r * WIDE_TYRE;
  return ([1, -1] as const).flatMap((side): Item[] => {
    const hub: Vector = [centre[0], side * halfTrack, centre[2]];
    const name = `${axle.name}.tyre-${side === 1 ? 'left' : 'right'}`;
    if (view === 'side') {
      // Both sides stand in one line as long as the axle is level.
      const [x, y] = posedAt(axle, view, hub);
      return [ringItem(hand, [x, y], r, { weight: 'faint', name })];
    }
    const corner = (out: number, along: number): PaperPoint =>
      posedAt(axle, view, [
        hub[0] + (view === 'top' ? along : 0),
        hub[1] + out,
        hub[2] + (view === 'rear' ? along : 0),
      ]);
    const points = [
      corner(wide / 2, r),
      corner(-wide / 2, r),
      corner(-wide / 2, -r),
      corner(wide / 2, -r),
      corner(wide / 2, r),
    ];
    const outline: Item = { kind: 'polyline', role, weight: 'faint', points: points.flat(), name };
    return role === 'first'
      ? [{ kind: 'polygon', role: 'tyre', weight: 'faint', points: points.flat() }, outline]
      : [outline];
  });
};

const axleItems = (axle: DrawnAxle, view: LinkView, hand: Hand): readonly Item[] => {
  const { centre, halfTrack } = axle.geometry;
  const hub = (side: 1 | -1): PaperPoint => posedAt(axle, view, [centre[0], side * halfTrack, centre[2]]);
  const name = `${axle.name}.axle`;
  const items: Item[] = [];
  if (view === 'side') {
    const [x, y] = posedAt(axle, view, centre);
    items.push(ringItem(hand, [x, y], 0.045, { name }));
  } else items.push(lineItem(hand, hub(1), hub(-1), { weight: 'strong', name }));
  if (axle.shaft !== null) {
    // The nose of the axle: from the hub line, level with the middle of the tube, to the pinion.
    const from = posedAt(axle, view, [centre[0], axle.shaft.pinion[1], centre[2]]);
    items.push(lineItem(hand, from, posedAt(axle, view, axle.shaft.pinion), { weight: 'strong' }));
  }
  return items;
};

const partItems = (axle: DrawnAxle, view: LinkView, hand: Hand): readonly Item[] => {
  const { geometry, shaft, dragLink } = axle;
  const items: Item[] = [];
  for (const [id, strut] of Object.entries(geometry.struts)) {
    const ends = [posedAt(axle, view, strut.axle), onPaper(view, strut.body)] as const;
    const name = `${axle.name}.${id}`;
    if (id.startsWith('spring')) items.push(coilLine(hand, ...ends, name));
    else items.push(lineItem(hand, ...ends, { name }));
  }
  if (shaft !== null) {
    const ends = [posedAt(axle, view, shaft.pinion), onPaper(view, shaft.case)] as const;
    items.push(
      lineItem(hand, ...ends, { name: `${axle.name}.shaft` }),
      ...crossItems(hand, ends[0], `${axle.name}.pinion`),
      ...crossItems(hand, ends[1], `${axle.name}.case`),
    );
  }
  if (dragLink !== null) {
    const ends = [posedAt(axle, view, dragLink.axle), onPaper(view, dragLink.body)] as const;
    items.push(lineItem(hand, ...ends, { weight: 'faint', name: `${axle.name}.drag-link` }));
  }
  for (const { id, axle: on, body } of geometry.links) {
    const ends = [posedAt(axle, view, on), onPaper(view, body)] as const;
    items.push(lineItem(hand, ...ends, { weight: 'strong', name: `${axle.name}.${id}` }));
    items.push(...jointItems(hand, ends[0], 'axle', `${axle.name}.${id}.axle`));
    items.push(...jointItems(hand, ends[1], 'frame', `${axle.name}.${id}.frame`));
  }
  return items;
};

/** Instant centre with the line of the tyre's force towards it; roll centre and roll axis. */
const centres = (axle: DrawnAxle, view: LinkView, hand: Hand, bounds: Box): readonly Item[] => {
  const items: Item[] = [];
  const instant = instantOf(axle, view);
  if (instant !== null) {
    const name = `${axle.name}.instant-line`;
    items.push(lineItem(hand, ...forceLine(axle, instant, bounds), { weight: 'faint', name }));
    if (isInside(bounds, instant)) items.push(...centreItems(hand, instant, `${axle.name}.instant-centre`));
  }
  const axis = view === 'side' ? rollAxis(axle, bounds) : null;
  if (axis !== null) items.push(lineItem(hand, ...axis, { weight: 'faint', name: `${axle.name}.roll-axis` }));
  const roll = rollOf(axle, view);
  if (roll !== null && isInside(bounds, roll))
    items.push(...centreItems(hand, roll, `${axle.name}.roll-centre`));
  return items;
};

const scaleItems = ({ bounds, scale }: LinkSceneOptions, pixel: number): readonly Item[] => {
  const x2 = bounds.right - 8 * pixel;
  const x1 = x2 - scale.length;
  const y = bounds.bottom + 10 * pixel;
  return [
    { kind: 'dimension', role: 'figure', x1, y1: y, x2, y2: y, name: 'scale' },
    {
      kind: 'text',
      role: 'figure',
      x: x1 - 6 * pixel,
      y,
      text: scale.text,
      size: 11,
      anchor: 'end',
      rimmed: true,
    },
  ];
};
