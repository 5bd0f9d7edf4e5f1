import type { Vector } from '@lastinch/core';
import type { Box } from './scene.ts';

/** From the right with forward to the right, from behind with left on the left, from above with forward to the right. */
export const LINK_VIEWS = ['side', 'rear', 'top'] as const;
export type LinkView = (typeof LINK_VIEWS)[number];

export type PaperPoint = readonly [number, number];

/** A point of the rig (x forward, y left, z up) on the paper of a view [m]. */
export const onPaper = (view: LinkView, [x, y, z]: Vector): PaperPoint =>
  view === 'side' ? [x, z] : view === 'rear' ? [-y, z] : [x, y];

/** A move on the paper of a view as a move of the rig; what the view does not show stays. */
export const offPaper = (view: LinkView, [across, up]: PaperPoint): Vector =>
  view === 'side' ? [across, 0, up] : view === 'rear' ? [0, -across, up] : [across, up, 0];

/** Where a line from a point inside a box towards another leaves it; the other point where it is inside too. */
export const withinBox = (box: Box, [x1, y1]: PaperPoint, [x2, y2]: PaperPoint): PaperPoint => {
  const share = (from: number, to: number, low: number, high: number): number =>
    to > high ? (high - from) / (to - from) : to < low ? (low - from) / (to - from) : 1;
  const most = Math.max(0, Math.min(share(x1, x2, box.left, box.right), share(y1, y2, box.bottom, box.top)));
  return [x1 + (x2 - x1) * most, y1 + (y2 - y1) * most];
};

export const isInside = (box: Box, [x, y]: PaperPoint, margin = 0): boolean =>
  x >= box.left + margin && x <= box.right - margin && y >= box.bottom + margin && y <= box.top - margin;
