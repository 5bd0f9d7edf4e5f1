import { ATMOSPHERE } from '../elements/gas-chamber.ts';
import { type ColumnState, columnPressed, type Layer } from './column.ts';

/** Air shut in a printed body by its skin. */
export interface ShutAir {
  /** At rest, at the pressure outside [m³]. */
  readonly volume: number;
  /** Polytropic index: 1 pressed slowly, 1.4 hit. */
  readonly index: number;
}

/** Turns that settle the pressure: of a straight body the first one is right, others come three digits closer each. */
const TURNS = 40;

/**
 * A column pressed by so much with air shut in it. One pressure stands everywhere, since a sheet lattice leaves its
 * cells open to each other; it carries beside the walls on each slice, and the air has what the slices have lost:
 *
 *     p = p₀·((V₀ ÷ (V₀ − Σ Aᵢ·hᵢ·εᵢ))ⁿ − 1)
 *
 * @param crush – [m] ≥ 0, less than what closes all slices
 * @returns the state, and the pressure above that outside [Pa]; Infinity where the body would have lost all of its air
 * @invariant of a straight body: force = that of its walls + area·pressure
 * @validity a skin that does not bulge. Ideal gas; a skin that leaks holds less
 */
export function pressedWithAir(
  layers: readonly Layer[],
  crush: number,
  { volume, index }: ShutAir,
): { readonly state: ColumnState; readonly pressure: number } {
  let state = columnPressed(layers, crush);
  let pressure = 0;
  for (let turn = 0; turn < TURNS; turn += 1) {
    const left = volume - lostVolume(layers, state);
    if (left <= 0) return { state, pressure: Number.POSITIVE_INFINITY };
    const next = ATMOSPHERE * ((volume / left) ** index - 1);
    if (Math.abs(next - pressure) <= 1e-9 * ATMOSPHERE) break;
    pressure = next;
    state = columnPressed(layers, crush, pressure);
  }
  return { state, pressure };
}

const lostVolume = (layers: readonly Layer[], { strain }: ColumnState): number =>
  layers.reduce((sum, { height, area }, i) => sum + height * area * strain[i], 0);
