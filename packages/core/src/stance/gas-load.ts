import { shockGasOf } from '../elements/shock-gas.ts';
import type { AxleEnd } from '../rig/rig.ts';
import { type Column, columnOf } from './columns.ts';
import type { Draws } from './draws.ts';

/**
 * What the gas of one shock carries of the body at ride height, seen at the axle [N]: ratio · force. The coil has so much
 * less to carry, unseats so much sooner, and is so much shorter than the weight alone says.
 *
 * @validity where the shaft stands as the rig was measured: a setup that moves ride height moves it along a rate that is
 * small beside the coil's
 * @returns zeros where the gas was not measured
 */
export function gasLoad({ shock }: AxleEnd, draws: Draws): Column {
  if (!shock.gas) return new Float64Array(draws.trials + 1);
  const ratio = draws.of(shock.ratio);
  return columnOf(ratio.length, (i) => {
    const gas = shockGasOf(shock, (reading) => draws.of(reading)[i]);
    return gas === null ? 0 : ratio[i] * gas.force;
  });
}
