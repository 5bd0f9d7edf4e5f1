/** A screw thread and what is made to measure for it [m]. */
export interface Thread {
  readonly name: string;
  /** Hole that the screw goes through. */
  readonly clearance: number;
  /** Hexagon nut: across its flats, and its greatest height. */
  readonly acrossFlats: number;
  readonly nutHeight: number;
}

const MM = 1e-3;
const INCH = 0.0254;
const metric = (name: string, clearance: number, acrossFlats: number, nutHeight: number): Thread => ({
  name,
  clearance: clearance * MM,
  acrossFlats: acrossFlats * MM,
  nutHeight: nutHeight * MM,
});
const inch = (name: string, clearance: number, acrossFlats: number, nutHeight: number): Thread => ({
  name,
  clearance: clearance * INCH,
  acrossFlats: acrossFlats * INCH,
  nutHeight: nutHeight * INCH,
});

/**
 * Threads that a foot can be made for.
 *
 * @source metric: clearance ISO 273 medium series, nuts ISO 4032 (style 1); inch: clearance ASME B18.2.8 normal fit, hex
 *   nuts ASME B18.2.2; all from memory
 */
export const THREADS: readonly Thread[] = [
  metric('M6', 6.6, 10, 5.2),
  metric('M8', 9, 13, 6.8),
  metric('M10', 11, 16, 8.4),
  metric('M12', 13.5, 18, 10.8),
  inch('1/4', 9 / 32, 7 / 16, 0.226),
  inch('5/16', 11 / 32, 1 / 2, 0.273),
  inch('3/8', 13 / 32, 9 / 16, 0.337),
  inch('7/16', 15 / 32, 11 / 16, 0.385),
  inch('1/2', 9 / 16, 3 / 4, 0.448),
];

/** A thread by its name; a pitch behind it is of no account to a pocket: `3/8-16`, `M10x1.25`, `m10`. */
export function threadNamed(text: string): Thread | null {
  const bare = text
    .trim()
    .toUpperCase()
    .replace(/"|\s*IN(CH)?$/g, '');
  const name =
    /^(M\d+)(\s*[X×]\s*[\d.]+)?$/.exec(bare)?.[1] ?? /^(\d+\/\d+)(\s*-\s*\d+)?( UN[CF])?$/.exec(bare)?.[1];
  return THREADS.find((one) => one.name === name) ?? null;
}

/** How the foot is held: what the solid plate under the lattice is made with. */
export type Seat =
  /** A hexagon nut, or the hexagon head of a bolt as a stud, laid into the plate while it prints. */
  | { readonly kind: 'nut'; readonly thread: Thread }
  /** A hole for a screw put in from the tip, through a bore that its head passes. */
  | { readonly kind: 'clearance'; readonly thread: Thread }
  /** A blind hole from below for a threaded insert, to the measure of its maker. */
  | { readonly kind: 'insert'; readonly diameter: number; readonly depth: number };

/** Room of a printed pocket around a nut, all over [m] (common practice, no source). */
export const PLAY = 0.4 * MM;
/** Solid between nut and bracket, and above a nut or an insert [m] (common practice, no source). */
export const WEB = 4 * MM;
export const ROOF = 2 * MM;
/** A plate without a seat [m]: two or three lines of a nozzle more than nothing (common practice, no source). */
export const BARE_PLATE = 3 * MM;

/** The least thickness of a plate that holds a seat [m]. */
export function plateFor(seat: Seat | null): number {
  switch (seat?.kind) {
    case undefined:
      return BARE_PLATE;
    case 'nut':
      return WEB + seat.thread.nutHeight + PLAY + ROOF;
    case 'clearance':
      return WEB;
    case 'insert':
      return seat.depth + ROOF;
  }
}

/** Where to lay a nut in [m]: the height of the print at which its pocket is still open. */
export const pauseHeight = ({ nutHeight }: Thread): number => WEB + nutHeight + PLAY;

/** The widest that a seat cuts out of its plate [m]: across the corners of the hexagon, or the hole. */
export function seatWidth(seat: Seat): number {
  switch (seat.kind) {
    case 'nut':
      return (2 / Math.sqrt(3)) * (seat.thread.acrossFlats + PLAY);
    case 'clearance':
      return seat.thread.clearance;
    case 'insert':
      return seat.diameter;
  }
}

/** What the head of a screw, and its washer, need to pass [m]: across the corners of its hexagon, and as much play. */
export const headRoom = ({ acrossFlats }: Thread): number => (2 / Math.sqrt(3)) * acrossFlats + 2 * PLAY;
