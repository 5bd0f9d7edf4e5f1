import { leastSquares } from '../numerics/least-squares.ts';
import { type ColumnState, columnAt, type Layer } from './column.ts';
import type { LatticeMaterial } from './lattice-law.ts';
import { curveOf, type PrintedBody, printedLayers } from './printed-body.ts';

/** A wanted curve: force [N] over crush [m], both rising from 0. */
export interface WantedCurve {
  readonly crush: readonly number[];
  readonly force: readonly number[];
}

/** What a printer can make. */
export interface DensityRange {
  readonly least: number;
  readonly most: number;
}

export interface DesignedDensity {
  /** The body with its density found. */
  readonly body: PrintedBody;
  /** At each wanted force: crush of the design less the wanted crush [m]. */
  readonly off: readonly number[];
  /** Largest |off| ÷ largest wanted crush. */
  readonly worst: number;
  /** Share of the height at the least and at the most that the printer can make: what holds the design back. */
  readonly atLeast: number;
  readonly atMost: number;
}

/** Places along the height at which the density is free. */
const PLACES = 13;
/** Wanted forces that are compared: even in crush, so that the soft beginning counts as much as the hard end. */
const COMPARED = 25;
/** Weight of an even spread of the grading, against crush errors of the whole crush: only where the curve leaves it open. */
const SMOOTHING = 2e-4;
/** Slices while searching; the result is told with the usual count. */
const SEARCH_SLICES = 30;

/**
 * The density along the height at which a printed body follows a wanted curve, as near as the printer's range lets it.
 *
 * In a straight body the order of slices does not matter, so the density is laid densest at the foot, where it also
 * prints best, and falls to the tip. It is written as ρ(z) = least + (most − least)·Σ shares, the shares a softmax: no
 * fit can leave the range or rise towards the tip.
 *
 * @param body – outline, bore and skin; its density is the first guess only
 * @param material, skinShare – as in `printedLayers`
 * @invariant a curve made by `printedLayers` from a density that falls to the tip is met again
 */
export function densityForCurve(
  body: PrintedBody,
  material: LatticeMaterial,
  skinShare: number,
  wanted: WantedCurve,
  range: DensityRange,
): DesignedDensity {
  const target = evenInCrush(wanted, COMPARED);
  const full = target.crush[target.crush.length - 1];
  const withDensity = (value: readonly number[]): PrintedBody => ({
    ...body,
    density: { at: value.map((_, i) => (body.height * i) / (value.length - 1)), value },
  });
  const densities = (u: Float64Array): readonly number[] => fallingShares(u, range);
  const layersOf = (u: Float64Array): readonly Layer[] =>
    printedLayers(withDensity(densities(u)), material, skinShare, SEARCH_SLICES);
  const smoothing = PLACES + 1;

  const residuals = (u: Float64Array): Float64Array => {
    const r = new Float64Array(COMPARED + smoothing);
    crushesAt(layersOf(u), target.force).forEach((crush, k) => {
      r[k] = (crush - target.crush[k]) / full;
    });
    u.forEach((value, j) => {
      r[COMPARED + j] = SMOOTHING * value;
    });
    return r;
  };
  const jacobian = (u: Float64Array): Float64Array => {
    const n = u.length;
    const rows = new Float64Array((COMPARED + smoothing) * n);
    const bySlice = crushByDensity(withDensity(densities(u)), material, skinShare, target.force);
    for (let j = 0; j < n; j += 1) {
      const moved = (by: number) =>
        withDensity(densities(u.map((value, k) => (k === j ? value + by : value))));
      const [up, down] = [densityOfSlices(moved(SMALL)), densityOfSlices(moved(-SMALL))];
      for (let k = 0; k < COMPARED; k += 1) {
        let sum = 0;
        for (let i = 0; i < SEARCH_SLICES; i += 1)
          sum += (bySlice[k * SEARCH_SLICES + i] * (up[i] - down[i])) / (2 * SMALL);
        rows[k * n + j] = sum / full;
      }
      rows[(COMPARED + j) * n + j] = SMOOTHING;
    }
    return rows;
  };
  // From an even grading over the whole range, and from a body all soft or all hard: the best of the three.
  const fits = [0, 3, -3].map((lean) =>
    leastSquares(
      residuals,
      Float64Array.from({ length: PLACES + 1 }, (_, i) => lean * (i / PLACES - 0.5)),
      { jacobian, still: 1e-4, flat: 1e-3 },
    ),
  );
  const best = fits.reduce((a, b) => (b.sumOfSquares < a.sumOfSquares ? b : a));
  const value = densities(best.parameters);
  const design = withDensity(value);
  const off = crushesAt(printedLayers(design, material, skinShare), target.force).map(
    (crush, k) => crush - target.crush[k],
  );
  const span = range.most - range.least;
  const near = (edge: number) => value.filter((v) => Math.abs(v - edge) < 0.01 * span).length / value.length;
  return {
    body: design,
    off,
    worst: Math.max(...off.map(Math.abs)) / full,
    atLeast: near(range.least),
    atMost: near(range.most),
  };
}

