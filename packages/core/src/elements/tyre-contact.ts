/**
 * Length of ground under a tyre: the chord that flat ground cuts from a circle pressed in by δ,
 *
 *     ℓ = 2·√(R² − (R − δ)²),   R = loaded radius + δ
 *
 * @param loadedRadius – hub to ground [m]
 * @param deflection – static load ÷ rate [m]
 * @returns [m]
 * @validity marked estimate and an upper bound: a tyre bulges beside its contact, and a printed foot is often a fifth to a
 *   third shorter
 * @source geometry of the circle; how much shorter is common practice, no source
 */
export function contactLength(loadedRadius: number, deflection: number): number {
  const free = loadedRadius + deflection;
  return 2 * Math.sqrt(free ** 2 - loadedRadius ** 2);
}
