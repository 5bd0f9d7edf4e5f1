import { type CouponFit, FITTED, type FittedNumber } from './coupon-fit.ts';
import type { LatticeMaterial } from './lattice-law.ts';

/** Printed elastomers whose modulus is known as a band, by Shore A. */
export const PRINT_MATERIALS = ['tpu-85a', 'tpu-95a'] as const;
export type PrintMaterialName = (typeof PRINT_MATERIALS)[number];

/** A printed elastomer as far as it is known: the middle of each number, and how sure it is. */
export interface PrintMaterial {
  readonly name: string;
  readonly middle: LatticeMaterial;
  /** 95 % half-width of each number; of the modulus in its logarithm. */
  readonly half: Readonly<Record<FittedNumber, number>>;
  /** Correlations of the numbers in the order of `FITTED`, row by row. */
  readonly correlation: readonly number[];
  /** Numbers that presses of this print have told; the others are taken. */
  readonly told: readonly FittedNumber[];
}

const NONE: readonly number[] = FITTED.flatMap((_, i) => FITTED.map((__, k) => (i === k ? 1 : 0)));

/**
 * Young's modulus of a printed solid [Pa], least to most.
 * @source typical filament-printed TPU, from memory; print direction and range of strain decide (check values 1.11)
 */
const MODULUS: Readonly<Record<PrintMaterialName, readonly [number, number]>> = {
  'tpu-85a': [10e6, 25e6],
  'tpu-95a': [25e6, 70e6],
};

/** What is taken of a printed elastomer before a coupon was pressed: nobody publishes it for a home printer. */
export function usualMaterial(name: PrintMaterialName): PrintMaterial {
  const [low, high] = MODULUS[name];
  return {
    name,
    middle: {
      structure: 'sheet-gyroid',
      solidModulus: Math.sqrt(low * high),
      densityPower: 0,
      softening: 2,
      closing: 1.2,
    },
    half: { solidModulus: Math.log(high / low) / 2, densityPower: 0.5, softening: 2, closing: 0.2 },
    correlation: NONE,
    told: [],
  };
}

/**
 * One material out of what is known of it.
 *
 * @param z – standard normals in the order of `FITTED`; zeros give the middle
 */
export function drawnMaterial(
  { middle, half, correlation }: PrintMaterial,
  z: ArrayLike<number>,
): LatticeMaterial {
  const n = FITTED.length;
  const root = cholesky(correlation, n);
  const draw = (name: FittedNumber): number => {
    const i = FITTED.indexOf(name);
    let sum = 0;
    for (let k = 0; k <= i; k += 1) sum += root[i * n + k] * z[k];
    return (half[name] / 2) * sum;
  };
  return {
    structure: middle.structure,
    solidModulus: middle.solidModulus * Math.exp(draw('solidModulus')),
    densityPower: middle.densityPower + draw('densityPower'),
    softening: Math.max(0, middle.softening + draw('softening')),
    closing: Math.max(LEAST_CLOSING, middle.closing + draw('closing')),
  };
}

/** What is known of a material after presses: told numbers as the fit has them, the others as before. */
export function fittedMaterial(
  name: string,
  before: PrintMaterial,
  { material, tolerance, correlation }: CouponFit,
): PrintMaterial {
  const told = FITTED.filter((number) => tolerance[number] !== null);
  const half = Object.fromEntries(
    FITTED.map((number) => {
      const found = tolerance[number];
      if (found === null) return [number, before.half[number]];
      return [number, number === 'solidModulus' ? found / material.solidModulus : found];
    }),
  ) as Record<FittedNumber, number>;
  return { name, middle: material, half, correlation, told: [...new Set([...before.told, ...told])] };
}

/** Cells that close later than at 1 − 0.8·ρ would hold less volume than their walls. */
export const LEAST_CLOSING = 0.8;

/** Lower triangle L of L·Lᵀ = a, row by row; a row that adds nothing of its own stays 0 on the diagonal. */
function cholesky(a: readonly number[], n: number): Float64Array {
  const l = new Float64Array(n * n);
  for (let i = 0; i < n; i += 1)
    for (let k = 0; k <= i; k += 1) {
      let sum = a[i * n + k];
      for (let m = 0; m < k; m += 1) sum -= l[i * n + m] * l[k * n + m];
      if (i === k) l[i * n + i] = Math.sqrt(Math.max(0, sum));
      else l[i * n + k] = l[k * n + k] > 1e-9 ? sum / l[k * n + k] : 0;
    }
  return l;
}
