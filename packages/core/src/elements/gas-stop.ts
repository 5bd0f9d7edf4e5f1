import type { GasStop } from '../rig/parts.ts';
import type { ValueOf } from '../rig/reading.ts';
import { ATMOSPHERE, type GasChamber, gasStopCurve, rodArea } from './gas-chamber.ts';

/** The chamber of a gas-charged stop. */
const chamberOf = (gas: GasStop, of: ValueOf): GasChamber => ({
  area: rodArea(of(gas.rodDiameter)),
  pressure: of(gas.pressure),
  column: of(gas.column),
  index: of(gas.index),
});

/**
 * A gas-charged stop for the ride: its curve, force [N] over crush [m], and what its oil does at speed,
 * `oilFactor`·v² while closing [N·s²/m²].
 *
 * @param stroke – usable stroke [m]; where sampled readings leave less column than that, what leaves a twentieth of it
 * @validity as `gas-chamber`; the oil's force is taken to go with the square of speed through the one reading
 */
export function gasStopOf(gas: GasStop, stroke: number, of: ValueOf) {
  const chamber = chamberOf(gas, of);
  const curve = gasStopCurve(chamber, Math.min(stroke, 0.95 * chamber.column));
  const oilFactor = gas.oil ? of(gas.oil.force) / of(gas.oil.speed) ** 2 : 0;
  return { ...curve, oilFactor };
}

/**
 * Column that goes with a force at full stroke: L = s·q ÷ (q − 1), qⁿ = (F/A + pₐ) ÷ (p₀ absolute).
 *
 * @param force – at the stroke [N], more than the preload
 */
export function columnFor(
  { area, pressure, index }: Omit<GasChamber, 'column'>,
  stroke: number,
  force: number,
): number {
  const squeezed = ((force / area + ATMOSPHERE) / (pressure + ATMOSPHERE)) ** (1 / index);
  return (stroke * squeezed) / (squeezed - 1);
}
