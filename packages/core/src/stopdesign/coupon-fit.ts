import { Matrix, pseudoInverse } from 'ml-matrix';
import { leastSquares } from '../numerics/least-squares.ts';
import { type ColumnState, columnAt } from './column.ts';
import { type LatticeMaterial, latticeLaw } from './lattice-law.ts';
import { HALF_HELD, type PrintedBody, printedLayers } from './printed-body.ts';

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

/** A printed stop that was pressed itself: its curve from touch. */
export interface PressedStop {
  readonly body: PrintedBody;
  /** From touch, rising [m]. */
  readonly crush: readonly number[];
  /** [N] */
  readonly force: readonly number[];
}

/** Numbers of the material that presses can tell. */
export const FITTED = ['solidModulus', 'densityPower', 'softening', 'closing'] as const;
export type FittedNumber = (typeof FITTED)[number];

export interface CouponFit {
  readonly material: LatticeMaterial;
  /**
   * 95 % half-width of each number; of the modulus too in its own unit. Null where the presses do not tell it, and then it
   * stays as it was.
   */
  readonly tolerance: Readonly<Record<FittedNumber, number | null>>;
  /** Correlations in the order of `FITTED`, row by row; nothing goes with a number that was not told. */
  readonly correlation: readonly number[];
  /** Root mean square of (reading − model) ÷ reading. */
  readonly misfit: number;
  readonly settled: boolean;
}

/** Half-width, 95 %, by which a print is denser or thinner than drawn (common practice, no source). */
export const PRINT_SCATTER = 0.05;

/**
 * The material that presses of prints show: least squares on the relative errors of all readings together.
 *
 * One density cannot tell how the modulus goes with density, and prints pressed only a little cannot tell where cells
 * close: those numbers keep what they were and say so. The readings of one print share its error of density, so more
 * readings of the same print do not make it surer: cov = (JᵀJ)⁻¹·Jᵀ·(s²·I + Σ g·gᵀ)·J·(JᵀJ)⁻¹ with g the change of one
 * print's readings by the scatter of its density.
 *
 * @param before – the material as taken so far
 * @param stops – pressed as a whole; their skin and ends count half-way between their limits
 * @param beforeHalf – 95 % half-widths of the numbers before, of the modulus in its logarithm; none: taken as sure
 * @source least squares with correlated errors, any text on regression (from memory); tested by coverage
 */
export function couponFit(
  coupons: readonly Coupon[],
  before: LatticeMaterial,
  stops: readonly PressedStop[] = [],
  beforeHalf: Readonly<Record<FittedNumber, number>> | null = null,
): CouponFit {
  const fitted = FITTED.filter((name) => canTell(name, coupons, stops, before));
  const start = { ...before, closing: Math.min(before.closing, mostClosing(coupons, stops)) };
  const materialOf = (p: ArrayLike<number>): LatticeMaterial =>
    Object.assign(
      { ...start },
      ...fitted.map((name, i) => ({ [name]: LOG.has(name) ? Math.exp(p[i]) : p[i] })),
    );
  const guess = fitted.map((name) => (LOG.has(name) ? Math.log(Math.max(start[name], 0.05)) : start[name]));
  const errorsOf = (material: LatticeMaterial, denser = 0): readonly (readonly number[])[] => [
    ...coupons.map((coupon) => couponErrors(coupon, material, denser)),
    ...stops.map((stop) => stopErrors(stop, material, denser)),
  ];
  const residuals = (p: ArrayLike<number>): number[] => errorsOf(materialOf(p)).flat();
  const fit = leastSquares(residuals, guess);
  const material = materialOf(fit.parameters);
  const readings = residuals(fit.parameters).length;
  const prints = errorsOf(material, PRINT_SCATTER / 2);
  const starts = prints.map((_, i) => prints.slice(0, i).reduce((sum, { length }) => sum + length, 0));
  const shared: Shared[] = prints.map((moved, i) => ({ from: starts[i], moved }));
  for (const name of FITTED)
    if (beforeHalf !== null && !fitted.includes(name)) {
      // Closing earlier would leave readings beyond it without a value; the other way tells as much.
      const by = (name === 'closing' ? -1 : 1) * (beforeHalf[name] / 2);
      const moved = { ...material, [name]: material[name] + by };
      shared.push({ from: 0, moved: errorsOf(moved).flat() });
    }
  const covariance = fit.covariance && sharedErrors(fit, residuals, shared, readings);
  const at = (name: FittedNumber, other: FittedNumber): number | null => {
    const [i, k] = [fitted.indexOf(name), fitted.indexOf(other)];
    return i < 0 || k < 0 || covariance === null ? null : covariance.get(i, k);
  };
  const tolerance = Object.fromEntries(
    FITTED.map((name) => {
      const square = at(name, name);
      const half = square === null ? null : 2 * Math.sqrt(square);
      return [name, half !== null && LOG.has(name) ? half * material[name] : half];
    }),
  ) as Record<FittedNumber, number | null>;
  const correlation = FITTED.flatMap((name) =>
    FITTED.map((other) => {
      if (name === other) return 1;
      const both = at(name, other);
      return both === null ? 0 : both / Math.sqrt((at(name, name) ?? 1) * (at(other, other) ?? 1));
    }),
  );
  return {
    material,
    tolerance,
    correlation,
    misfit: Math.sqrt(fit.sumOfSquares / readings),
    settled: fit.settled,
  };
}

