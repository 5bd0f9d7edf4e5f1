import { bendAllowance } from './flat-pattern.ts';
import type { PlateCorner } from './outline.ts';
import type { Plate, PlateHole } from './plate.ts';

interface Rectangle {
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** Of its corners. */
  readonly radius: number;
}

/** Four bolt holes at the corners of a rectangle, or slots along x. */
export interface BoltPattern {
  readonly diameter: number;
  /** Between middles [m]. */
  readonly along: number;
  readonly across: number;
  /** Length over all of slots [m]; the diameter or less makes round holes. */
  readonly slot: number;
}

const rectangle = ({ length, width, radius }: Omit<Rectangle, 'thickness'>): readonly PlateCorner[] => {
  const [x, y] = [length / 2, width / 2];
  return [
    { x: -x, y: -y, radius },
    { x, y: -y, radius },
    { x, y, radius },
    { x: -x, y, radius },
  ];
};

const round = (x: number, y: number, width: number, what: PlateHole['what'], length = width): PlateHole => ({
  x,
  y,
  width,
  length: Math.max(width, length),
  turn: 0,
  what,
});

const patternOf = (bolts: BoltPattern | null): readonly PlateHole[] =>
  bolts === null
    ? []
    : [-1, 1].flatMap((v) =>
        [-1, 1].map((u) =>
          round((u * bolts.along) / 2, (v * bolts.across) / 2, bolts.diameter, 'bolt', bolts.slot),
        ),
      );

/** A plate that a stop or seat is bolted to: a stud hole in its middle, bolts round it. Zero stud: no hole. */
export const topPlate = (size: Rectangle, stud: number, bolts: BoltPattern | null): Plate => ({
  kind: 'top',
  thickness: size.thickness,
  corners: rectangle(size),
  holes: [...(stud > 0 ? [round(0, 0, stud, 'stud')] : []), ...patternOf(bolts)],
  bends: [],
});

/** A strike pad: round, or a rectangle; with a hole in its middle for a bolt, or none. */
export const padPlate = (size: Rectangle, hole: number): Plate => ({
  ...topPlate(size, hole, null),
  kind: 'pad',
});

/**
 * A gusset in the corner of two parts that stand square: foot along x, height along y. Its corner is cut away so that it clears
 * the weld, its ends are blunt so that they can be welded round.
 */
export function gussetPlate(size: {
  readonly foot: number;
  readonly height: number;
  readonly thickness: number;
  /** Height of the blunt ends [m]. */
  readonly toe: number;
  /** Leg of the cut corner [m]. */
  readonly relief: number;
}): Plate {
  const { foot, height, toe, relief } = size;
  const at = (x: number, y: number): PlateCorner => ({ x, y, radius: 0 });
  const inner = relief > 0 ? [at(0, relief), at(relief, 0)] : [at(0, 0)];
  return {
    kind: 'gusset',
    thickness: size.thickness,
    corners: [...inner, at(foot, 0), at(foot, toe), at(toe, height), at(0, height)],
    holes: [],
    bends: [],
  };
}

/**
 * A standoff bent from one plate: a web and two flanges, a U seen from its end. Laid out flat with its bend lines.
 *
 *     flat width = web + 2·flange − 2·(2·(r + t) − A)
 *
 * @param size – web and flange are outside sizes of the bent part [m]
 */
export function standoffPlate(
  size: {
    readonly length: number;
    readonly web: number;
    readonly flange: number;
    readonly thickness: number;
    readonly insideRadius: number;
  },
  stud: number,
): Plate {
  const { length, web, flange, thickness, insideRadius } = size;
  const angle = Math.PI / 2;
  const allowance = bendAllowance(angle, insideRadius, thickness);
  const setback = insideRadius + thickness;
  const straightWeb = web - 2 * setback;
  const width = straightWeb + 2 * (flange - setback) + 2 * allowance;
  const bendAt = straightWeb / 2 + allowance / 2;
  const bend = (y: number) => ({
    x1: -length / 2,
    y1: y,
    x2: length / 2,
    y2: y,
    angle,
    insideRadius,
    allowance,
  });
  return {
    kind: 'standoff',
    thickness,
    corners: rectangle({ length, width, radius: 0 }),
    holes: stud > 0 ? [round(0, 0, stud, 'stud')] : [],
    bends: [bend(-bendAt), bend(bendAt)],
  };
}
