import { rootMeanSquare } from '../exposure/dose.ts';
import { type DrivingTimes, drivingTimes } from '../exposure/driving-times.ts';
import { exposureOf } from '../exposure/exposure.ts';
import { type ExposureFigures, exposureFigures } from '../exposure/figures.ts';
import type { ExposureResult } from '../exposure/result.ts';
import type { SeatPlace } from '../exposure/seat.ts';
import { weightedHistory } from '../exposure/weighting.ts';
import type { Figure } from '../finding/figure.ts';
import type { RideModel } from '../ride/model.ts';
import type { RideRun } from '../ride/result.ts';
import { SEAT_RATE, type SeatKind, seatPlaces, seatRecord, tiltingRecord } from './seat-record.ts';

/**
 * What the seat takes on a ride, up and down. Fore and aft and sideways are unknown: the model drives at constant
 * speed and does not steer.
 */
export interface RideExposure {
  readonly at: SeatKind;
  /** Where the seat is at the nominal readings, front axle to hips and centre line to hips, left positive [m]. */
  readonly place: { readonly behindFrontAxle: number; readonly left: number };
  /** Time on such ground a day, for the 8-hour values [s]; `course` where the course says how far, else one hour. */
  readonly day: { readonly driven: number; readonly from: 'course' | 'an-hour' } | null;
  /** At the nominal readings. */
  readonly result: ExposureResult;
  readonly figures: ExposureFigures;
  /** How long until the values of a day; null for a rig that is let go. */
  readonly times: Readonly<Record<'toAction' | 'toLimit', DrivingTimes>> | null;
  /** Weighted r.m.s. of the part that pitching and rolling bring to the seat's mount [m/s²]; null when unknown. */
  readonly tilting: Figure | null;
}

const AN_HOUR = 3600;

export interface ExposureAsk {
  readonly trials: number;
  readonly seed: number;
  /** [m/s]; null for a rig that is let go, which no day is made of. */
  readonly speed: number | null;
  /** How far such ground is driven in a day [m]; null when nobody said. */
  readonly distancePerDay: number | null;
}

interface Taken {
  readonly exposure: ExposureResult;
  readonly tilting: number | null;
}

/** Reduces the runs of one ride to what the seat takes, run by run, so that no record is kept. */
export class ExposureBook {
  readonly #placeOf: (model: RideModel, trial: number) => Required<SeatPlace>;
  readonly #day: RideExposure['day'];
  readonly #taken: Taken[] = [];
  #nominal: Pick<RideExposure, 'at' | 'place'> | null = null;

  constructor(ask: ExposureAsk) {
    this.#placeOf = seatPlaces(ask);
    const { speed, distancePerDay } = ask;
    if (speed === null) this.#day = null;
    else if (distancePerDay === null) this.#day = { driven: AN_HOUR, from: 'an-hour' };
    else this.#day = { driven: distancePerDay / speed, from: 'course' };
  }

  /** @param trial – 0 is the nominal one, and comes first */
  take(run: RideRun, model: RideModel, trial: number): void {
    const place = this.#placeOf(model, trial);
    if (trial === 0)
      this.#nominal = {
        at: model.seat === undefined ? 'usual-place' : 'sitter',
        place: { behindFrontAxle: model.sprung.toFrontAxle - place.ahead, left: place.left },
      };
    // A run that was given up tells nothing of the whole course.
    const known = run.status === 'finished';
    const seat = known ? seatRecord(run, place) : null;
    const tilting = known ? tiltingRecord(run, place) : null;
    const exposure = exposureOf(seat ?? new Float64Array(0), SEAT_RATE, { drivenPerDay: this.#day?.driven });
    const isAveraged = exposure.seat !== null && exposure.seat.vertical.rms !== null;
    this.#taken.push({
      exposure,
      tilting:
        isAveraged && tilting !== null ? rootMeanSquare(weightedHistory(tilting, SEAT_RATE, 'Wk')) : null,
    });
  }

  finish(): RideExposure {
    const [nominal, ...trials] = this.#taken;
    if (nominal === undefined || this.#nominal === null) throw new Error('no ride was taken');
    const figures = exposureFigures(
      nominal.exposure,
      trials.map(({ exposure }) => exposure),
    );
    const isDay = this.#day !== null;
    return {
      ...this.#nominal,
      day: this.#day,
      result: nominal.exposure,
      times: isDay ? drivingTimes(figures, nominal.exposure.duration) : null,
      figures: isDay ? figures : { ...figures, ...NO_DAY },
      tilting: tiltingFigure(nominal, trials),
    };
  }
}

const NO_DAY = { timeToAction: null, timeToLimit: null } as const;

function tiltingFigure(nominal: Taken, trials: readonly Taken[]): Figure | null {
  const { tilting: value } = nominal;
  if (value === null) return null;
  let squares = 0;
  for (const { tilting } of trials) squares += ((tilting ?? Number.NaN) - value) ** 2;
  const spread = trials.length < 2 ? Number.NaN : 2 * Math.sqrt(squares / trials.length);
  return { dimension: 'acceleration', value, tolerance: Number.isNaN(spread) ? null : spread };
}