/** Relative errors of one coupon's readings; a strain that its cells do not allow has none: the step is refused. */
function couponErrors(
  { density, height, area, crush, force }: Coupon,
  material: LatticeMaterial,
  denser: number,
) {
  const law = latticeLaw(material, density * (1 + denser));
  return crush.flatMap((c, k) => {
    if (!(force[k] > 0)) return [];
    const strain = c / height;
    return [strain < law.locksAt ? (area * law.stress(strain)) / force[k] - 1 : Number.NaN];
  });
}

/** A reading is missed in force where the column gives it, in crush made into force: no force is sought for each crush. */
function stopErrors({ body, crush, force }: PressedStop, material: LatticeMaterial, denser: number) {
  const value = body.density.value.map((rho) => rho * (1 + denser));
  const made = { ...body, density: { ...body.density, value } };
  const layers = printedLayers(made, material, HALF_HELD, STOP_SLICES);
  let state: ColumnState | undefined;
  return crush.flatMap((c, k) => {
    if (!(force[k] > 0)) return [];
    state = columnAt(layers, force[k], state);
    return [(c - state.crush) / (state.compliance * force[k])];
  });
}

const STOP_SLICES = 30;

/** Readings from one on, as they would be missed if something that they share had come out otherwise. */
interface Shared {
  readonly from: number;
  readonly moved: readonly number[];
}

/** Covariance where readings share errors. */
function sharedErrors(
  { parameters, sumOfSquares }: { readonly parameters: Float64Array; readonly sumOfSquares: number },
  residuals: (p: ArrayLike<number>) => number[],
  shared: readonly Shared[],
  readings: number,
): Matrix {
  const n = parameters.length;
  const middle = residuals(parameters);
  const columns = Array.from(parameters, (value, j) => {
    const h = 1e-5 * Math.max(Math.abs(value), 0.1);
    const shifted = (by: number) => residuals(parameters.map((v, k) => (k === j ? v + by : v)));
    const [up, down] = [shifted(h), shifted(-h)];
    return up.map((u, i) =>
      Number.isFinite(u) && Number.isFinite(down[i])
        ? (u - down[i]) / (2 * h)
        : Number.isFinite(u)
          ? (u - middle[i]) / h
          : (middle[i] - down[i]) / h,
    );
  });
  const slopes = new Matrix(columns).transpose();
  const square = slopes.transpose().mmul(slopes);
  const variance = Math.max(sumOfSquares / Math.max(1, readings - n), LEAST_ERROR ** 2);
  const inner = square.clone().mul(variance);
  for (const { from, moved } of shared) {
    const shift = Matrix.zeros(n, 1);
    moved.forEach((value, i) => {
      const by = Number.isFinite(value) ? value - middle[from + i] : 0;
      for (let j = 0; j < n; j += 1) shift.set(j, 0, shift.get(j, 0) + slopes.get(from + i, j) * by);
    });
    inner.add(shift.mmul(shift.transpose()));
  }
  const inverse = pseudoInverse(square);
  return inverse.mmul(inner).mmul(inverse);
}

/** No gauge and no ruler of a garage are better than this. */
const LEAST_ERROR = 0.01;

/** The most closing at which every reading still has open cells. */
function mostClosing(coupons: readonly Coupon[], stops: readonly PressedStop[]): number {
  return Math.min(
    ...coupons.map(({ density, crush, height }) => (0.98 - Math.max(...crush) / height) / density),
    ...stops.map(({ body, crush }) => {
      const mean = body.density.value.reduce((sum, rho) => sum + rho, 0) / body.density.value.length;
      return (0.98 - Math.max(...crush) / body.height) / mean;
    }),
  );
}

/** Numbers that cannot be negative are found by their logarithm. */
const LOG: ReadonlySet<FittedNumber> = new Set(['solidModulus', 'softening', 'closing']);

/** Strain beyond which bending walls show, and share of the closing strain from which closing shows. */
const BENDS = 0.15;
const CLOSES = 0.6;

function canTell(
  name: FittedNumber,
  coupons: readonly Coupon[],
  stops: readonly PressedStop[],
  { closing }: LatticeMaterial,
): boolean {
  const presses = [
    ...coupons.map(({ density, crush, height }) => ({ density, depth: Math.max(...crush) / height })),
    ...stops.map(({ body, crush }) => ({
      density: Math.min(...body.density.value),
      depth: Math.max(...crush) / body.height,
    })),
  ];
  switch (name) {
    case 'solidModulus':
      return true;
    case 'densityPower': {
      const densities = coupons.map(({ density }) => density);
      return Math.max(...densities) > 1.2 * Math.min(...densities);
    }
    case 'softening':
      return presses.some(({ depth }) => depth > BENDS);
    case 'closing':
      return presses.some(({ density, depth }) => depth > CLOSES * (1 - closing * density));
  }
}
