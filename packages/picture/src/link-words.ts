import type { PaperPoint } from './link-view.ts';
import type { Box, Item, TextItem } from './scene.ts';
import { LINE_HEIGHT, textBox, textWidth } from './text-width.ts';

/** A word that wants to stand beside a place. */
export interface Named {
  readonly text: string;
  readonly at: PaperPoint;
}

const SIZE = 11.5;
/** How far from its place a word may stand [px], nearest first. */
const FAR = [10, 16, 22, 30] as const;

/** Ways that a word may stand from its place: above, below, right, left, and between. */
const WAYS = [
  [0, 1],
  [0, -1],
  [1, 0],
  [-1, 0],
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
] as const;

/**
 * Puts words beside their places so that they lie over no other word and no joint, and inside the picture; first come,
 * first served. A word for which there is no room is left out: everything it names is also said in the table.
 */
export const placeWords = (
  names: readonly Named[],
  drawn: readonly Item[],
  bounds: Box,
  pixel: number,
): readonly TextItem[] => {
  const taken: Box[] = drawn.flatMap((item) => boxOf(item, pixel));
  const lines = drawn.flatMap(strokesOf);
  const placed: TextItem[] = [];
  for (const { text, at } of names) {
    const best = bestPlace(text, at, { taken, lines, bounds, pixel });
    if (best === null) continue;
    placed.push(best.item);
    taken.push(best.box);
  }
  return placed;
};

interface Surroundings {
  readonly taken: readonly Box[];
  readonly lines: readonly Stroke[];
  readonly bounds: Box;
  readonly pixel: number;
}

interface Place {
  readonly item: TextItem;
  readonly box: Box;
}

/** The nearest place that crosses nothing, else the one that crosses least; null where there is no room at all. */
const bestPlace = (
  text: string,
  at: PaperPoint,
  { taken, lines, bounds, pixel }: Surroundings,
): Place | null => {
  const half = (textWidth(text, SIZE) / 2) * pixel;
  const reach = FAR[FAR.length - 1]! * pixel;
  const around: Box = {
    left: at[0] - reach - 2 * half,
    right: at[0] + reach + 2 * half,
    bottom: at[1] - reach - SIZE * pixel,
    top: at[1] + reach + SIZE * pixel,
  };
  // Dragging draws this anew in each frame: what is far away is not looked at thirty times.
  const near = lines.filter((line) => crosses(around, line));
  let best: Place | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const far of FAR)
    for (const [wx, wy] of WAYS) {
      const x = at[0] + wx * (far * pixel + half);
      const y = at[1] + wy * far * pixel;
      const item: TextItem = {
        kind: 'text',
        role: 'note',
        x,
        y,
        text,
        size: SIZE,
        anchor: 'middle',
        rimmed: true,
      };
      const box = boxAround(x, y, half, pixel);
      const inside =
        box.left >= bounds.left &&
        box.right <= bounds.right &&
        box.bottom >= bounds.bottom &&
        box.top <= bounds.top;
      if (!inside || taken.some((other) => overlap(box, other))) continue;
      let crossed = 0;
      for (const line of near) if (crosses(box, line)) crossed += line.heavy;
      if (crossed < least) {
        best = { item, box };
        least = crossed;
      }
      if (crossed === 0) return best;
    }
  return best;
};

const boxAround = (x: number, y: number, half: number, pixel: number): Box => {
  const high = (SIZE * LINE_HEIGHT * pixel) / 2;
  return { left: x - half, right: x + half, bottom: y - high, top: y + high };
};

/** What no word may lie on: other words, and the small marks of joints and centres. */
const boxOf = (item: Item, pixel: number): readonly Box[] => {
  if (item.kind === 'text') return [textBox(item, pixel)];
  if (item.kind === 'circle' && item.radius < 12 * pixel)
    return [
      {
        left: item.x - item.radius,
        right: item.x + item.radius,
        bottom: item.y - item.radius,
        top: item.y + item.radius,
      },
    ];
  if (item.kind === 'rect')
    return [{ left: item.x, right: item.x + item.width, bottom: item.y, top: item.y + item.height }];
  return [];
};

const overlap = (one: Box, other: Box): boolean =>
  one.left < other.right && other.left < one.right && one.bottom < other.top && other.bottom < one.top;

interface Stroke {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  /** How much a word would rather not lie on it. */
  readonly heavy: number;
}

/** Lines, and polylines piece by piece; words keep off strong ones first. */
const strokesOf = (item: Item): readonly Stroke[] => {
  const heavy = item.weight === 'strong' ? 3 : 1;
  if (item.kind === 'line') return [{ x1: item.x1, y1: item.y1, x2: item.x2, y2: item.y2, heavy }];
  if (item.kind !== 'polyline') return [];
  const { points } = item;
  const strokes: Stroke[] = [];
  for (let k = 3; k < points.length; k += 2)
    strokes.push({
      x1: points[k - 3] ?? 0,
      y1: points[k - 2] ?? 0,
      x2: points[k - 1] ?? 0,
      y2: points[k] ?? 0,
      heavy,
    });
  return strokes;
};

/** Whether a line passes through a box: spans that meet, and corners on both sides of it. */
const crosses = (box: Box, { x1, y1, x2, y2 }: Stroke): boolean => {
  if (Math.max(x1, x2) < box.left || Math.min(x1, x2) > box.right) return false;
  if (Math.max(y1, y2) < box.bottom || Math.min(y1, y2) > box.top) return false;
  // Both spans meet: it misses only where all four corners lie on one side of it.
  const side = (x: number, y: number): number => (x2 - x1) * (y - y1) - (y2 - y1) * (x - x1);
  const corners = [
    side(box.left, box.bottom),
    side(box.left, box.top),
    side(box.right, box.bottom),
    side(box.right, box.top),
  ] as const;
  return Math.min(...corners) <= 0 && Math.max(...corners) >= 0;
};
