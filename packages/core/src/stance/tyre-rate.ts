import { lineOf, rateAtPressure } from '../elements/tyre-rate.ts';
import type { SetupEnd } from '../rig/setup.ts';
import { type Column, columnOf } from './columns.ts';
import type { Draws } from './draws.ts';

/** Vertical rate of one tyre at the pressure of the setup [N/m], sampled: the rate on the rig, taken to that pressure. */
export function tyreRate({ base, patch }: SetupEnd, draws: Draws): Column {
  const measured = draws.of(base.tyre.rate);
  if (!patch.tyrePressure || !base.tyre.pressure) return measured;
  const before = draws.of(base.tyre.pressure);
  const after = draws.of(patch.tyrePressure);
  const line = lineOf(base.tyre.size);
  return columnOf(measured.length, (i) => rateAtPressure(measured[i], before[i], after[i], line));
}
