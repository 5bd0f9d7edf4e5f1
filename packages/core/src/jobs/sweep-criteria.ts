import { absorbedPower } from '../exposure/absorbed-power.ts';
import { vibrationDose } from '../exposure/dose.ts';
import { FEWEST_SAMPLES } from '../exposure/filter.ts';
import { DAILY_VALUES, RIDE_TEST_LIMITS } from '../exposure/limits.ts';
import { lowPassedPeak } from '../exposure/peak.ts';
import { weightedHistory } from '../exposure/weighting.ts';
import type { Dimension } from '../finding/figure.ts';
import { CORNERS, type Corner, ENDS, type End, endOf, type Place } from '../finding/place.ts';
import type { RideRun } from '../ride/result.ts';
import type { Reading } from '../rig/reading.ts';
import type { Setup } from '../rig/setup.ts';
import type { Draws } from '../stance/draws.ts';
import { SWEEP_SEAT_RATE } from './seat-record.ts';

export const CRITERIA = [
  'metal-contact',
  'clearance',
  'body-shock',
  'seat-shock',
  'absorbed-power',
  'seat-dose',
  'bracket-load',
  'tyre-contact',
] as const;
export type CriterionId = (typeof CRITERIA)[number];

/** The share of the time that each tyre must carry when the owner gave none. Common practice, no source. */
export const USUAL_TYRE_CONTACT = 0.9;

/** One rig that was driven over the course at one speed. */
export interface Driven {
  readonly run: RideRun;
  readonly trial: number;
  /** [m/s] */
  readonly speed: number;
  /** Vertical acceleration of the seat, `SWEEP_SEAT_RATE` a second [m/s²]. */
  readonly seat: Float64Array;
}

/** What a criterion says of one run: the figure of its worst place, and that place. */
export interface Measured {
  readonly value: number;
  readonly place: Place;
}

/** A criterion of one setup, ready to be held against runs of its trial rigs. */
export interface Criterion {
  readonly id: CriterionId;
  readonly dimension: Dimension;
  /** Whether the figure must stay above its limit or below. */
  readonly keeps: 'above' | 'below';
  /** Limit in a trial, 0 the nominal one; null when there is none to hold a run against. */
  readonly limit: ((trial: number) => number) | null;
  /** Keys of the readings that the limit rests on. */
  readonly because: readonly string[];
  /**
   * A peak, once reached, stays reached: a run that was given up can prove it broken. A share of the time cannot be
   * told before the end.
   */
  readonly isPeak: boolean;
  measure(driven: Driven): Measured;
}

/**
 * The criteria of a setup, in the order of `CRITERIA`. Another one is one more entry here; everything after takes it as
 * it comes.
 *
 * @param distancePerDay – how far such ground is driven in a day [m]; null: nothing to hold a dose against
 */
export function criteriaOf(setup: Setup, draws: Draws, distancePerDay: number | null): readonly Criterion[] {
  const { limits } = setup.rig;
  const limitOf = (reading: Reading | null): Criterion['limit'] =>
    reading === null ? null : (trial) => draws.of(reading)[trial];
  const keep = (end: End, trial: number): number =>
    draws.of(setup.ends[end].base.flex)[trial] + draws.of(limits.reserve)[trial];
  return [
    {
      id: 'metal-contact',
      dimension: 'length',
      keeps: 'above',
      limit: () => 0,
      because: [],
      isPeak: true,
      measure: ({ run }) => least((corner) => run.corners[corner].clearance),
    },
    {
      id: 'clearance',
      dimension: 'length',
      keeps: 'above',
      limit: () => 0,
      because: [...ENDS.map((end) => setup.ends[end].base.flex.key), limits.reserve.key],
      isPeak: true,
      measure: ({ run, trial }) =>
        least((corner) => run.corners[corner].clearance - keep(endOf(corner), trial)),
    },
    {
      id: 'body-shock',
      dimension: 'acceleration',
      keeps: 'below',
      limit: limitOf(limits.bodyAcceleration),
      because: [limits.bodyAcceleration.key],
      isPeak: true,
      measure: ({ run }) => ({ value: run.body.peakAcceleration, place: 'rig' }),
    },
    {
      id: 'seat-shock',
      dimension: 'acceleration',
      keeps: 'below',
      limit: limits.seatShock === null ? () => RIDE_TEST_LIMITS.peak : limitOf(limits.seatShock),
      because: limits.seatShock === null ? [] : [limits.seatShock.key],
      isPeak: true,
      measure: ({ seat }) => ofSeat(seat, (record) => lowPassedPeak(record, SWEEP_SEAT_RATE)),
    },
    {
      id: 'absorbed-power',
      dimension: 'power',
      keeps: 'below',
      limit:
        limits.absorbedPower === null ? () => RIDE_TEST_LIMITS.absorbedPower : limitOf(limits.absorbedPower),
      because: limits.absorbedPower === null ? [] : [limits.absorbedPower.key],
      isPeak: false,
      measure: ({ seat }) => ofSeat(seat, (record) => absorbedPower(record, SWEEP_SEAT_RATE)),
    },
    {
      id: 'seat-dose',
      dimension: 'vibrationDose',
      keeps: 'below',
      limit:
        distancePerDay === null
          ? null
          : limits.seatDose === null
            ? () => DAILY_VALUES.action.dose
            : limitOf(limits.seatDose),
      because: limits.seatDose === null ? [] : [limits.seatDose.key],
      isPeak: false,
      measure({ seat, speed }) {
        if (distancePerDay === null) return { value: Number.NaN, place: 'rig' };
        const driven = distancePerDay / speed;
        return ofSeat(seat, (record) => {
          const dose = vibrationDose(weightedHistory(record, SWEEP_SEAT_RATE, 'Wk'), SWEEP_SEAT_RATE);
          return dose * (driven / ((record.length - 1) / SWEEP_SEAT_RATE)) ** 0.25;
        });
      },
    },
    {
      id: 'bracket-load',
      dimension: 'force',
      keeps: 'below',
      limit: limitOf(limits.bracketForce),
      because: limits.bracketForce === null ? [] : [limits.bracketForce.key],
      isPeak: true,
      measure: ({ run }) => negated(least((corner) => -run.corners[corner].peakStopForce)),
    },
    {
      id: 'tyre-contact',
      dimension: 'ratio',
      keeps: 'above',
      limit: limits.tyreContact === null ? () => USUAL_TYRE_CONTACT : limitOf(limits.tyreContact),
      because: limits.tyreContact === null ? [] : [limits.tyreContact.key],
      isPeak: false,
      measure: ({ run }) => least((corner) => 1 - run.corners[corner].airborneShare),
    },
  ];
}

function least(of: (corner: Corner) => number): Measured {
  let place: Corner = CORNERS[0];
  let value = Number.POSITIVE_INFINITY;
  for (const corner of CORNERS) {
    const here = of(corner);
    if (here < value) {
      value = here;
      place = corner;
    }
  }
  return { value, place: endOf(place) };
}

const ofSeat = (seat: Float64Array, of: (record: Float64Array) => number): Measured => ({
  value: seat.length < FEWEST_SAMPLES ? Number.NaN : of(seat),
  place: 'rig',
});

const negated = ({ value, place }: Measured): Measured => ({ value: -value, place });
