import { type Corner, ENDS, type End, type Side } from '@lastinch/core';
import type { RigPose } from './pose.ts';
import { burstItem, coilItems, mountItems, shockItems, stopItems } from './rig-parts.ts';
import type { EndShape, RigShape } from './rig-shape.ts';
import { bodyOutline, linkItems, railItems } from './rig-side-body.ts';
import { axleRise, behindFront, bodyRise, leftOf, stopState } from './rig-station.ts';
import type { Item, Scene } from './scene.ts';

/** Ground under one side: x [m] forward of where the front axle is drawn and z [m] up, as x0, z0, x1, z1, … ascending in x. */
export type GroundLine = ArrayLike<number>;

export interface SideOptions {
  /** Width of the drawing [px]. */
  readonly width: number;
  /** The side that is looked at; the rig drives to the right when it is the right one, to the left otherwise. */
  readonly side?: Side;
  /** Ground under the near and the far wheels; flat without it. */
  readonly ground?: { readonly near: GroundLine; readonly far?: GroundLine };
  /** Words beside a stop, for example its gap as the core worked it out. Only those of the near side are shown. */
  readonly labels?: Partial<Readonly<Record<Corner, string>>>;
  /** Height that the picture is raised by, to follow the rig over a hill [m]. */
  readonly raise?: number;
}

/** Reach of the picture beyond the axles and above and below the ground at rest [m]. */
const VIEW = { ahead: 0.95, behind: 0.95, above: 0.72, below: 0.42 } as const;

/**
 * The rig from the side, to scale, over its ground. Gaps, crush, travel, wheels and wheelbase are true; where along
 * the rig a coil, a shock and a stop sit, the links and the outline of the body are only drawn.
 *
 * Cheap: about 90 items, made anew for each frame of an animation.
 */
export const sideScene = (shape: RigShape, pose: RigPose, options: SideOptions): Scene => {
  const side = options.side ?? 'right';
  // Looked at from the right, forward is to the right on the paper; from the left it is to the left.
  const way = side === 'right' ? 1 : -1;
  const far: Side = side === 'right' ? 'left' : 'right';
  const raise = options.raise ?? 0;
  const frame = Math.max(shape.ends.front.frame, shape.ends.rear.frame);
  const ahead = VIEW.ahead;
  const behind = shape.wheelbase + VIEW.behind;
  const bounds = {
    left: way === 1 ? -behind : -ahead,
    right: way === 1 ? ahead : behind,
    bottom: raise - VIEW.below,
    top: raise + frame + VIEW.above,
  };
  const items: Item[] = [];
  if (options.ground?.far) {
    items.push({
      kind: 'polyline',
      role: 'ground',
      weight: 'faint',
      points: mirrored(options.ground.far, way),
      name: 'ground.far',
    });
  }
  for (const end of ENDS) items.push(...wheelItems(shape, pose, end, far, way, true));
  items.push(...bodyOutline(shape, pose, side, way, VIEW.above));
  for (const end of ENDS) items.push(...linkItems(shape, pose, end, side, way));
  for (const end of ENDS) items.push(...wheelItems(shape, pose, end, side, way, false));
  items.push(groundItem(options.ground?.near, bounds, way));
  items.push(...railItems(shape, pose, side, way));
  for (const end of ENDS) items.push(...endItems(shape, pose, end, side, way, options.labels));
  return { bounds, items, layoutWidth: options.width };
};

/** Ground as a filled shape down to the edge of the picture; it hides the part of a tyre that is pressed flat. */
const groundItem = (line: GroundLine | undefined, bounds: Scene['bounds'], way: 1 | -1): Item => {
  const flat = [bounds.left, 0, bounds.right, 0];
  const points = line === undefined || line.length < 4 ? flat : mirrored(line, way);
  const first = points[0]!;
  const last = points[points.length - 2]!;
  const under = bounds.bottom - 1;
  return { kind: 'polygon', role: 'ground', points: [...points, last, under, first, under], name: 'ground' };
};

const mirrored = (line: GroundLine, way: 1 | -1): number[] => {
  const points = new Array<number>(line.length);
  for (let k = 0; k < line.length; k += 1) points[k] = k % 2 === 0 ? way * line[k]! : line[k]!;
  return points;
};

const wheelItems = (
  shape: RigShape,
  pose: RigPose,
  end: End,
  side: Side,
  way: 1 | -1,
  far: boolean,
): readonly Item[] => {
  const at = shape.ends[end];
  const x = -way * behindFront(shape, end);
  const y = at.tyreRadius + axleRise(pose, end, leftOf(side, at.track));
  if (far) {
    return [
      { kind: 'circle', role: 'tyre', weight: 'faint', x, y, radius: at.tyreRadius, name: `${end}.far` },
    ];
  }
  return [
    { kind: 'circle', role: 'tyre', x, y, radius: at.tyreRadius, name: `${end}.tyre` },
    { kind: 'circle', role: 'paper', x, y, radius: at.tyreRadius * 0.58 },
    { kind: 'circle', role: 'note', x, y, radius: at.tyreRadius * 0.58 },
  ];
};

