import { type Outline, outlineArea, outlineLength, type PlateCorner, roundedOutline } from './outline.ts';

/** A plate to be cut, flat, in its own frame: x along, y across [m]. */
export interface Plate {
  readonly kind: 'top' | 'gusset' | 'standoff' | 'pad';
  readonly thickness: number;
  /** Counter-clockwise, of the finished edge. */
  readonly corners: readonly PlateCorner[];
  readonly holes: readonly PlateHole[];
  readonly bends: readonly PlateBend[];
}

export interface PlateHole {
  /** Middle [m]. */
  readonly x: number;
  readonly y: number;
  /** Finished width [m]; of a round one its diameter. */
  readonly width: number;
  /** Finished length over all [m]; the same as the width for a round one. */
  readonly length: number;
  /** Of a slot against x [rad]. */
  readonly turn: number;
  readonly what: 'stud' | 'bolt';
}

/** A line along which it is bent. */
export interface PlateBend {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  /** [rad] from flat. */
  readonly angle: number;
  readonly insideRadius: number;
  /** How wide the bent part is while it lies flat, half of it on each side of the line [m]. */
  readonly allowance: number;
}

/** What a cutter follows. */
export interface PlateCut {
  readonly outside: Outline;
  readonly holes: readonly HoleCut[];
}
export type HoleCut =
  | { readonly kind: 'round'; readonly x: number; readonly y: number; readonly radius: number }
  | { readonly kind: 'slot'; readonly outline: Outline };

/**
 * Where the middle of the cut must run so that the finished edges come out right: half a kerf outside the plate and inside
 * its holes.
 *
 * @param kerf – width of the cut [m] ≥ 0; 0 for a machine that takes it into account by itself
 */
export function plateCut({ corners, holes }: Plate, kerf: number): PlateCut {
  return {
    outside: roundedOutline(corners, kerf / 2),
    holes: holes.map((hole) => holeCut(hole, kerf)),
  };
}

function holeCut({ x, y, width, length, turn }: PlateHole, kerf: number): HoleCut {
  const radius = (width - kerf) / 2;
  if (length <= width) return { kind: 'round', x, y, radius };
  const half = (length - width) / 2;
  const [along, across] = [Math.cos(turn), Math.sin(turn)];
  const at = (u: number, v: number, bulge: number) => ({
    x: x + u * along - v * across,
    y: y + u * across + v * along,
    bulge,
  });
  return {
    kind: 'slot',
    outline: [at(-half, -radius, 0), at(half, -radius, 1), at(half, radius, 0), at(-half, radius, 1)],
  };
}

/** Finished area of one face [m²], holes taken out. */
export function plateArea(plate: Plate): number {
  const { outside, holes } = plateCut(plate, 0);
  return outlineArea(outside) - holes.reduce((sum, hole) => sum + holeArea(hole), 0);
}

const holeArea = (hole: HoleCut): number =>
  hole.kind === 'round' ? Math.PI * hole.radius ** 2 : outlineArea(hole.outline);

/** Length of all cuts [m]. */
export function cutLength(plate: Plate, kerf: number): number {
  const { outside, holes } = plateCut(plate, kerf);
  return (
    outlineLength(outside) +
    holes.reduce(
      (sum, hole) => sum + (hole.kind === 'round' ? 2 * Math.PI * hole.radius : outlineLength(hole.outline)),
      0,
    )
  );
}

/** Steel [kg/m³]. @source from memory: 7850 is the usual value, also of EN 1991-1-1 Table A.4 (77 to 78.5 kN/m³) */
const STEEL = 7850;

/** Mass of a plate of steel [kg]. */
export const plateMass = (plate: Plate): number => plateArea(plate) * plate.thickness * STEEL;
