/**
 * Tyre on a point of ground: F = static + rate·d + damping·d′, d = ground − wheel; and no force at all where either
 * the elastic part or the sum would pull. A tyre can leave the ground.
 *
 * @param elastic – static load + rate·d [N]
 * @param damping – [N·s/m]
 * @param closing – d′ [m/s]: how fast ground and wheel approach
 * @returns force on the axle, up [N], while `tyreSwitch` is positive
 * @validity point contact: it sees every pebble. A tyre that lies over small stones (enveloping) is not in it.
 * @source linear point-contact follower, e.g. Gillespie, Fundamentals of Vehicle Dynamics, ch. 5 (from memory)
 */
export function tyreForce(elastic: number, damping: number, closing: number): number {
  return elastic + damping * closing;
}

/** Positive where the tyre carries force: both the elastic part and the sum push. */
export function tyreSwitch(elastic: number, damping: number, closing: number): number {
  return Math.min(elastic, tyreForce(elastic, damping, closing));
}

/** Energy held by a tyre that is pressed by `elastic` [J]. */
export function tyreEnergy(rate: number, elastic: number): number {
  return elastic > 0 ? (elastic * elastic) / (2 * rate) : 0;
}
