import type { Problem } from '../finding/problem.ts';
import type { PlateCorner } from './outline.ts';
import type { Plate, PlateHole } from './plate.ts';

/** Doubts about a plate that can be cut all the same. */
export const PLATE_DOUBTS = ['edge-thin', 'holes-close', 'bend-tight', 'bend-length'] as const;
export type PlateDoubt = (typeof PLATE_DOUBTS)[number];

/** @source EN 1993-1-8:2005, Table 3.3: least end and edge distance 1.2 d0, least spacing 2.2 d0; from memory */
const LEAST_EDGE = 1.2;
const LEAST_SPACING = 2.2;

/** What makes a plate impossible to cut; nothing when it can be. */
export function plateProblems({ corners, holes, bends, thickness }: Plate, kerf: number): readonly Problem[] {
  const problems: Problem[] = [];
  const refuse = (key: string, found: string, accepted: string): void => {
    problems.push({ code: 'ask-plate', where: { key }, found, accepted });
  };
  if (!(thickness > 0)) refuse('thickness', 'nothing', 'more than zero');
  for (const [k, corner] of corners.entries()) {
    const next = corners[(k + 1) % corners.length]!;
    if (room(corner, next, corners, k) < -1e-9) {
      refuse('radius', 'corners that overlap', 'sides that are longer than their rounded corners take');
      break;
    }
  }
  for (const [k, { y1, allowance }] of bends.entries()) {
    const before = bends[k - 1];
    if (before && y1 - before.y1 < allowance)
      refuse('web', 'bends that overlap', 'a web wider than two bends');
    if (k === 0 && corners.some(({ y }) => Math.abs(y) - Math.abs(y1) < allowance / 2))
      refuse('flange', 'a flange within its bend', 'a flange longer than inside radius and thickness');
  }
  for (const hole of holes) {
    const key = hole.what === 'stud' ? 'stud' : 'bolt';
    if (hole.width <= kerf)
      refuse(key, 'a hole narrower than the cut', 'a hole wider than the kerf; drill it instead');
    if (edgeOf(hole, corners) <= hole.width / 2)
      refuse(key, 'a hole over the edge', 'a hole within the plate');
  }
  return problems;
}

/** What somebody should look at before a plate is cut. */
export function plateDoubts({ corners, holes, bends, thickness }: Plate): readonly PlateDoubt[] {
  const doubts = new Set<PlateDoubt>();
  for (const [k, hole] of holes.entries()) {
    if (edgeOf(hole, corners) < LEAST_EDGE * hole.width) doubts.add('edge-thin');
    for (const other of holes.slice(k + 1))
      if (Math.hypot(hole.x - other.x, hole.y - other.y) < LEAST_SPACING * Math.max(hole.width, other.width))
        doubts.add('holes-close');
  }
  for (const { insideRadius } of bends) {
    doubts.add('bend-length');
    if (insideRadius < thickness) doubts.add('bend-tight');
  }
  return [...doubts];
}

/** What is left of a side between its rounded corners [m]. */
function room(one: PlateCorner, next: PlateCorner, corners: readonly PlateCorner[], k: number): number {
  const n = corners.length;
  const taken = (at: number): number => {
    const [a, b, c] = [corners[(at + n - 1) % n]!, corners[at % n]!, corners[(at + 1) % n]!];
    const turn = Math.atan2(c.y - b.y, c.x - b.x) - Math.atan2(b.y - a.y, b.x - a.x);
    const half = Math.abs(Math.tan(Math.atan2(Math.sin(turn), Math.cos(turn)) / 2));
    return b.radius * half;
  };
  return Math.hypot(next.x - one.x, next.y - one.y) - taken(k) - taken(k + 1);
}

/** From the middle of a hole, or the nearer round end of a slot, to the nearest side [m]; negative outside. */
function edgeOf({ x, y, width, length, turn }: PlateHole, corners: readonly PlateCorner[]): number {
  const half = Math.max(0, length - width) / 2;
  const ends = [-half, half].map((u) => ({ x: x + u * Math.cos(turn), y: y + u * Math.sin(turn) }));
  const sides = corners.map((a, k) => {
    const b = corners[(k + 1) % corners.length]!;
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    return Math.min(...ends.map((end) => ((b.x - a.x) * (end.y - a.y) - (b.y - a.y) * (end.x - a.x)) / long));
  });
  return Math.min(...sides);
}
