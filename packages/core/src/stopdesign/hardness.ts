/** Durometer scale a hardness was read on. */
export type HardnessScale = 'shore-a' | 'shore-d';

/** Young's modulus at small strain that goes with a hardness [Pa]: what the relations say, least and most. */
export interface ModulusBand {
  readonly least: number;
  readonly middle: number;
  readonly most: number;
}

/**
 * Gent's relation [Pa]: E = 0.0981·(56 + 7.62336·S) ÷ (0.137505·(254 − 2.54·S)) MPa, S in Shore A.
 *
 * @validity good above about 60 IRHD by its own statement; infinite at 100
 * @source Gent, "On the relation between indentation hardness and Young's modulus", Rubber Chem. Technol. 31 (1958) 896
 */
export function gentModulus(shoreA: number): number {
  return (1e6 * 0.0981 * (56 + 7.62336 * shoreA)) / (0.137505 * (254 - 2.54 * shoreA));
}

/**
 * log₁₀ E = 0.0235·S − 0.6403 (E in MPa), S = Shore A from 20 to 80, or Shore D + 50 from 30 to 85: finite elements of
 * the indenter on a neo-Hookean body. The logarithm is to base 10; with base e it would give half.
 *
 * @source Qi, Joyce and Boyce, Rubber Chem. Technol. 76 (2003) 419 (abstract read; formula from a page that quotes it)
 */
export function indenterModulus(hardness: number, scale: HardnessScale): number {
  const shore = scale === 'shore-a' ? hardness : hardness + 50;
  return 1e6 * 10 ** (0.0235 * shore - 0.6403);
}

/**
 * S_A = 100·erf(3.186e-4·√E), solved for E [Pa].
 * @source encyclopaedia article on the Shore durometer (from memory)
 */
export function errorFunctionModulus(shoreA: number): number {
  return (inverseErf(shoreA / 100) / 3.186e-4) ** 2;
}

/**
 * S_D = 100 − 20·(−78.188 + √(6113.36 + 781.88·E)) ÷ E (E in MPa), solved for E [Pa].
 * @source as above (from memory)
 */
export function shoreDModulus(shoreD: number): number {
  // With c = (100 − S)/20: (c·E + 78.188)² = 6113.36 + 781.88·E, and 78.188² is the constant but for its rounding.
  const c = (100 - shoreD) / 20;
  const half = (2 * c * 78.188 - 781.88) / (2 * c * c);
  return 1e6 * (-half + Math.sqrt(half * half - (78.188 ** 2 - 6113.36) / (c * c)));
}

/** Hardnesses that the relations can answer; beyond, a durometer tells next to nothing about stiffness. */
export const HARDNESS_RANGE = { 'shore-a': [20, 95], 'shore-d': [30, 70] } as const;

/**
 * What hardness says of stiffness: the relations part by a factor of two at the hard end, and each block lies about
 * 25 % from its relation. So it is a band and never one number.
 */
export function modulusBand(hardness: number, scale: HardnessScale): ModulusBand {
  const all =
    scale === 'shore-a'
      ? [gentModulus(hardness), indenterModulus(hardness, scale), errorFunctionModulus(hardness)]
      : [indenterModulus(hardness, scale), shoreDModulus(hardness)];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  return { least: low / 1.25, middle: Math.sqrt(low * high), most: high * 1.25 };
}

/** erf⁻¹ by Newton on the series and continued fraction of erf; x in 0 … 1. */
function inverseErf(x: number): number {
  let y = Math.sqrt(-Math.log(1 - x * x)) * 0.9;
  for (let tries = 0; tries < 60; tries += 1) {
    const step = ((erf(y) - x) * Math.sqrt(Math.PI)) / 2 / Math.exp(-y * y);
    y -= step;
    if (Math.abs(step) < 1e-14) break;
  }
  return y;
}

/** Error function by its Taylor series, good to rounding below 3. @source Abramowitz and Stegun 7.1.5 */
function erf(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; n < 200 && Math.abs(term) > 1e-18 * Math.abs(sum); n += 1) {
    term *= (-x * x) / n;
    sum += term / (2 * n + 1);
  }
  return (2 * sum) / Math.sqrt(Math.PI);
}
