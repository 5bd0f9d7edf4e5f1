import type { PrintedBody } from '@lastinch/core';
import type { Seat } from './seat.ts';

/** Holes through the skin, evenly round it, one cell above the plate. */
export interface Vents {
  readonly count: number;
  readonly diameter: number;
}

/** A stop as a solid to print. Lengths in metres. */
export interface SolidRequest {
  /** Outline, bore, skin and density of the lattice, as its curve was worked out with; its height is that of the lattice. */
  readonly body: PrintedBody;
  /** Edge of a lattice cell. */
  readonly cell: number;
  /** Solid plate below the lattice, on top of its height; 0 for none. */
  readonly plate: number;
  /** How the plate is held; null where it is not. */
  readonly seat: Seat | null;
  /** Solid layer above the lattice, on top of its height; 0 for none. */
  readonly cap: number;
  readonly vents: Vents | null;
}
