import type { Figure } from '../finding/figure.ts';
import type { ExposureFigures } from './figures.ts';
import { DAILY_VALUES, timeToDose, timeToExposure } from './limits.ts';

/** Driving time until a value of a day is reached [s]; both ends null when the tolerance behind it is unknown. */
export interface DrivingTime {
  readonly value: number;
  readonly ends: { readonly low: number; readonly high: number } | null;
}

/** By r.m.s. and by dose; null when that is unknown. */
export interface DrivingTimes {
  readonly byAcceleration: DrivingTime | null;
  readonly byDose: DrivingTime | null;
}

/**
 * Driving times of vertical shaking, with the ends that the interval of r.m.s. and dose gives. They go with the square
 * and the fourth power, so that the ends lie far from even about the value; `high` is infinite where nothing may shake.
 *
 * @param duration – of the record [s]
 */
export function drivingTimes(
  { rms, dose }: Pick<ExposureFigures, 'rms' | 'dose'>,
  duration: number,
): Readonly<Record<'toAction' | 'toLimit', DrivingTimes>> {
  const to = (value: (typeof DAILY_VALUES)['action']): DrivingTimes => ({
    byAcceleration: spanOf(rms, (of) => timeToExposure(of, value.acceleration)),
    byDose: spanOf(dose, (of) => timeToDose(of, duration, value.dose)),
  });
  return { toAction: to(DAILY_VALUES.action), toLimit: to(DAILY_VALUES.limit) };
}

function spanOf(figure: Figure | null, time: (of: number) => number): DrivingTime | null {
  if (figure === null) return null;
  const { value, tolerance } = figure;
  return {
    value: time(value),
    ends:
      tolerance === null
        ? null
        : { low: time(value + tolerance), high: time(Math.max(0, value - tolerance)) },
  };
}
