/**
 * A closed contour of straight lines and arcs, counter-clockwise [m]. `bulge` bends the way to the next point: the tangent of
 * a quarter of the arc's angle, positive to the left; 0 is straight.
 */
export interface OutlinePoint {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}
export type Outline = readonly OutlinePoint[];

/** A corner of a plate, rounded by `radius` [m]. */
export interface PlateCorner {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** Shorter than this is no way at all [m]. */
const NOTHING = 1e-9;

/**
 * The contour round corners, counter-clockwise: each corner is replaced by the arc that touches both of its sides.
 *
 * @param corners – counter-clockwise, no two alike, none on the line between its neighbours
 * @param grow – moves every side outward by so much, minus inward [m]: a cut on the outside of a line
 * @invariant radii grow with an outward corner and shrink with an inward one, so that the contours stay parallel
 */
export function roundedOutline(corners: readonly PlateCorner[], grow = 0): Outline {
  const points: OutlinePoint[] = [];
  const add = (x: number, y: number, bulge: number): void => {
    const last = points.at(-1);
    if (last && last.bulge === 0 && Math.hypot(last.x - x, last.y - y) < NOTHING) points.pop();
    points.push({ x, y, bulge });
  };
  for (const [k, { x, y, radius }] of corners.entries()) {
    const before = corners[(k + corners.length - 1) % corners.length]!;
    const after = corners[(k + 1) % corners.length]!;
    const [ax, ay] = towards(before, { x, y });
    const [bx, by] = towards({ x, y }, after);
    const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    const outward = turn > 0;
    const rounded = Math.max(0, radius + (outward ? grow : -grow));
    // The moved corner lies where both moved sides meet.
    const half = Math.tan(turn / 2);
    const [cx, cy] = [x + grow * (ay + half * ax), y - grow * (ax - half * ay)];
    const back = rounded * Math.abs(half);
    if (back < NOTHING) {
      add(cx, cy, 0);
      continue;
    }
    add(cx - ax * back, cy - ay * back, Math.tan(turn / 4));
    add(cx + bx * back, cy + by * back, 0);
  }
  return joined(points);
}

/** A side of no length between the last point and the first is left out. */
function joined(points: OutlinePoint[]): Outline {
  const [first, last] = [points[0], points.at(-1)];
  if (
    points.length > 2 &&
    first &&
    last &&
    last.bulge === 0 &&
    Math.hypot(first.x - last.x, first.y - last.y) < NOTHING
  )
    points.pop();
  return points;
}

const towards = (from: { x: number; y: number }, to: { x: number; y: number }): readonly [number, number] => {
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  return [(to.x - from.x) / long, (to.y - from.y) / long];
};

/** Area within a contour [m²], positive counter-clockwise: polygon of its points and the caps of its arcs. */
export function outlineArea(outline: Outline): number {
  let area = 0;
  for (const [{ x, y, bulge }, next] of ways(outline)) {
    area += (x * next.y - next.x * y) / 2;
    if (bulge === 0) continue;
    const { radius, angle } = arcOf(Math.hypot(next.x - x, next.y - y), bulge);
    area += (radius * radius * (angle - Math.sin(angle))) / 2;
  }
  return area;
}

/** Way round a contour [m]: what the torch goes. */
export function outlineLength(outline: Outline): number {
  let length = 0;
  for (const [{ x, y, bulge }, next] of ways(outline)) {
    const chord = Math.hypot(next.x - x, next.y - y);
    if (bulge === 0) length += chord;
    else {
      const { radius, angle } = arcOf(chord, bulge);
      length += radius * Math.abs(angle);
    }
  }
  return length;
}

const ways = (outline: Outline): readonly (readonly [OutlinePoint, OutlinePoint])[] =>
  outline.map((point, k) => [point, outline[(k + 1) % outline.length]!]);

/** Radius [m] and signed angle [rad] of the arc over a chord. */
export const arcOf = (chord: number, bulge: number): { readonly radius: number; readonly angle: number } => ({
  radius: (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
  angle: 4 * Math.atan(bulge),
});
