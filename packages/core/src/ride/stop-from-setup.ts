import { gasStopOf } from '../elements/gas-stop.ts';
import { MOST_HYSTERESIS, stopLoss } from '../elements/stop-loss.ts';
import { stopVentOf } from '../elements/stop-vent.ts';
import type { Stop } from '../rig/parts.ts';
import type { Reading, ValueOf } from '../rig/reading.ts';
import type { AxleModel } from './model.ts';

/** What a stop is to the ride: the curve it gives back, and every way in which it loses. */
type StopLaw = Omit<AxleModel['stop'], 'halfStation' | 'ratio' | 'gap'>;

/**
 * A stop with gas has the curve of its gas and the loss of its oil; any other its press curve, parted into what is given
 * back and a friction branch where its press loss was read, with a viscous branch where a dynamic factor was. What the
 * air of a vented stop takes out is lost as oil is: it goes with the square of the speed, while closing.
 *
 * @validity a sampled loss is held between none and the largest that a stop may have. A gas curve ends at the nominal
 *   usable crush in every trial; beyond it its last slope is carried on, as beyond any table.
 */
export function stopLaw(stop: Stop, at: ValueOf): StopLaw {
  const rateFactor = at(stop.rateFactor);
  if (stop.gas) {
    const { crush, force, oilFactor } = gasStopOf(stop.gas, stop.crush[stop.crush.length - 1], at);
    return { crush, force, rateFactor, ...(oilFactor > 0 && { oilFactor }) };
  }
  const { crush, force, friction, maxwell } = stopLoss(stop.crush, stop.force, {
    usableCrush: Math.max(at(stop.usableCrush), stop.usableCrush.value / 10),
    hysteresis: stop.hysteresis && shareOf(stop.hysteresis, at),
    dynamicFactor: stop.dynamicFactor && at(stop.dynamicFactor),
  });
  return {
    crush,
    force,
    rateFactor,
    ...(friction && { friction }),
    ...(maxwell && { maxwell }),
    ...(stop.vent && { oilFactor: stopVentOf(stop.vent, at).lossFactor }),
  };
}

const shareOf = (reading: Reading, at: ValueOf): number =>
  Math.min(MOST_HYSTERESIS, Math.max(0, at(reading)));