/** Where along the rig the parts of an end are drawn, towards the middle of the rig [m]. */
const PLACES = { coil: 0, stop: 0.19, shock: -0.19 } as const;

/** Words beside a stop stand this far above the frame [m]. */
const LABEL_ABOVE_FRAME = 0.2;

const endItems = (
  shape: RigShape,
  pose: RigPose,
  end: End,
  side: Side,
  way: 1 | -1,
  labels: SideOptions['labels'],
): readonly Item[] => {
  const at: EndShape = shape.ends[end];
  const back = behindFront(shape, end);
  const inward = end === 'front' ? 1 : -1;
  const xAt = (place: number): number => -way * (back + inward * place);
  const stopLeft = leftOf(side, at.stop.spread);
  const state = stopState(shape, pose, end, side);
  // Everything of an end moves as its own station does, so that the drawn gap is the gap of the model.
  const body = bodyRise(shape, pose, back, stopLeft);
  const axle = axleRise(pose, end, stopLeft);
  const hub = at.tyreRadius + axle;

  const coilLeft = leftOf(side, at.coil.spread);
  const coilPerch = at.coil.perch + axleRise(pose, end, coilLeft);
  const coilSeat = at.coil.seat + bodyRise(shape, pose, back, coilLeft);
  const longest = at.coil.seat - at.coil.perch + (at.coil.slack ?? Number.POSITIVE_INFINITY);
  const coilTop = Math.min(coilSeat, coilPerch + longest);
  const coilX = xAt(PLACES.coil);

  const shockLeft = leftOf(side, at.shock.spread);
  const shockX = xAt(PLACES.shock);
  const lower = at.shock.lower + axleRise(pose, end, shockLeft);
  const upper = at.shock.upper + bodyRise(shape, pose, back, shockLeft);

  const stopX = xAt(PLACES.stop);
  const pad = at.pad + axle;
  const base = at.pad + at.stop.freeBump[side] + at.stop.length + body;
  const frame = at.frame + body;
  const tip = Math.max(base - at.stop.length, pad);
  const items: Item[] = [
    ...shockItems(
      { x1: shockX, y1: lower, x2: shockX, y2: upper },
      {
        width: 0.055,
        bodyLength: (at.shock.upper - at.shock.lower) * at.shock.bodyShare,
        name: `${end}.shock`,
      },
    ),
    { kind: 'line', role: 'axle', x1: shockX, y1: lower, x2: xAt(0), y2: hub },
    ...mountItems(coilX, { frame, base: coilSeat, spacer: at.coil.spacer, width: 0.14, name: `${end}.coil` }),
    { kind: 'line', role: 'axle', x1: coilX, y1: hub, x2: coilX, y2: coilPerch },
    ...coilItems(
      { x1: coilX, y1: coilPerch, x2: coilX, y2: coilTop },
      { radius: 0.06, turns: 6, name: `${end}.coil` },
    ),
    ...mountItems(stopX, { frame, base, spacer: at.stop.spacer, width: 0.075, name: `${end}.stop` }),
    ...stopItems({ x: stopX, base, tip, length: at.stop.length, width: 0.075, name: `${end}.stop` }),
    { kind: 'polyline', role: 'axle', points: [xAt(0), hub, stopX, hub, stopX, pad - 0.02] },
    {
      kind: 'rect',
      role: 'pad',
      x: stopX - 0.055,
      y: pad - 0.018,
      width: 0.11,
      height: 0.018,
      name: `${end}.pad`,
    },
    { kind: 'circle', role: 'axle', x: xAt(0), y: hub, radius: 0.05, name: `${end}.axle` },
  ];
  const dimensionX = xAt(PLACES.stop + 0.1);
  if (state.gap > 0) {
    items.push({
      kind: 'dimension',
      role: 'figure',
      x1: dimensionX,
      y1: pad,
      x2: dimensionX,
      y2: pad + state.gap,
      name: `${end}.gap`,
    });
  }
  if (state.metal) items.push(burstItem(xAt(0), hub, 0.13));
  const text = labels?.[state.corner];
  if (text !== undefined) {
    // In the body, above the frame, clear of wheels and links.
    const y = frame + LABEL_ABOVE_FRAME;
    items.push({ kind: 'text', role: 'figure', x: stopX, y, text, size: 12, anchor: 'middle' });
  }
  return items;
};
