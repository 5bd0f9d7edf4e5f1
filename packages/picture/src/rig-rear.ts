import { type Corner, type End, SIDES, type Side } from '@lastinch/core';
import type { RigPose } from './pose.ts';
import { burstItem, coilItems, mountItems, shockItems, stopItems } from './rig-parts.ts';
import type { RigShape } from './rig-shape.ts';
import { axleRise, behindFront, bodyRise, leftOf, stopState } from './rig-station.ts';
import type { Item, Scene } from './scene.ts';

export interface RearOptions {
  /** Width of the drawing [px]. */
  readonly width: number;
  /** Which axle is drawn, both seen from behind. */
  readonly end: End;
  /** Height of the ground under each tyre; flat at zero without it. */
  readonly ground?: Readonly<Record<Side, number>>;
  /** Words beside a stop. */
  readonly labels?: Partial<Readonly<Record<Corner, string>>>;
}

const VIEW = { beside: 0.34, above: 0.5, below: 0.22 } as const;
const RAIL = { width: 0.07, height: 0.1 } as const;

/**
 * One axle and the frame over it, seen from behind (left on the left), to scale: track, spreads, gaps, crush, travel
 * and roll are true. Width of tyres, axle housing, bar and body are only drawn.
 */
export const rearScene = (shape: RigShape, pose: RigPose, options: RearOptions): Scene => {
  const { end } = options;
  const at = shape.ends[end];
  const tyreWidth = at.tyreRadius * 0.7;
  const half = at.track / 2 + tyreWidth / 2 + VIEW.beside;
  const bounds = { left: -half, right: half, bottom: -VIEW.below, top: at.frame + VIEW.above };
  const items: Item[] = [
    ...bodyItems(shape, pose, end),
    ...SIDES.flatMap((side) => tyreItems(shape, pose, end, side, tyreWidth)),
    groundItem(options.ground ?? { left: 0, right: 0 }, half, bounds.bottom),
    ...axleItems(shape, pose, end, tyreWidth),
    ...SIDES.flatMap((side) => cornerItems(shape, pose, end, side, options.labels)),
  ];
  return { bounds, items, layoutWidth: options.width };
};

/** A point of the body at ride height → where it is in the pose; heights follow the model, the top leans with the roll. */
const bodyPoint = (
  shape: RigShape,
  pose: RigPose,
  end: End,
  left: number,
  height: number,
): readonly [number, number] => [
  -left + pose.body.roll * (height - shape.ends[end].frame),
  height + bodyRise(shape, pose, behindFront(shape, end), left),
];

const axlePoint = (
  shape: RigShape,
  pose: RigPose,
  end: End,
  left: number,
  height: number,
): readonly [number, number] => [
  -left + pose.axles[end].roll * (height - shape.ends[end].tyreRadius),
  height + axleRise(pose, end, left),
];

const bodyItems = (shape: RigShape, pose: RigPose, end: End): readonly Item[] => {
  const at = shape.ends[end];
  const point = (left: number, above: number): readonly [number, number] =>
    bodyPoint(shape, pose, end, left, at.frame + above);
  const wide = at.track * 0.46;
  const rails = leftOf('left', at.stop.spread);
  const outline = [
    ...point(wide, 0.14),
    ...point(wide, 0.4),
    ...point(wide * 0.86, 0.47),
    ...point(-wide * 0.86, 0.47),
    ...point(-wide, 0.4),
    ...point(-wide, 0.14),
    ...point(wide, 0.14),
  ];
  const rail = (left: number): Item => ({
    kind: 'polygon',
    role: 'body',
    points: [
      ...point(left + RAIL.width / 2, 0),
      ...point(left - RAIL.width / 2, 0),
      ...point(left - RAIL.width / 2, RAIL.height),
      ...point(left + RAIL.width / 2, RAIL.height),
    ],
    name: 'rail',
  });
  const [x1, y1] = point(rails, RAIL.height / 2);
  const [x2, y2] = point(-rails, RAIL.height / 2);
  return [
    { kind: 'polyline', role: 'body', weight: 'faint', points: outline, name: 'body' },
    { kind: 'line', role: 'body', x1, y1, x2, y2 },
    rail(rails),
    rail(-rails),
  ];
};

const tyreItems = (shape: RigShape, pose: RigPose, end: End, side: Side, width: number): readonly Item[] => {
  const at = shape.ends[end];
  const [x, y] = axlePoint(shape, pose, end, leftOf(side, at.track), at.tyreRadius);
  const turn = -pose.axles[end].roll;
  const tall = 2 * at.tyreRadius;
  return [
    {
      kind: 'rect',
      role: 'tyre',
      x: x - width / 2,
      y: y - tall / 2,
      width,
      height: tall,
      round: width * 0.28,
      turn,
      name: `${side}.tyre`,
    },
    {
      kind: 'rect',
      role: 'paper',
      x: x - width * 0.32,
      y: y - tall * 0.29,
      width: width * 0.64,
      height: tall * 0.58,
      turn,
    },
  ];
};

const groundItem = (height: Readonly<Record<Side, number>>, half: number, bottom: number): Item => ({
  kind: 'polygon',
  role: 'ground',
  points: [
    -half,
    height.left,
    0,
    height.left,
    0,
    height.right,
    half,
    height.right,
    half,
    bottom - 1,
    -half,
    bottom - 1,
  ],
  name: 'ground',
});

