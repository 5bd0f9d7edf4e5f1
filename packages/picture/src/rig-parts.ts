import type { Role } from './role.ts';
import type { Item } from './scene.ts';

/** Two points that a part is stretched between, the lower on the axle. */
export interface Between {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** A coil as its side is drawn: slanting wires between two seats. `turns` stay the same, so it opens and closes. */
export const coilItems = (
  { x1, y1, x2, y2 }: Between,
  { radius, turns, name }: { readonly radius: number; readonly turns: number; readonly name: string },
): readonly Item[] => {
  const points: number[] = [x1 - radius, y1];
  for (let k = 1; k < 2 * turns; k += 1) {
    const share = k / (2 * turns);
    points.push(x1 + (x2 - x1) * share + (k % 2 === 1 ? radius : -radius), y1 + (y2 - y1) * share);
  }
  points.push(x2 + radius, y2);
  return [
    { kind: 'polyline', role: 'spring', points, name },
    { kind: 'line', role: 'spring', x1: x1 - radius, y1, x2: x1 + radius, y2: y1 },
    { kind: 'line', role: 'spring', x1: x2 - radius, y1: y2, x2: x2 + radius, y2 },
  ];
};

/** A shock: its tube hangs from the upper eye, its rod comes up from the lower one. */
export const shockItems = (
  { x1, y1, x2, y2 }: Between,
  { width, bodyLength, name }: { readonly width: number; readonly bodyLength: number; readonly name: string },
): readonly Item[] => {
  const long = Math.hypot(x2 - x1, y2 - y1) || 1;
  const ux = (x2 - x1) / long;
  const uy = (y2 - y1) / long;
  const tube = Math.min(bodyLength, long);
  const half = width / 2;
  const bx = x2 - ux * tube;
  const by = y2 - uy * tube;
  const eye = width * 0.45;
  const corners = [
    bx - uy * half,
    by + ux * half,
    bx + uy * half,
    by - ux * half,
    x2 + uy * half - ux * eye,
    y2 - ux * half - uy * eye,
    x2 - uy * half - ux * eye,
    y2 + ux * half - uy * eye,
  ];
  return [
    { kind: 'line', role: 'shock', x1, y1, x2: bx, y2: by },
    { kind: 'polygon', role: 'shock', points: corners, name },
    { kind: 'circle', role: 'shock', x: x1, y: y1, radius: eye },
    { kind: 'circle', role: 'shock', x: x2, y: y2, radius: eye },
  ];
};

/** What the drawing of a stop needs, all in heights [m]. */
export interface StopDrawn {
  readonly x: number;
  /** Underside of its mount on the frame, and its tip. */
  readonly base: number;
  readonly tip: number;
  /** Length without load, to know how far it bulges. */
  readonly length: number;
  readonly width: number;
  readonly name: string;
}

/** A stop: a block that narrows to its tip and bulges as it is crushed, its volume about kept. */
export const stopItems = ({ x, base, tip, length, width, name }: StopDrawn): readonly Item[] => {
  const left = Math.max(base - tip, length * 0.08);
  const bulge = Math.min(1.9, Math.sqrt(length / left));
  const half = (width / 2) * bulge;
  const top = width * 0.5;
  const foot = width * 0.34 * (1 + (bulge - 1) * 1.3);
  const y = (share: number): number => base - left * share;
  return [
    {
      kind: 'polygon',
      role: 'stop',
      points: [
        x - top,
        y(0),
        x - half * 0.98,
        y(0.18),
        x - half,
        y(0.5),
        x - half * 0.92,
        y(0.78),
        x - foot,
        y(1),
        x + foot,
        y(1),
        x + half * 0.92,
        y(0.78),
        x + half,
        y(0.5),
        x + half * 0.98,
        y(0.18),
        x + top,
        y(0),
      ],
      name,
    },
  ];
};

/** What hangs from the frame above a stop or a coil: a mount as far as it goes, then the solid pieces put in below. */
export const mountItems = (
  x: number,
  {
    frame,
    base,
    spacer,
    width,
    name,
  }: {
    readonly frame: number;
    readonly base: number;
    readonly spacer: number;
    readonly width: number;
    readonly name: string;
  },
): readonly Item[] => {
  const items: Item[] = [];
  const solid = Math.min(Math.max(spacer, 0), Math.max(frame - base, 0));
  const rest = frame - base - solid;
  if (rest > THINNEST) {
    items.push({
      kind: 'rect',
      role: 'body',
      x: x - width * 0.3,
      y: base + solid,
      width: width * 0.6,
      height: rest,
    });
  }
  if (solid > THINNEST) {
    items.push({
      kind: 'rect',
      role: 'pad',
      x: x - width / 2,
      y: base,
      width,
      height: solid,
      name: `${name}.spacer`,
    });
  }
  return items;
};

/** Thinner than this is rounding, not a piece [m]. */
const THINNEST = 1e-6;

/** A burst around the place where metal met metal. */
export const burstItem = (x: number, y: number, radius: number, role: Role = 'fail'): Item => {
  const points: number[] = [];
  const rays = 8;
  for (let k = 0; k < 2 * rays; k += 1) {
    const r = k % 2 === 0 ? radius : radius * 0.5;
    const angle = (Math.PI * k) / rays + Math.PI / 2;
    points.push(x + r * Math.cos(angle), y + r * Math.sin(angle));
  }
  return { kind: 'polygon', role, weight: 'strong', points, name: 'metal' };
};
