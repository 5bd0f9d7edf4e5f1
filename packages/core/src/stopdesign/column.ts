import { type LayerLaw, strainAt } from './layer-law.ts';

/** One slice of a stop across its axis. */
export interface Layer {
  /** [m] at rest. */
  readonly height: number;
  /** Across the axis, at rest, cells and all [m²]. */
  readonly area: number;
  readonly law: LayerLaw;
}

/** A column of slices under one force. */
export interface ColumnState {
  /** [N] */
  readonly force: number;
  /** Of the whole column [m]. */
  readonly crush: number;
  /** d crush ÷ d force [m/N]. */
  readonly compliance: number;
  /** Strain of each slice. */
  readonly strain: Float64Array;
}

/**
 * Slices in series: each carries the whole force, their crushes add.
 *
 * @param airPressure – of air shut in the body, above that outside [Pa]: it carries its share on each slice
 * @invariant the order of the slices is of no account; force against crush rises
 * @validity slender enough to stay straight and squat enough that bonded ends do not rule: `slenderness`. Neighbouring
 *   slices do not hold each other's widening
 * @source equilibrium of a rod; see the closed forms on the validation page
 */
export function columnAt(
  layers: readonly Layer[],
  force: number,
  before?: ColumnState,
  airPressure = 0,
): ColumnState {
  const strain = new Float64Array(layers.length);
  let [crush, compliance] = [0, 0];
  layers.forEach(({ height, area, law }, i) => {
    strain[i] = strainAt(law, force / area - airPressure, before?.strain[i]);
    crush += height * strain[i];
    compliance += height / (area * law.slope(strain[i]));
  });
  return { force, crush, compliance, strain };
}

/** Energy held in the column [J]: the work of the force on the way there. */
export function columnEnergy(layers: readonly Layer[], { strain }: ColumnState): number {
  return layers.reduce((sum, { height, area, law }, i) => sum + height * area * law.energy(strain[i]), 0);
}

/**
 * The column pressed by so much.
 *
 * @param crush – [m] ≥ 0, less than what closes all slices
 */
export function columnPressed(layers: readonly Layer[], crush: number, airPressure = 0): ColumnState {
  let state = columnAt(layers, 0, undefined, airPressure);
  if (crush <= 0) return state;
  // Compliance falls with force where slices stiffen, so Newton's steps in force may fall short but come back;
  // where slices soften they may overshoot: the bracket holds both.
  let [low, high] = [0, Number.POSITIVE_INFINITY];
  for (let tries = 0; tries < 200; tries += 1) {
    const missing = crush - state.crush;
    if (Math.abs(missing) <= 1e-13 * crush) return state;
    if (missing > 0) low = state.force;
    else high = state.force;
    const newton = state.force + missing / state.compliance;
    const next =
      newton > low && newton < high ? newton : high === Number.POSITIVE_INFINITY ? 2 * low : (low + high) / 2;
    if (next === state.force) return state;
    state = columnAt(layers, next, state, airPressure);
  }
  return state;
}

/** What a stop is like along its height: z from the foot (0) to the tip [m]. */
export interface Body {
  readonly height: number;
  /** Area across the axis at height z [m²]. */
  readonly areaAt: (z: number) => number;
  readonly lawAt: (z: number) => LayerLaw;
}

/**
 * A body cut in even slices, each with what stands at its middle: the error of the crush goes with count⁻².
 */
export function slicesOf({ height, areaAt, lawAt }: Body, count: number): readonly Layer[] {
  const thickness = height / count;
  return Array.from({ length: count }, (_, i) => {
    const z = (i + 0.5) * thickness;
    return { height: thickness, area: areaAt(z), law: lawAt(z) };
  });
}
