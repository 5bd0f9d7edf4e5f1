/** A function of place: positive on the side that is meant, about the distance to its zero [m]. Smooth near its zero. */
export type Field = (x: number, y: number, z: number) => number;

/**
 * A body told by fields: at each place each field is on its positive side or not, and the body says for which of these
 * it is solid.
 *
 * @invariant `isSolid` never falls when one more field turns positive. So surfaces of two fields meet in an edge and
 *   never cross through each other, which keeps the surface of the body a manifold.
 */
export interface FieldBody {
  readonly fields: readonly Field[];
  /** @param positive – bit k is set where field k is positive */
  readonly isSolid: (positive: number) => boolean;
  /** A box around the body [m]. */
  readonly from: readonly [x: number, y: number, z: number];
  readonly to: readonly [x: number, y: number, z: number];
}
