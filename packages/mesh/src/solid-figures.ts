/** What a solid came out as. Lengths in metres, volumes in cubic metres. */
export interface SolidFigures {
  /** Of plate, lattice and cap together. */
  readonly height: number;
  readonly plate: number;
  readonly volume: number;
  /** From the foot of the lattice up, in slices of about one cell. */
  readonly slices: readonly MadeSlice[];
  /** Largest |made ÷ asked − 1| of a slice. */
  readonly worst: number;
  /** Thinnest wall of the lattice, and how far above the foot of the lattice it is. */
  readonly wall: { readonly thinnest: number; readonly at: number };
  readonly triangles: number;
  /** Edge of the cubes that the surface was cut from. */
  readonly grid: number;
  /** Crumbs that hung on nothing, each under a cubic millimetre: left out. */
  readonly crumbs: Loose;
  /** Hollows without a way out: they hold air, or powder. */
  readonly hollows: Loose;
}

/** A slice of the lattice, heights above its foot. */
export interface MadeSlice {
  readonly from: number;
  readonly to: number;
  /** Share of the outline that is to be solid, skin and all, and that is. */
  readonly asked: number;
  readonly made: number;
}

export interface Loose {
  readonly count: number;
  readonly volume: number;
}
