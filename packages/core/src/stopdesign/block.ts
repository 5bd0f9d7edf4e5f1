/** How the ends of a block are held. */
export type BlockEnds = 'bonded' | 'greased';

/** A solid block of rubber or polyurethane: a disc, or a ring when it has a bore. */
export interface Block {
  readonly height: number;
  readonly diameter: number;
  /** [m]; 0 for none. */
  readonly bore: number;
  readonly ends: BlockEnds;
}

/** Loaded face ÷ face that is free to bulge. Disc D/4h, ring (D − d)/4h. @source Gent and Lindley 1959 */
export function shapeFactor({ diameter, bore, height }: Block): number {
  return (diameter - bore) / (4 * height);
}

export const blockArea = ({ diameter, bore }: Block): number => (Math.PI / 4) * (diameter ** 2 - bore ** 2);

/**
 * Stiffness of a bonded block at small strain [Pa]: E_c = E₀·(1 + 2·k·S²), and in series with the bulk.
 *
 * @param modulus – E₀ [Pa]
 * @param k – 1 for unfilled rubber, falling to about 0.5 for hard filled rubber
 * @param bulkModulus – [Pa]; Infinity when rubber is taken as incompressible
 * @source Gent and Lindley, Proc. Inst. Mech. Eng. 173 (1959) 111, as quoted in J. Mech. Eng. 60 (2014) 506
 */
export function bondedModulus(modulus: number, shape: number, k: number, bulkModulus: number): number {
  const apparent = modulus * (1 + 2 * k * shape * shape);
  return 1 / (1 / apparent + 1 / bulkModulus);
}

/**
 * Force of a block at a strain [N]: σ = (E_c/3)·(λ⁻² − λ) on the area at rest. Greased ends slip, so there the shape
 * factor has no part; dry ends lie between the two.
 *
 * @validity strain up to 0.4 at S ≤ 1; finite elements lie within 5 % to strain 0.15 and 13 % to 0.30 (validation page)
 * @source Lindley, Engineering Design with Natural Rubber, NR Technical Bulletin, 4th ed. 1978 (from memory)
 */
export function blockForce(
  block: Block,
  modulus: number,
  k: number,
  bulkModulus: number,
  strain: number,
): number {
  const apparent =
    block.ends === 'bonded' ? bondedModulus(modulus, shapeFactor(block), k, bulkModulus) : modulus;
  const stretch = 1 - strain;
  return blockArea(block) * (apparent / 3) * (stretch ** -2 - stretch);
}

/** Mooney–Rivlin rubber with free sides: nominal compressive stress [Pa]. @source Treloar (from memory) */
export function mooneyRivlinStress(c1: number, c2: number, strain: number): number {
  const stretch = 1 - strain;
  return -2 * (stretch - stretch ** -2) * (c1 + c2 / stretch);
}
