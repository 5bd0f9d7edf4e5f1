/**
 * Where the neutral line of a bend lies, as a share of the thickness from the inside: K of an air bend in mild steel. Half of
 * the factor k = 0.65 + 0.5 lg(r/t) of DIN 6935 up to r/t = 5, beyond it one half.
 *
 * @param insideRadius – [m] > 0
 * @param thickness – [m] > 0
 * @validity 0.2 ≤ r/t; a bend is known to about an eighth of the thickness until a strip of the same plate was bent
 * @source DIN 6935, from memory
 */
export function neutralShare(insideRadius: number, thickness: number): number {
  const ratio = insideRadius / thickness;
  if (ratio >= 5) return 0.5;
  return Math.max(0, 0.65 + 0.5 * Math.log10(ratio)) / 2;
}

/**
 * Length of the neutral line round a bend [m]: A = α·(r + K·t).
 *
 * @param angle – from flat [rad]
 * @source closed form of an arc; Machinery's Handbook, 26th edition, bend allowance
 */
export const bendAllowance = (angle: number, insideRadius: number, thickness: number): number =>
  angle * (insideRadius + neutralShare(insideRadius, thickness) * thickness);
