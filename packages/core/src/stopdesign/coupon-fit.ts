import { leastSquares } from '../numerics/least-squares.ts';
import { type LatticeMaterial, latticeLaw } from './lattice-law.ts';

/** A printed coupon of one density, pressed between bare plates. */
export interface Coupon {
  readonly density: number;
  /** [m] */
  readonly height: number;
  /** [m²] */
  readonly area: number;
  /** From touch, rising [m]. */
  readonly crush: readonly number[];
  /** [N] */
  readonly force: readonly number[];
}

/** Numbers of the material that coupons can tell. */
export const FITTED = ['solidModulus', 'densityPower', 'softening', 'closing'] as const;
export type FittedNumber = (typeof FITTED)[number];

export interface CouponFit {
  readonly material: LatticeMaterial;
  /** 95 % half-width of each number; null where the coupons do not tell it, and then it stays as it was. */
  readonly tolerance: Readonly<Record<FittedNumber, number | null>>;
  /** Root mean square of (reading − model) ÷ reading. */
  readonly misfit: number;
  readonly settled: boolean;
}

/**
 * The material that printed coupons show: least squares on the relative errors of all readings together.
 *
 * One density cannot tell how the modulus goes with density, and coupons pressed only a little cannot tell where cells
 * close: those numbers keep what they were and say so.
 *
 * @param before – the material as taken so far
 */
export function couponFit(coupons: readonly Coupon[], before: LatticeMaterial): CouponFit {
  const fitted = FITTED.filter((name) => canTell(name, coupons, before));
  const start = { ...before, closing: Math.min(before.closing, mostClosing(coupons)) };
  const materialOf = (p: ArrayLike<number>): LatticeMaterial =>
    Object.assign(
      { ...start },
      ...fitted.map((name, i) => ({ [name]: LOG.has(name) ? Math.exp(p[i]) : p[i] })),
    );
  const guess = fitted.map((name) => (LOG.has(name) ? Math.log(Math.max(start[name], 0.05)) : start[name]));
  const residuals = (p: ArrayLike<number>): number[] => {
    const material = materialOf(p);
    return coupons.flatMap(({ density, height, area, crush, force }) => {
      const law = latticeLaw(material, density);
      return crush.flatMap((c, k) => {
        if (!(force[k] > 0)) return [];
        const strain = c / height;
        // A strain that the cells do not allow is no answer: the step that asked for it is refused.
        return [strain < law.locksAt ? (area * law.stress(strain)) / force[k] - 1 : Number.NaN];
      });
    });
  };
  const fit = leastSquares(residuals, guess);
  const material = materialOf(fit.parameters);
  const readings = residuals(fit.parameters).length;
  const tolerance = Object.fromEntries(
    FITTED.map((name) => {
      const i = fitted.indexOf(name);
      if (i < 0 || fit.covariance === null) return [name, null];
      const half = 2 * Math.sqrt(fit.covariance[i * fitted.length + i]);
      return [name, LOG.has(name) ? half * material[name] : half];
    }),
  ) as Record<FittedNumber, number | null>;
  return { material, tolerance, misfit: Math.sqrt(fit.sumOfSquares / readings), settled: fit.settled };
}

/** The most closing at which every reading still has open cells. */
function mostClosing(coupons: readonly Coupon[]): number {
  return Math.min(
    ...coupons.map(({ density, crush, height }) => (0.98 - Math.max(...crush) / height) / density),
  );
}

/** Numbers that cannot be negative are found by their logarithm. */
const LOG: ReadonlySet<FittedNumber> = new Set(['solidModulus', 'softening', 'closing']);

/** Strain beyond which bending walls show, and share of the closing strain from which closing shows. */
const BENDS = 0.15;
const CLOSES = 0.6;

function canTell(name: FittedNumber, coupons: readonly Coupon[], { closing }: LatticeMaterial): boolean {
  const depth = coupons.map(({ crush, height }) => Math.max(...crush) / height);
  switch (name) {
    case 'solidModulus':
      return true;
    case 'densityPower': {
      const densities = coupons.map(({ density }) => density);
      return Math.max(...densities) > 1.2 * Math.min(...densities);
    }
    case 'softening':
      return depth.some((strain) => strain > BENDS);
    case 'closing':
      return coupons.some(({ density }, i) => depth[i] > CLOSES * (1 - closing * density));
  }
}
