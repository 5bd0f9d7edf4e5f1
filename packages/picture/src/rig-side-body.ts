import type { End, Side } from '@lastinch/core';
import type { RigPose } from './pose.ts';
import type { RigShape } from './rig-shape.ts';
import { axleRise, behindFront, bodyRise, leftOf } from './rig-station.ts';
import type { Item } from './scene.ts';

/** Height of the frame rail [m]. */
const RAIL = 0.085;

/** Height of a point of the body at a place along the rig. */
const bodyHeight = (shape: RigShape, pose: RigPose, back: number, left: number, height: number): number =>
  height + bodyRise(shape, pose, back, left);

/** Forward shift of a point that lies above the frame, when the nose goes down [m]. */
const lean = (shape: RigShape, pose: RigPose, height: number): number =>
  pose.body.pitch * (height - (shape.ends.front.frame + shape.ends.rear.frame) / 2);

const frameAt = (shape: RigShape, back: number): number => {
  const share = back / shape.wheelbase;
  return shape.ends.front.frame + (shape.ends.rear.frame - shape.ends.front.frame) * share;
};

export const railItems = (shape: RigShape, pose: RigPose, side: Side, way: 1 | -1): readonly Item[] => {
  const left = leftOf(side, shape.ends.front.stop.spread);
  const at = (back: number, above: number): readonly [number, number] => {
    const height = frameAt(shape, Math.min(Math.max(back, 0), shape.wheelbase)) + above;
    return [way * (-back + lean(shape, pose, height)), bodyHeight(shape, pose, back, left, height)];
  };
  const front = -0.55;
  const rear = shape.wheelbase + 0.6;
  const points = [
    ...at(front, 0.02),
    ...at(-0.2, 0),
    ...at(shape.wheelbase + 0.2, 0),
    ...at(rear, 0.03),
    ...at(rear, RAIL),
    ...at(front, RAIL),
  ];
  return [{ kind: 'polygon', role: 'body', points, name: 'frame' }];
};

/** An outline that says "body" and nothing more: hood, screen, roof and tail in plain strokes, within `room` above the frame. */
export const bodyOutline = (
  shape: RigShape,
  pose: RigPose,
  side: Side,
  way: 1 | -1,
  room: number,
): readonly Item[] => {
  const left = leftOf(side, shape.ends.front.stop.spread);
  const w = shape.wheelbase;
  const profile = [
    -0.5,
    0.1,
    -0.5,
    0.34,
    -0.42,
    0.4,
    0.3 * w,
    0.46,
    0.42 * w,
    0.88,
    0.44 * w,
    0.9,
    0.86 * w,
    0.9,
    0.9 * w,
    0.86,
    w + 0.1,
    0.46,
    w + 0.52,
    0.44,
    w + 0.56,
    0.38,
    w + 0.56,
    0.1,
  ];
  const scale = room / 1.02;
  const points: number[] = [];
  for (let k = 0; k < profile.length; k += 2) {
    const back = profile[k]!;
    const height = frameAt(shape, Math.min(Math.max(back, 0), w)) + profile[k + 1]! * scale;
    points.push(way * (-back + lean(shape, pose, height)), bodyHeight(shape, pose, back, left, height));
  }
  return [{ kind: 'polyline', role: 'body', weight: 'faint', points, name: 'body' }];
};

/** Below the frame, the eye of a link [m]. */
const LINK_DROP = 0.2;

/** A lower link from the axle to the frame towards the middle of the rig. */
export const linkItems = (
  shape: RigShape,
  pose: RigPose,
  end: End,
  side: Side,
  way: 1 | -1,
): readonly Item[] => {
  const at = shape.ends[end];
  const left = leftOf(side, at.stop.spread);
  const back = behindFront(shape, end);
  const reach = Math.min(0.95, shape.wheelbase * 0.34) * (end === 'front' ? 1 : -1);
  const height = frameAt(shape, back + reach) - LINK_DROP;
  const axleY = at.tyreRadius - 0.04 + axleRise(pose, end, left);
  const frameY = bodyHeight(shape, pose, back + reach, left, height);
  const x1 = -way * back;
  const x2 = -way * (back + reach);
  return [
    { kind: 'line', role: 'link', x1, y1: axleY, x2, y2: frameY, weight: 'strong', name: `${end}.link` },
    { kind: 'line', role: 'link', x1: x2, y1: frameY, x2, y2: frameY + LINK_DROP },
    { kind: 'circle', role: 'link', x: x2, y: frameY, radius: 0.028 },
  ];
};
