import { cubicValue, monotoneCubic } from '@lastinch/core';

/**
 * The level of a gyroid:
 *
 *     φ = sin X cos Y + sin Y cos Z + sin Z cos X,   X = 2πx/L
 *
 * The sheet of half level t is all that lies at |φ| ≤ t. |φ| stays below 1.5.
 *
 * @param cell – edge L of the cubic cell [m]
 */
export function gyroidLevel(x: number, y: number, z: number, cell: number): number {
  const k = (2 * Math.PI) / cell;
  const [a, b, c] = [k * x, k * y, k * z];
  return Math.sin(a) * Math.cos(b) + Math.sin(b) * Math.cos(c) + Math.sin(c) * Math.cos(a);
}

/** Largest level, at which all of the cell is solid. */
const FULL = 1.5;
/** Points across a cell, along Y and along Z; along X the share is exact. */
const ACROSS = 160;
/** Half levels between which the curve of density is drawn. */
const STEPS = 60;

/**
 * Share of a cell that the sheet fills, at many half levels at once.
 *
 * For given Y and Z the level is A·cos(X − δ) + B with A² = cos²Y + sin²Z and B = sin Y cos Z, so the share of X below a
 * level s is 1 − acos((s − B)/A)/π; the mean over Y and Z is taken at even mid-points.
 *
 * @source computed for this house on a grid of 400³ points, check values 10.1a
 */
function sheetShares(levels: readonly number[]): readonly number[] {
  const sums = levels.map(() => 0);
  for (let j = 0; j < ACROSS; j += 1) {
    const y = (2 * Math.PI * (j + 0.5)) / ACROSS;
    for (let k = 0; k < ACROSS; k += 1) {
      const z = (2 * Math.PI * (k + 0.25)) / ACROSS;
      const swing = Math.hypot(Math.cos(y), Math.sin(z));
      const middle = Math.sin(y) * Math.cos(z);
      const below = (s: number) => 1 - Math.acos(Math.max(-1, Math.min(1, (s - middle) / swing))) / Math.PI;
      levels.forEach((t, i) => {
        sums[i] += below(t) - below(-t);
      });
    }
  }
  return sums.map((sum) => sum / ACROSS ** 2);
}

interface DensityTable {
  readonly level: readonly number[];
  readonly density: readonly number[];
}

let table: DensityTable | null = null;

/** Made once, when it is first asked for: some ten milliseconds. */
function densityTable(): DensityTable {
  if (table === null) {
    const level = Array.from({ length: STEPS + 1 }, (_, i) => (FULL * i) / STEPS);
    const density = sheetShares(level);
    table = { level, density: density.map((rho, i) => (i === 0 ? 0 : i === STEPS ? 1 : rho)) };
  }
  return table;
}

/** Relative density of the sheet |φ| ≤ t. */
export function sheetDensity(level: number): number {
  const { level: at, density } = densityTable();
  return cubicValue(monotoneCubic(at, density), Math.max(0, Math.min(FULL, level)));
}

/**
 * Half level t of the sheet that fills a share of its cell.
 *
 * @param density – 0 … 1
 */
export function sheetLevel(density: number): number {
  const { level, density: at } = densityTable();
  return cubicValue(monotoneCubic(at, level), Math.max(0, Math.min(1, density)));
}

/**
 * Thinnest place of the sheet [m]. It is where the middle surface is flat: there, along the space diagonal, the level is
 * 1.5·sin(2u) at a distance of √3·u per radian, so that
 *
 *     w = √3·asin(t ÷ 1.5)·L ÷ 2π
 *
 * @source worked out here; lines across the sheet in validation `solids/sheet-wall`
 */
export const thinnestWall = (density: number, cell: number): number =>
  (Math.sqrt(3) * Math.asin(Math.min(1, sheetLevel(density) / FULL)) * cell) / (2 * Math.PI);
