/** A bolt in a hole of a wall. */
export interface BoltedWall {
  readonly boltDiameter: number;
  readonly holeDiameter: number;
  readonly wall: number;
  /** Centre of the hole to the edge that the force runs to [m]. */
  readonly edge: number;
  /** Ultimate strengths of wall and bolt [Pa]. */
  readonly wallUltimate: number;
  readonly boltUltimate: number;
}

/**
 * Force at which a bolt tears or crushes its wall [N]: F = 2.5·α·f_u·d·t, α = min(e₁/(3·d₀), f_ub/f_u, 1), without partial
 * factor. Far from other edges.
 * @source EN 1993-1-8:2005, table 3.4 (from memory)
 */
export function boltBearing(bolted: BoltedWall): number {
  const { boltDiameter, holeDiameter, wall, edge, wallUltimate, boltUltimate } = bolted;
  const alpha = Math.min(edge / (3 * holeDiameter), boltUltimate / wallUltimate, 1);
  return 2.5 * alpha * wallUltimate * boltDiameter * wall;
}
