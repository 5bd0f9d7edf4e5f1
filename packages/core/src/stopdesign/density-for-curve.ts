import { Matrix } from 'ml-matrix';
import { nonNegativeLeastSquares } from '../numerics/nonnegative.ts';
import { type ColumnState, columnAt, type Layer } from './column.ts';
import type { LatticeMaterial } from './lattice-law.ts';
import { curveOf, type PrintedBody, type PrintHold, printedLayers } from './printed-body.ts';

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
/** Steps of the density from its most at the foot to its least at the tip. */
const SHARES = PLACES + 1;
/** Weight of an even grading beside the curve: only where the curve leaves it open. */
const EVENNESS = 1e-5;
/** Mean square of what is missed at which a curve is met: 1e-4 of the crush. */
const MET = 1e-8;
/** Weight of the shares being those of one whole: heavy, but no heavier than the numbers bear. */
const ONE = 30;
const MOST_STEPS = 60;
const STILL = 1e-6;
const FLAT = 1e-4;
/** How much a miss in force counts beside one in crush. */
const BY_FORCE = 0.2;
/** Slices while searching; the result is told with the usual count. */
const SEARCH_SLICES = 30;

/**
 * The density along the height at which a printed body follows a wanted curve, as near as the printer's range lets it.
 *
 * In a straight body the order of slices does not matter, so the density is laid densest at the foot, where it also
 * prints best, and falls to the tip. It is written by the shares of the range that it
 * falls by from place to place, none below nothing: no fit can leave the range or rise towards the tip.
 *
 * What is made least is the crush missed at each wanted force, where the curve is steep weighed by the force that it costs.
 *
 * @param body – outline, bore and solid parts; its density is a first guess
 * @param material, hold – as in `printedLayers`
 * @param isNear – the density of the body was found for nearly this curve: no other beginning is tried
 * @invariant a curve made by `printedLayers` from a density that falls to the tip is met again
 */
