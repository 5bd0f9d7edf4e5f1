/** A plate held at its edges, loaded in its middle. */
export interface PlateAnswer {
  /** Sag of the middle [m]. */
  readonly deflection: number;
  /** Bending stress under the load and at the clamped edge [Pa]. */
  readonly centreStress: number;
  readonly edgeStress: number;
}

/** What a plate is made of and how thick it is. */
export interface Sheet {
  readonly thickness: number;
  readonly modulus: number;
  readonly poisson: number;
}

const stiffness = ({ thickness, modulus, poisson }: Sheet): number =>
  (modulus * thickness ** 3) / (12 * (1 - poisson ** 2));

/**
 * Clamped round plate under even pressure: w = q·a⁴/64D, σ_edge = 0.75·q·a²/t², σ_centre = 6·q·a²·(1+ν)/16t².
 * @param pressure – [Pa]
 * @source Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. 1959 (from memory; w read in an excerpt of
 *   the Civil Engineering Handbook)
 */
export function roundPlateUnderPressure(sheet: Sheet, radius: number, pressure: number): PlateAnswer {
  const { thickness, poisson } = sheet;
  const share = (pressure * radius ** 2) / thickness ** 2;
  return {
    deflection: (pressure * radius ** 4) / (64 * stiffness(sheet)),
    centreStress: (6 * share * (1 + poisson)) / 16,
    edgeStress: 0.75 * share,
  };
}

/**
 * Clamped round plate, load spread evenly over a circle in its middle:
 * w = P/(64πD)·(4a² − 4r₀²·ln(a/r₀) − 3r₀²), M_c = P(1+ν)/4π·(ln(a/r₀) + r₀²/4a²), M_e = P/4π·(1 − r₀²/2a²), σ = 6M/t².
 * A patch smaller than half the thickness counts as r₀′ (`smallPatch`) for the stress under it.
 *
 * @param patch – radius of the loaded circle, 0 … `radius`; 0 is a point, whose stress under it is that of r₀′ [m]
 * @validity thin plate, sag below about half its thickness; really clamped edges
 * @source Timoshenko and Woinowsky-Krieger (from memory)
 */
export function roundPlateUnderPatch(
  sheet: Sheet,
  radius: number,
  patch: number,
  force: number,
): PlateAnswer {
  const { thickness, poisson } = sheet;
  const [a, r] = [radius, Math.min(patch, radius)];
  const under = Math.min(smallPatch(r, thickness), a);
  const middle =
    ((force * (1 + poisson)) / (4 * Math.PI)) * (Math.log(a / under) + under ** 2 / (4 * a ** 2));
  const edge = (force / (4 * Math.PI)) * (1 - r ** 2 / (2 * a ** 2));
  const log = r > 0 ? r ** 2 * Math.log(a / r) : 0;
  return {
    deflection: (force / (64 * Math.PI * stiffness(sheet))) * (4 * a ** 2 - 4 * log - 3 * r ** 2),
    centreStress: (6 * middle) / thickness ** 2,
    edgeStress: (6 * edge) / thickness ** 2,
  };
}

/**
 * Radius that a load on a very small circle counts as: r₀′ = √(1.6·r₀² + t²) − 0.675·t where r₀ < 0.5·t.
 * @source Roark's Formulas for Stress and Strain, 7th ed., ch. 11 (read in a scanned excerpt)
 */
export function smallPatch(radius: number, thickness: number): number {
  if (radius >= thickness / 2) return radius;
  return Math.sqrt(1.6 * radius ** 2 + thickness ** 2) - 0.675 * thickness;
}

/** Roark's coefficients by b/a (short ÷ long edge); the first row is an endless strip. */
const ROARK_8B = [
  { ratio: 0, alpha: 0.0791, beta2: 1.008, beta1: 0.067 },
  { ratio: 1 / 2, alpha: 0.0788, beta2: 1.004, beta1: 0.067 },
  { ratio: 1 / 1.8, alpha: 0.0786, beta2: 1.0, beta1: 0.068 },
  { ratio: 1 / 1.6, alpha: 0.0777, beta2: 0.9906, beta1: 0.053 },
  { ratio: 1 / 1.4, alpha: 0.0754, beta2: 0.9624, beta1: 0.011 },
  { ratio: 1 / 1.2, alpha: 0.0706, beta2: 0.894, beta1: -0.078 },
  { ratio: 1, alpha: 0.0611, beta2: 0.7542, beta1: -0.238 },
] as const;

/**
 * Rectangular plate, all edges clamped, load on a small circle in its middle:
 * w = α·P·b²/(E·t³), σ_edge = β₂·P/t², σ_centre = 3P/2πt²·((1+ν)·ln(2b/πr₀′) + β₁); b is the short edge.
 *
 * @param patch – radius of the loaded circle [m]
 * @validity patch small against the short edge: α is that of a point, finite elements lie 1.5 % below it (validation page)
 * @source Roark's Formulas for Stress and Strain, 7th ed., table 11.4, case 8b (table read in a page that quotes it; case
 *   number and the last β₁ from memory)
 */
export function rectanglePlateUnderPatch(
  sheet: Sheet,
  edges: readonly [number, number],
  patch: number,
  force: number,
): PlateAnswer {
  const { thickness, modulus, poisson } = sheet;
  const [short, long] = [Math.min(...edges), Math.max(...edges)];
  const { alpha, beta1, beta2 } = roark(short / long);
  const under = smallPatch(patch, thickness);
  const log = Math.log((2 * short) / (Math.PI * under));
  return {
    deflection: (alpha * force * short ** 2) / (modulus * thickness ** 3),
    centreStress: ((3 * force) / (2 * Math.PI * thickness ** 2)) * ((1 + poisson) * log + beta1),
    edgeStress: (beta2 * force) / thickness ** 2,
  };
}

function roark(ratio: number) {
  const after = Math.max(
    1,
    ROARK_8B.findIndex((row) => row.ratio >= ratio),
  );
  const [low, high] = [ROARK_8B[after - 1], ROARK_8B[after]];
  const share = (ratio - low.ratio) / (high.ratio - low.ratio);
  const between = (of: 'alpha' | 'beta1' | 'beta2') => low[of] + share * (high[of] - low[of]);
  return { alpha: between('alpha'), beta1: between('beta1'), beta2: between('beta2') };
}
