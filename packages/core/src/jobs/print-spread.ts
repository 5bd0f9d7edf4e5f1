import { normalTrials } from '../numerics/sampling.ts';
import { pressedWithAir } from '../stopdesign/body-air.ts';
import { type ColumnState, columnPressed, type Layer } from '../stopdesign/column.ts';
import { FITTED, PRINT_SCATTER } from '../stopdesign/coupon-fit.ts';
import type { LatticeMaterial } from '../stopdesign/lattice-law.ts';
import { drawnMaterial, type PrintMaterial } from '../stopdesign/print-material.ts';
import {
  airVolume,
  HALF_HELD,
  type PrintedBody,
  type PrintHold,
  printedLayers,
  SLICES,
} from '../stopdesign/printed-body.ts';

/** A body as it may come out of the printer. */
export interface OnePrint {
  readonly body: PrintedBody;
  readonly material: LatticeMaterial;
  readonly hold: PrintHold;
  /** Share of the force of shut air that a skin without vents keeps; 0 where nothing shuts it in. */
  readonly air: number;
}

/** Nearer to closed than this a column is solid. */
const OPEN = 0.98;

/** The middle of all that may come out. */
export const middlePrint = (body: PrintedBody, material: PrintMaterial, isShut: boolean): OnePrint => ({
  body,
  material: drawnMaterial(material, [0, 0, 0, 0]),
  hold: HALF_HELD,
  air: isShut ? 0.5 : 0,
});

/** A print pressed slowly by each crush, and its force [N]; Infinity once every slice has closed. */
export interface Pressed {
  readonly layers: readonly Layer[];
  readonly forceAt: (crush: number) => number;
  /** The last state short of closed. */
  readonly stateAt: (crush: number) => ColumnState;
}

export function pressed({ body, material, hold, air }: OnePrint): Pressed {
  const layers = printedLayers(body, material, hold);
  const closed = closedCrush(layers);
  const stateAt = (crush: number) => columnPressed(layers, Math.min(crush, OPEN * closed));
  return {
    layers,
    stateAt,
    forceAt(crush) {
      if (crush >= OPEN * closed) return Number.POSITIVE_INFINITY;
      const walls = columnPressed(layers, crush).force;
      if (air === 0 || crush === 0) return walls;
      const { state } = pressedWithAir(layers, crush, { volume: airVolume(body), index: 1 });
      return walls + air * (state.force - walls);
    },
  };
}

/** Crush at which every slice of the lattice has closed [m]; its solid plates never do. */
export const closedCrush = (layers: readonly Layer[]): number =>
  layers.slice(0, SLICES).reduce((sum, { height, law }) => sum + height * law.locksAt, 0);

export interface SpreadAsked {
  readonly body: PrintedBody;
  readonly material: PrintMaterial;
  readonly isShut: boolean;
  readonly trials: number;
  readonly seed: number;
}

/**
 * 95 % interval of the force at each crush over print and material: half-width in the logarithm of the force, twice its
 * root mean square over trials.
 *
 * @param nominal – forces of the middle print [N]
 * @returns the upper end null where some trials had closed up, since there a force has no end; then the lower side is that
 *   of the places before. Both null where the middle print has closed
 */
export function spreadOf(
  { body, material, isShut, trials, seed }: SpreadAsked,
  crush: readonly number[],
  nominal: readonly number[],
): readonly { readonly low: number | null; readonly high: number | null }[] {
  const numbers = FITTED.length + 4;
  const z = normalTrials(trials, numbers, seed);
  const squares = crush.map(() => 0);
  for (let t = 0; t < trials; t += 1) {
    const draw = z.subarray(t * numbers, (t + 1) * numbers);
    const [weight, skin, ends, air] = draw.subarray(FITTED.length);
    const value = body.density.value.map((rho) => rho * (1 + (PRINT_SCATTER / 2) * weight));
    const { forceAt } = pressed({
      body: { ...body, density: { ...body.density, value } },
      material: drawnMaterial(material, draw),
      hold: { skin: within(skin), ends: within(ends) },
      air: isShut ? within(air) : 0,
    });
    crush.forEach((c, i) => {
      if (c > 0) squares[i] += Math.log(forceAt(c) / nominal[i]) ** 2;
    });
  }
  const ends = squares.map((sum, i) => {
    if (!Number.isFinite(nominal[i])) return { low: null, high: null };
    const half = 2 * Math.sqrt(sum / trials);
    if (Number.isFinite(half))
      return { low: nominal[i] * Math.exp(-half), high: nominal[i] * Math.exp(half) };
    const known = squares.slice(0, i).filter(Number.isFinite);
    const before = 2 * Math.sqrt((known[known.length - 1] ?? 0) / trials);
    return { low: nominal[i] * Math.exp(-before), high: null };
  });
  // Every trial rises with crush, so the ends of the interval do as well, whatever the scatter does where cells close.
  let least = 0;
  return ends.map(({ low, high }) => {
    least = Math.max(least, low ?? 0);
    return { low: low === null ? null : least, high };
  });
}

/** Half-way between the least and the most, to which 95 % lie between the two. */
const within = (z: number): number => Math.min(1, Math.max(0, 0.5 + 0.25 * z));

/** What one part of the height does to the curve when it comes out otherwise than drawn. */
export interface ZoneScatter {
  /** Above the foot [m]. */
  readonly from: number;
  readonly to: number;
  /** Force ÷ force of the middle print − 1 at half and at the end of the crush, with this part alone denser by
   *  `DENSER` of its density; null where it has closed. */
  readonly denser: readonly (number | null)[];
  /** The same with its walls stiffer by `STIFFER`. */
  readonly stiffer: readonly (number | null)[];
}

export const DENSER = 0.05;
export const STIFFER = 0.1;
const ZONES = 6;

/** How the curve moves with density and modulus of each sixth of the height. */
export function zoneScatter(print: OnePrint, crushes: readonly number[]): readonly ZoneScatter[] {
  const { body, material, hold } = print;
  const plain = printedLayers(body, material, hold);
  const denserAll = printedLayers(
    { ...body, density: { ...body.density, value: body.density.value.map((rho) => rho * (1 + DENSER)) } },
    material,
    hold,
  );
  const stifferAll = printedLayers(
    body,
    { ...material, solidModulus: material.solidModulus * (1 + STIFFER) },
    hold,
  );
  const middle = crushes.map((c) => columnPressed(plain, c).force);
  const each = SLICES / ZONES;
  const foot = body.foot ?? 0;
  const step = body.height / ZONES;
  return Array.from({ length: ZONES }, (_, zone) => {
    const changed = (all: readonly Layer[]) => {
      const layers = plain.map((layer, i) => (Math.floor(i / each) === zone ? all[i] : layer));
      const closed = OPEN * closedCrush(layers);
      return crushes.map((c, i) => (c < closed ? columnPressed(layers, c).force / middle[i] - 1 : null));
    };
    return {
      from: foot + zone * step,
      to: foot + (zone + 1) * step,
      denser: changed(denserAll),
      stiffer: changed(stifferAll),
    };
  });
}