/** Crush under each force [m], forces rising. */
function crushesAt(layers: readonly Layer[], forces: readonly number[]): readonly number[] {
  let state: ColumnState | undefined;
  return forces.map((force) => {
    state = columnAt(layers, force, state);
    return state.crush;
  });
}

const SMALL = 1e-5;

const densityOfSlices = ({ height, density }: PrintedBody): readonly number[] => {
  const at = curveOf(density);
  return Array.from({ length: SEARCH_SLICES }, (_, i) => at((height * (i + 0.5)) / SEARCH_SLICES));
};

/** ∂ crush ÷ ∂ density of each slice [m], forces by rows: under the same stress a denser slice gives less. */
function crushByDensity(
  body: PrintedBody,
  material: LatticeMaterial,
  skinShare: number,
  forces: readonly number[],
): Float64Array {
  const shifted = (by: number): readonly Layer[] => {
    const value = body.density.value.map((density) => density + by);
    return printedLayers(
      { ...body, density: { ...body.density, value } },
      material,
      skinShare,
      SEARCH_SLICES,
    );
  };
  const [layers, up, down] = [shifted(0), shifted(SMALL), shifted(-SMALL)];
  const rows = new Float64Array(forces.length * layers.length);
  let state: ColumnState | undefined;
  forces.forEach((force, k) => {
    state = columnAt(layers, force, state);
    state.strain.forEach((strain, i) => {
      const stressByDensity = (up[i].law.stress(strain) - down[i].law.stress(strain)) / (2 * SMALL);
      rows[k * layers.length + i] = (-layers[i].height * stressByDensity) / layers[i].law.slope(strain);
    });
  });
  return rows;
}

/**
 * Densities from foot to tip, falling, inside the range: what is left above each place of one whole, shared out by a
 * softmax over the steps between places and the two ends.
 */
function fallingShares(u: Float64Array, { least, most }: DensityRange): readonly number[] {
  const top = Math.max(...u);
  const weights = Array.from(u, (value) => Math.exp(value - top));
  const whole = weights.reduce((sum, w) => sum + w, 0);
  const densities: number[] = [];
  let left = 1;
  for (const weight of weights.slice(0, -1)) {
    left -= weight / whole;
    densities.push(least + (most - least) * Math.max(left, 0));
  }
  return densities;
}

/** The wanted curve at places even in crush, without the origin. */
function evenInCrush({ crush, force }: WantedCurve, count: number): WantedCurve {
  const full = crush[crush.length - 1];
  const at = Array.from({ length: count }, (_, k) => (full * (k + 1)) / count);
  let i = 0;
  return {
    crush: at,
    force: at.map((c) => {
      while (i < crush.length - 2 && crush[i + 1] < c) i += 1;
      return force[i] + ((force[i + 1] - force[i]) * (c - crush[i])) / (crush[i + 1] - crush[i]);
    }),
  };
}
