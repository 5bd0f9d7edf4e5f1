import type { SetupEnd } from '../rig/setup.ts';
import { type Column, columnOf } from './columns.ts';
import type { Draws } from './draws.ts';

/**
 * Vertical rate of one tyre at the pressure of the setup [N/m], sampled: in proportion to inflation.
 *
 *     k = k_measured · p ÷ p_measured
 *
 * @validity empirical: the carcass carries a part of the load whatever the pressure, so airing down softens a real
 * tyre less than this; `common practice, no source`
 */
export function tyreRate({ base, patch }: SetupEnd, draws: Draws): Column {
  const measured = draws.of(base.tyre.rate);
  if (!patch.tyrePressure || !base.tyre.pressure) return measured;
  const before = draws.of(base.tyre.pressure);
  const after = draws.of(patch.tyrePressure);
  return columnOf(measured.length, (i) => (measured[i] * after[i]) / before[i]);
}
