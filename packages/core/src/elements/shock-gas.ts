import type { ValueOf } from '../rig/reading.ts';
import type { Shock } from '../rig/rig.ts';
import { ATMOSPHERE, type GasChamber, gasForce, gasRate, rodArea } from './gas-chamber.ts';

/** What is known of the gas in a shock. */
export interface ShockGasReadings {
  /** Charge, gauge, rod fully out [Pa]. */
  readonly pressure: number;
  readonly rodDiameter: number;
  /** Gauge pressure gained over the whole stroke ÷ charge: 0.1 to 0.6 (common practice, no source). */
  readonly rise: number;
  /** Whole stroke [m]. */
  readonly stroke: number;
}

/**
 * The gas of a shock as a chamber: the rod takes its own volume from the gas. The column follows from the rise,
 * L = s·q ÷ (q − 1) with q = (p(1 + rise) + pₐ) ÷ (p + pₐ), by a slow stroke (n = 1).
 *
 * @param rise – > 0
 * @source Boyle's law
 */
export function shockChamber({ pressure, rodDiameter, rise, stroke }: ShockGasReadings): GasChamber {
  const squeezed = (pressure * (1 + rise) + ATMOSPHERE) / (pressure + ATMOSPHERE);
  return {
    area: rodArea(rodDiameter),
    pressure,
    column: (stroke * squeezed) / (squeezed - 1),
    index: 1,
  };
}

/**
 * Force of the gas at ride height and its rate there, along the shaft: it holds the rig up beside the coil.
 *
 * @param fromOpen – how far the shaft is in at ride height [m], 0 … stroke
 * @returns force [N] and rate [N/m]
 * @validity the rate is that of a slow stroke about ride height; a fast one is up to 1.4 times as stiff. Both are small
 *   beside a coil: 535 N and a few hundred N/m for a 7/8 in rod at 200 psi.
 */
export function shockGasAt(readings: ShockGasReadings, fromOpen: number) {
  const chamber = shockChamber(readings);
  return { force: gasForce(chamber, fromOpen), rate: gasRate(chamber, fromOpen) };
}

/**
 * The same from a rig.
 *
 * @returns null where the shock's gas, or a length that it needs, was not measured
 */
export function shockGasOf(
  shock: Pick<Shock, 'gas' | 'rideLength' | 'collapsedLength' | 'extendedLength'>,
  of: ValueOf,
) {
  const { gas, rideLength, collapsedLength, extendedLength } = shock;
  if (!gas || !rideLength || !collapsedLength || !extendedLength) return null;
  const open = of(extendedLength);
  const stroke = open - of(collapsedLength);
  const readings = {
    pressure: of(gas.pressure),
    rodDiameter: of(gas.rodDiameter),
    rise: of(gas.rise),
    stroke,
  };
  return shockGasAt(readings, Math.min(stroke, Math.max(0, open - of(rideLength))));
}