const axleItems = (shape: RigShape, pose: RigPose, end: End, tyreWidth: number): readonly Item[] => {
  const at = shape.ends[end];
  const reach = at.track / 2 - tyreWidth * 0.1;
  const [x1, y1] = axlePoint(shape, pose, end, reach, at.tyreRadius);
  const [x2, y2] = axlePoint(shape, pose, end, -reach, at.tyreRadius);
  const long = Math.hypot(x2 - x1, y2 - y1) || 1;
  const nx = (-(y2 - y1) / long) * 0.04;
  const ny = ((x2 - x1) / long) * 0.04;
  // The housing sits beside the middle, the front one to the left, so that the two axles are told apart.
  const [hx, hy] = axlePoint(shape, pose, end, end === 'front' ? at.track * 0.1 : 0, at.tyreRadius);
  const bar = {
    axle: axlePoint(shape, pose, end, -at.coil.spread / 2 - 0.04, at.tyreRadius + 0.06),
    body: bodyPoint(shape, pose, end, at.stop.spread / 2, at.frame - 0.06),
  };
  return [
    {
      kind: 'polygon',
      role: 'axle',
      points: [x1 + nx, y1 + ny, x2 + nx, y2 + ny, x2 - nx, y2 - ny, x1 - nx, y1 - ny],
      name: 'axle',
    },
    { kind: 'circle', role: 'axle', x: hx, y: hy, radius: 0.13, name: 'housing' },
    {
      kind: 'line',
      role: 'link',
      weight: 'strong',
      x1: bar.axle[0],
      y1: bar.axle[1],
      x2: bar.body[0],
      y2: bar.body[1],
      name: 'bar',
    },
    { kind: 'circle', role: 'link', x: bar.axle[0], y: bar.axle[1], radius: 0.022 },
    { kind: 'circle', role: 'link', x: bar.body[0], y: bar.body[1], radius: 0.022 },
  ];
};

/** Words stand in the body, clear of links and shocks [m]. */
const LABEL_ABOVE_FRAME = 0.36;

const cornerItems = (
  shape: RigShape,
  pose: RigPose,
  end: End,
  side: Side,
  labels: RearOptions['labels'],
): readonly Item[] => {
  const at = shape.ends[end];
  const out = side === 'left' ? 1 : -1;
  const state = stopState(shape, pose, end, side);
  const stopLeft = leftOf(side, at.stop.spread);
  const coilLeft = leftOf(side, at.coil.spread);
  const shockLeft = leftOf(side, at.shock.spread);

  const [perchX, perchY] = axlePoint(shape, pose, end, coilLeft, at.coil.perch);
  const [seatX, seatY] = bodyPoint(shape, pose, end, coilLeft, at.coil.seat);
  const longest = at.coil.seat - at.coil.perch + (at.coil.slack ?? Number.POSITIVE_INFINITY);
  const share = Math.min(1, longest / Math.max(1e-6, seatY - perchY));
  const [tubeX, tubeY] = axlePoint(shape, pose, end, coilLeft, at.tyreRadius);
  const [frameX, frameY] = bodyPoint(shape, pose, end, coilLeft, at.frame);

  const [x1, y1] = axlePoint(shape, pose, end, shockLeft, at.shock.lower);
  const inboard = Math.tan(at.shock.lean) * (at.shock.upper - at.shock.lower);
  const [x2, y2] = bodyPoint(shape, pose, end, shockLeft - out * inboard, at.shock.upper);

  const [baseX, base] = bodyPoint(
    shape,
    pose,
    end,
    stopLeft,
    at.pad + at.stop.freeBump[side] + at.stop.length,
  );
  const [, frame] = bodyPoint(shape, pose, end, stopLeft, at.frame);
  const [, pad] = axlePoint(shape, pose, end, stopLeft, at.pad);
  const [, tube] = axlePoint(shape, pose, end, stopLeft, at.tyreRadius + 0.04);
  const tip = Math.max(base - at.stop.length, pad);

  const items: Item[] = [
    ...shockItems(
      { x1, y1, x2, y2 },
      {
        width: 0.05,
        bodyLength: Math.hypot(at.shock.upper - at.shock.lower, inboard) * at.shock.bodyShare,
        name: `${side}.shock`,
      },
    ),
    { kind: 'line', role: 'axle', x1: tubeX, y1: tubeY, x2: perchX, y2: perchY },
    ...coilItems(
      {
        x1: perchX,
        y1: perchY,
        x2: perchX + (seatX - perchX) * share,
        y2: perchY + (seatY - perchY) * share,
      },
      { radius: 0.062, turns: 6, name: `${side}.coil` },
    ),
    ...mountItems(frameX, {
      frame: frameY,
      base: seatY,
      spacer: at.coil.spacer,
      width: 0.14,
      name: `${side}.coil`,
    }),
    ...mountItems(baseX, { frame, base, spacer: at.stop.spacer, width: 0.07, name: `${side}.stop` }),
    ...stopItems({ x: baseX, base, tip, length: at.stop.length, width: 0.07, name: `${side}.stop` }),
    { kind: 'line', role: 'axle', x1: baseX, y1: tube, x2: baseX, y2: pad },
    {
      kind: 'rect',
      role: 'pad',
      x: baseX - 0.05,
      y: pad - 0.016,
      width: 0.1,
      height: 0.016,
      name: `${side}.pad`,
    },
  ];
  const dimensionX = baseX + out * 0.1;
  if (state.gap > 0) {
    items.push({
      kind: 'dimension',
      role: 'figure',
      x1: dimensionX,
      y1: pad,
      x2: dimensionX,
      y2: pad + state.gap,
      name: `${side}.gap`,
    });
  }
  if (state.metal) items.push(burstItem(baseX, pad, 0.09));
  const text = labels?.[state.corner];
  if (text !== undefined) {
    items.push({
      kind: 'text',
      role: 'figure',
      x: baseX + out * 0.12,
      y: frame + LABEL_ABOVE_FRAME,
      text,
      size: 12,
      anchor: 'middle',
    });
  }
  return items;
};
