import type { Dimension, Figure } from '../finding/figure.ts';
import { ABSORBED_POWER_SPREAD } from './absorbed-power.ts';
import type { ExposureResult, SeatExposure } from './result.ts';

/** The headline numbers of the vertical direction, each with its half-width; null is unknown. */
export interface ExposureFigures {
  readonly rms: Figure | null;
  readonly maximumTransient: Figure | null;
  readonly dose: Figure | null;
  readonly crestFactor: Figure | null;
  readonly timeToAction: Figure | null;
  readonly timeToLimit: Figure | null;
  /** A(8) and dose of a day; null when no time a day was given. */
  readonly dailyAcceleration: Figure | null;
  readonly dailyDose: Figure | null;
  readonly absorbedPower: Figure | null;
  readonly lowPassedPeak: Figure | null;
  readonly dynamicResponseIndex: Figure | null;
  /** Of ISO 2631-5:2004, whose vertical model rests on a single source: dose [m/s²] and stress [Pa] of the record. */
  readonly spinalDose: Figure | null;
  readonly spinalStress: Figure | null;
}

/**
 * Figures from the exposure at the nominal readings and those of the trials: half-width is twice the root mean square
 * deviation from the nominal value (k = 2), as for every figure of a ride. Absorbed power takes the spread of its two
 * published forms along.
 *
 * @param trials – one exposure a trial; fewer than two, or one that knows less than the nominal one: tolerance null
 */
export function exposureFigures(nominal: ExposureResult, trials: readonly ExposureResult[]): ExposureFigures {
  const figure = (
    dimension: Dimension,
    of: (seat: SeatExposure) => number | null,
    modelSpread = 0,
  ): Figure | null => {
    const value = known(nominal, of);
    if (value === null) return null;
    const spread = halfWidth(value, trials, of);
    return { dimension, value, tolerance: spread === null ? null : Math.hypot(spread, modelSpread * value) };
  };
  return {
    rms: figure('acceleration', ({ vertical }) => vertical.rms),
    maximumTransient: figure('acceleration', ({ vertical }) => vertical.maximumTransient),
    dose: figure('vibrationDose', ({ vertical }) => vertical.dose),
    crestFactor: figure('ratio', ({ vertical }) => vertical.crestFactor),
    timeToAction: figure('time', ({ toAction }) => toAction.byAcceleration),
    timeToLimit: figure('time', ({ toLimit }) => toLimit.byAcceleration),
    dailyAcceleration: figure('acceleration', ({ daily }) => daily?.acceleration ?? null),
    dailyDose: figure('vibrationDose', ({ daily }) => daily?.dose ?? null),
    absorbedPower: figure('power', (seat) => seat.absorbedPower, ABSORBED_POWER_SPREAD),
    lowPassedPeak: figure('acceleration', (seat) => seat.lowPassedPeak),
    dynamicResponseIndex: figure('ratio', (seat) => seat.dynamicResponseIndex),
    spinalDose: figure('acceleration', ({ spinal }) => spinal?.vertical ?? null),
    spinalStress: figure('pressure', ({ spinal }) => spinal?.stress ?? null),
  };
}

const known = ({ seat }: ExposureResult, of: (seat: SeatExposure) => number | null): number | null =>
  seat === null ? null : of(seat);

function halfWidth(
  centre: number,
  trials: readonly ExposureResult[],
  of: (seat: SeatExposure) => number | null,
): number | null {
  if (trials.length < 2) return null;
  let squares = 0;
  for (const trial of trials) {
    const value = known(trial, of);
    // A trial without a value would leave the spread of those that have one.
    if (value === null || !Number.isFinite(value - centre)) return null;
    squares += (value - centre) ** 2;
  }
  return 2 * Math.sqrt(squares / trials.length);
}
