/**
 * How a slice of a stop answers: nominal compressive stress [Pa] (force ÷ area at rest) against nominal compressive
 * strain (crush ÷ height at rest). The one shape of all slices; a law is a rising curve from the origin.
 */
export interface LayerLaw {
  readonly stress: (strain: number) => number;
  /** d stress ÷ d strain [Pa] > 0. */
  readonly slope: (strain: number) => number;
  /** Energy held, per volume at rest [J/m³]: the area under the curve. */
  readonly energy: (strain: number) => number;
  /** Strain that no finite stress reaches, at most 1. */
  readonly locksAt: number;
}

/** A slice that follows Hooke's law: a check case and a first guess, no rubber. */
export function linearLaw(modulus: number): LayerLaw {
  return {
    stress: (strain) => modulus * strain,
    slope: () => modulus,
    energy: (strain) => (modulus * strain * strain) / 2,
    locksAt: 1,
  };
}

/**
 * Incompressible neo-Hookean rubber with free sides: σ = G·(λ⁻² − λ), λ = 1 − strain.
 *
 * @param shearModulus – G [Pa]; Young's modulus is 3·G
 * @source Treloar, The Physics of Rubber Elasticity, 3rd ed. 1975, chapter 5 (from memory)
 */
export function neoHookeanLaw(shearModulus: number): LayerLaw {
  return {
    stress(strain) {
      const stretch = 1 - strain;
      return shearModulus * (1 / (stretch * stretch) - stretch);
    },
    slope(strain) {
      const stretch = 1 - strain;
      return shearModulus * (2 / (stretch * stretch * stretch) + 1);
    },
    energy: (strain) => (shearModulus / 2) * ((1 - strain) ** 2 + 2 / (1 - strain) - 3),
    locksAt: 1,
  };
}

/**
 * Compressible neo-Hookean rubber that cannot widen: what stands between rigid walls.
 *
 *     W = (G/2)·(Ī₁ − 3) + (K/2)·(λ − 1)²,   Ī₁ = λ^(−2/3)·(λ² + 2)
 *
 * @param bulkModulus – K [Pa]
 * @source strain energy of the neo-Hookean material of general finite-element programs, D₁ = 2 ÷ K
 */
export function confinedNeoHookeanLaw(shearModulus: number, bulkModulus: number): LayerLaw {
  const stretch = (strain: number) => 1 - strain;
  return {
    stress(strain) {
      const l = stretch(strain);
      const pull =
        (shearModulus / 2) * (2 * Math.cbrt(l) - (2 / 3) * (l * l + 2) * l ** (-5 / 3)) +
        bulkModulus * (l - 1);
      return -pull;
    },
    slope(strain) {
      const l = stretch(strain);
      return (
        (shearModulus / 2) *
          ((2 / 3) * l ** (-2 / 3) - (4 / 3) * l ** (-2 / 3) + (10 / 9) * (l * l + 2) * l ** (-8 / 3)) +
        bulkModulus
      );
    },
    energy(strain) {
      const l = stretch(strain);
      return (shearModulus / 2) * (l ** (-2 / 3) * (l * l + 2) - 3) + (bulkModulus / 2) * (l - 1) * (l - 1);
    },
    locksAt: 1,
  };
}

/** σ = E·ε ÷ (1 − ε/ε_lock): stiffens without end towards the strain at which cells are closed. */
export function lockingLaw(modulus: number, locksAt: number): LayerLaw {
  return {
    stress: (strain) => (modulus * strain) / (1 - strain / locksAt),
    slope: (strain) => modulus / (1 - strain / locksAt) ** 2,
    energy: (strain) => modulus * locksAt * locksAt * (-strain / locksAt - Math.log(1 - strain / locksAt)),
    locksAt,
  };
}

/**
 * Strain at which a law carries a stress: Newton's method kept inside a bracket, to the last digits.
 *
 * @param stress – [Pa] ≥ 0
 * @param guess – where to begin; the strain at a stress nearby saves steps
 */
export function strainAt(law: LayerLaw, stress: number, guess = 0): number {
  if (stress <= 0) return 0;
  let [low, high] = [0, law.locksAt];
  let strain = guess > low && guess < high ? guess : Math.min(stress / law.slope(0), 0.5 * high);
  for (let tries = 0; tries < 100; tries += 1) {
    const missing = law.stress(strain) - stress;
    if (missing > 0) high = strain;
    else low = strain;
    const newton = strain - missing / law.slope(strain);
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - strain) <= 4 * Number.EPSILON * next) return next;
    strain = next;
  }
  return strain;
}
