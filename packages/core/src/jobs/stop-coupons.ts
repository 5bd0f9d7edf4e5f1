import { bad, good, type Result } from '../finding/problem.ts';
import { type PrintMaterial, type PrintMaterialName, usualMaterial } from '../stopdesign/print-material.ts';
import type { PrintedBody } from '../stopdesign/printed-body.ts';
import { middlePrint, pressed, spreadOf } from './print-spread.ts';
import { printableRange } from './stop-design-faults.ts';

export interface CouponPlanRequest {
  /** Edge of a cell, and the thinnest wall that prints whole [m]: those of the stop to come. */
  readonly cell: number;
  readonly wall: number;
  readonly material: PrintMaterialName | PrintMaterial;
}

/** A coupon to print and press. */
export interface PlannedCoupon {
  /** `A1`, `A2`, `B1` …: letter by density, number by copy. */
  readonly name: string;
  readonly density: number;
  readonly readings: readonly PlannedReading[];
}

export interface PlannedReading {
  /** [m] */
  readonly crush: number;
  /** What it will take, at least and at most [N]; null where it may have closed. */
  readonly least: number;
  readonly most: number | null;
}

export interface CouponPlan {
  /** Plain cylinders, open at all faces [m]. */
  readonly diameter: number;
  readonly height: number;
  readonly cell: number;
  readonly densities: readonly number[];
  readonly copies: number;
  readonly coupons: readonly PlannedCoupon[];
}

/** Cells across and up: fewer show their edges, more want a press of tons. */
const CELLS = 3;
/** Densities, as shares of what prints: two tell how the modulus goes with density, the third whether that is a power. */
const PLACES = [0.05, 0.45, 0.9] as const;
/** Two of each show what printing alone scatters. */
const COPIES = 2;
const READINGS = 9;
/** How deep: share of the strain at which the middle of the band closes, so that closing shows. */
const DEEP = 0.8;
const TRIALS = 60;
const SEED = 1;

/**
 * Which coupons tell a printed material, and what to read on the press.
 *
 * @failure `stop-shape`, `stop-design-range` as `designStop`
 */
export function couponPlan({ cell, wall, material: asked }: CouponPlanRequest): Result<CouponPlan> {
  if (!(cell > 0 && wall > 0))
    return bad({ code: 'stop-shape', where: {}, found: 'such cells', accepted: 'cell and wall above zero' });
  const { least, most } = printableRange(cell, wall);
  if (least >= most)
    return bad({
      code: 'stop-design-range',
      where: {},
      found: `${Math.round(100 * least)} %`,
      accepted: 'a thinner wall or a larger cell: the least density must stay below 60 %',
    });
  const material = typeof asked === 'string' ? usualMaterial(asked) : asked;
  const side = CELLS * cell;
  const densities = PLACES.map((place) => Math.ceil(100 * (least + place * (most - least))) / 100);
  const coupons = densities.flatMap((density, i) => {
    const readings = readingsOf(side, density, material);
    const letter = String.fromCharCode(65 + i);
    return Array.from({ length: COPIES }, (_, copy) => ({ name: `${letter}${copy + 1}`, density, readings }));
  });
  return good({ diameter: side, height: side, cell, densities, copies: COPIES, coupons });
}

function readingsOf(side: number, density: number, material: PrintMaterial): readonly PlannedReading[] {
  const body: PrintedBody = {
    height: side,
    radius: { at: [0, side], value: [side / 2, side / 2] },
    bore: 0,
    skin: 0,
    density: { at: [0, side], value: [density, density] },
  };
  const print = middlePrint(body, material, false);
  const deep = DEEP * side * (1 - print.material.closing * density);
  const crush = Array.from({ length: READINGS }, (_, i) => roundTo(1e-4, (deep * (i + 1)) / READINGS));
  const forces = crush.map(pressed(print).forceAt);
  const spread = spreadOf({ body, material, isShut: false, trials: TRIALS, seed: SEED }, crush, forces);
  return crush.map((c, i) => ({ crush: c, least: spread[i].low ?? 0, most: spread[i].high }));
}

const roundTo = (step: number, value: number): number => Math.round(value / step) * step;