export function densityForCurve(
  body: PrintedBody,
  material: LatticeMaterial,
  hold: PrintHold,
  wanted: WantedCurve,
  range: DensityRange,
  isNear = false,
): DesignedDensity {
  const target = evenInCrush(wanted, COMPARED);
  const weight = weightsOf(target);
  const full = target.crush[target.crush.length - 1];
  const withDensity = (value: readonly number[]): PrintedBody => ({
    ...body,
    density: { at: value.map((_, i) => (body.height * i) / (value.length - 1)), value },
  });
  const densities = (shares: Float64Array): readonly number[] => fallingDensities(shares, range);
  const missed = (shares: Float64Array): Float64Array => {
    const layers = printedLayers(withDensity(densities(shares)), material, hold, SEARCH_SLICES);
    return Float64Array.from(
      crushesAt(layers, target.force),
      (crush, k) => weight[k] * (crush - target.crush[k]),
    );
  };
  const slopes = (shares: Float64Array): Matrix => {
    const rows = Matrix.zeros(COMPARED, SHARES);
    const bySlice = crushByDensity(withDensity(densities(shares)), material, hold, target.force);
    for (let j = 0; j < SHARES; j += 1) {
      const moved = (by: number) =>
        withDensity(densities(shares.map((value, k) => (k === j ? value + by : value))));
      const [up, down] = [densityOfSlices(moved(SMALL)), densityOfSlices(moved(-SMALL))];
      for (let k = 0; k < COMPARED; k += 1) {
        let sum = 0;
        for (let i = 0; i < SEARCH_SLICES; i += 1)
          sum += (bySlice[k * SEARCH_SLICES + i] * (up[i] - down[i])) / (2 * SMALL);
        rows.set(k, j, weight[k] * sum);
      }
    }
    return rows;
  };
  // From an even grading over the whole range, and from a body mostly soft or mostly hard: the best of the three.
  const starts = isNear
    ? [sharesOf(curveOf(body.density), body, range)]
    : [null, 0, SHARES - 1].map((heavy) =>
        Float64Array.from({ length: SHARES }, (_, i) =>
          heavy === null ? 1 / SHARES : i === heavy ? 0.7 : 0.3 / (SHARES - 1),
        ),
      );
  let best = sharesFor(starts[0], missed, slopes);
  for (const start of starts.slice(1)) {
    if (best.sum < MET * COMPARED) break;
    const other = sharesFor(start, missed, slopes);
    if (other.sum < best.sum) best = other;
  }
  const value = densities(best.shares);
  const design = withDensity(value);
  const off = crushesAt(printedLayers(design, material, hold), target.force).map(
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

const densityOfSlices = (body: PrintedBody): readonly number[] => {
  const at = curveOf(body.density);
  const step = body.height / SEARCH_SLICES;
  return Array.from({ length: SEARCH_SLICES }, (_, i) => at((i + 0.5) * step));
};

/** ∂ crush ÷ ∂ density of each slice [m], forces by rows: under the same stress a denser slice gives less. */
function crushByDensity(
  body: PrintedBody,
  material: LatticeMaterial,
  hold: PrintHold,
  forces: readonly number[],
): Float64Array {
  const shifted = (by: number): readonly Layer[] => {
    const value = body.density.value.map((density) => density + by);
    return printedLayers({ ...body, density: { ...body.density, value } }, material, hold, SEARCH_SLICES);
  };
  const [layers, up, down] = [shifted(0), shifted(SMALL), shifted(-SMALL)];
  const rows = new Float64Array(forces.length * SEARCH_SLICES);
  let state: ColumnState | undefined;
  forces.forEach((force, k) => {
    state = columnAt(layers, force, state);
    state.strain.subarray(0, SEARCH_SLICES).forEach((strain, i) => {
      const stressByDensity = (up[i].law.stress(strain) - down[i].law.stress(strain)) / (2 * SMALL);
      rows[k * SEARCH_SLICES + i] = (-layers[i].height * stressByDensity) / layers[i].law.slope(strain);
    });
  });
  return rows;
}

/** Densities from foot to tip, falling, inside the range: what the shares up to each place leave of its span. */
function fallingDensities(shares: Float64Array, { least, most }: DensityRange): readonly number[] {
  const whole = shares.reduce((sum, share) => sum + share, 0);
  let left = 1;
  return Array.from(shares.subarray(0, PLACES), (share) => {
    left -= share / whole;
    return least + (most - least) * Math.max(left, 0);
  });
}

/** The shares that give a density that falls, as near as the range lets them. */
function sharesOf(
  densityAt: (z: number) => number,
  body: PrintedBody,
  { least, most }: DensityRange,
): Float64Array {
  let above = 1;
  return Float64Array.from({ length: SHARES }, (_, i) => {
    const z = (body.height * i) / (PLACES - 1);
    const left = i === PLACES ? 0 : Math.min(above, Math.max((densityAt(z) - least) / (most - least), 0));
    const share = above - left;
    above = left;
    return share;
  });
}

/**
 * Shares ≥ 0 of one whole that make Σ missed² least: damped steps of Levenberg and Marquardt, each the nonnegative least
 * squares of the linear model, so that a share can come to nothing and go from there.
 */
function sharesFor(
  start: Float64Array,
  missedBy: (shares: Float64Array) => Float64Array,
  slopesAt: (shares: Float64Array) => Matrix,
): { readonly shares: Float64Array; readonly sum: number } {
  const squares = (all: Float64Array) => all.reduce((sum, value) => sum + value * value, 0);
  let shares = start;
  let missed = missedBy(shares);
  let sum = squares(missed);
  let slopes = slopesAt(shares);
  let damping = 1e-3;
  for (let step = 0; step < MOST_STEPS && sum > MET * COMPARED; step += 1) {
    const size = slopes.norm();
    const rows = Matrix.zeros(COMPARED + 2 * SHARES + 1, SHARES);
    rows.setSubMatrix(slopes, 0, 0);
    const right = new Float64Array(rows.rows);
    for (let k = 0; k < COMPARED; k += 1) {
      right[k] = -missed[k];
      for (let j = 0; j < SHARES; j += 1) right[k] += slopes.get(k, j) * shares[j];
    }
    for (let j = 0; j < SHARES; j += 1) {
      const held = Math.sqrt(damping) * size;
      rows.set(COMPARED + j, j, held);
      right[COMPARED + j] = held * shares[j];
      rows.set(COMPARED + SHARES + j, j, EVENNESS * size);
      right[COMPARED + SHARES + j] = (EVENNESS * size) / SHARES;
      rows.set(COMPARED + 2 * SHARES, j, ONE * size);
    }
    right[COMPARED + 2 * SHARES] = ONE * size;
    const next = nonNegativeLeastSquares(rows, right);
    const whole = next.reduce((all, share) => all + share, 0);
    for (let j = 0; j < SHARES; j += 1) next[j] /= whole;
    const nextMissed = missedBy(next);
    const nextSum = squares(nextMissed);
    const isStill = next.every((share, j) => Math.abs(share - shares[j]) < STILL);
    if (nextSum < sum) {
      const gained = sum - nextSum;
      [shares, missed, sum] = [next, nextMissed, nextSum];
      damping = Math.max(damping / 4, 1e-9);
      if (gained < FLAT * sum) break;
      slopes = slopesAt(shares);
    } else damping *= 6;
    if (isStill || damping > 1e6) break;
  }
  return { shares, sum };
}

/** What a metre of crush missed counts at each place: of the whole crush, and of the force that it is worth there. */
function weightsOf({ crush, force }: WantedCurve): readonly number[] {
  const full = crush[crush.length - 1];
  return force.map((f, k) => {
    const [a, b] = [k === 0 ? 0 : force[k - 1], force[Math.min(k + 1, force.length - 1)]];
    const [from, to] = [k === 0 ? 0 : crush[k - 1], crush[Math.min(k + 1, crush.length - 1)]];
    return 1 / full + (BY_FORCE * (b - a)) / (to - from) / f;
  });
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
