import type { PaperPoint } from './link-view.ts';
import type { Role } from './role.ts';
import type { Item } from './scene.ts';

/** How one setup is drawn: round marks and unbroken lines, or square marks and broken lines. */
export interface Hand {
  readonly role: Extract<Role, 'first' | 'second'>;
  /** Metres for one pixel: marks keep their size at any scale. */
  readonly pixel: number;
}

/** Half the size of a joint [px]. */
const JOINT = 5;
const CENTRE = 8;

/** A joint: with a dot where it moves with the axle, open where it stays on the frame; round or square by setup. */
export const jointItems = (
  { role, pixel }: Hand,
  [x, y]: PaperPoint,
  on: 'axle' | 'frame',
  name: string,
): readonly Item[] => {
  const size = JOINT * pixel;
  const mark = (of: Role, named?: string): Item =>
    role === 'first'
      ? { kind: 'circle', role: of, x, y, radius: size, ...(named === undefined ? {} : { name: named }) }
      : {
          kind: 'rect',
          role: of,
          x: x - size * 0.9,
          y: y - size * 0.9,
          width: size * 1.8,
          height: size * 1.8,
          ...(named === undefined ? {} : { name: named }),
        };
  const items = [mark('paper'), mark(role, name)];
  return on === 'frame' ? items : [...items, { kind: 'circle', role: 'contact', x, y, radius: size * 0.35 }];
};

/** A point in space where nothing is bolted: a cross in a ring, or in a square. */
export const centreItems = ({ role, pixel }: Hand, [x, y]: PaperPoint, name: string): readonly Item[] => {
  const size = CENTRE * pixel;
  const ring: Item =
    role === 'first'
      ? { kind: 'circle', role, x, y, radius: size * 0.6, name }
      : {
          kind: 'rect',
          role,
          x: x - size * 0.6,
          y: y - size * 0.6,
          width: size * 1.2,
          height: size * 1.2,
          name,
        };
  return [
    ring,
    { kind: 'line', role, weight: 'strong', x1: x - size, y1: y, x2: x + size, y2: y },
    { kind: 'line', role, weight: 'strong', x1: x, y1: y - size, x2: x, y2: y + size },
  ];
};

/** A joint of a driveshaft: two strokes across each other. */
export const crossItems = ({ role, pixel }: Hand, [x, y]: PaperPoint, name: string): readonly Item[] => {
  const size = JOINT * pixel;
  return [
    { kind: 'line', role, weight: 'strong', x1: x - size, y1: y - size, x2: x + size, y2: y + size, name },
    { kind: 'line', role, weight: 'strong', x1: x - size, y1: y + size, x2: x + size, y2: y - size },
  ];
};

export const lineItem = (
  { role }: Hand,
  [x1, y1]: PaperPoint,
  [x2, y2]: PaperPoint,
  rest: { readonly weight?: 'strong' | 'faint'; readonly name?: string } = {},
): Item => ({ kind: 'line', role, x1, y1, x2, y2, ...rest });

/** A coil between its two seats, as its side is drawn. */
export const coilLine = (
  { role, pixel }: Hand,
  [x1, y1]: PaperPoint,
  [x2, y2]: PaperPoint,
  name: string,
): Item => {
  const long = Math.hypot(x2 - x1, y2 - y1) || 1;
  const half = Math.min(long * 0.12, 9 * pixel);
  const [nx, ny] = [(-(y2 - y1) / long) * half, ((x2 - x1) / long) * half];
  const points = [x1, y1];
  const turns = 10;
  for (let k = 1; k < turns; k += 1) {
    const way = k % 2 === 0 ? -1 : 1;
    points.push(x1 + ((x2 - x1) * k) / turns + way * nx, y1 + ((y2 - y1) * k) / turns + way * ny);
  }
  points.push(x2, y2);
  return { kind: 'polyline', role, weight: 'faint', points, name };
};

/** A circle as a line, so that it is broken where the hand's lines are. */
export const ringItem = (
  { role }: Hand,
  [x, y]: PaperPoint,
  radius: number,
  rest: { readonly weight?: 'strong' | 'faint'; readonly name?: string } = {},
): Item => {
  const corners = 72;
  const points: number[] = [];
  for (let k = 0; k <= corners; k += 1) {
    const angle = (2 * Math.PI * k) / corners;
    points.push(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
  }
  return { kind: 'polyline', role, points, ...rest };
};
