/** A closed surface: triangles over shared points, seen from outside each runs counter-clockwise. */
export interface SolidMesh {
  /** x, y, z of each point in turn [m]; z from the foot up. */
  readonly points: Float32Array;
  /** Three places in the list of points for each triangle. */
  readonly triangles: Uint32Array;
}
