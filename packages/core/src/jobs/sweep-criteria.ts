import { absorbedPower } from '../exposure/absorbed-power.ts';
import { RIDE_TEST_LIMITS } from '../exposure/limits.ts';
import type { Dimension } from '../finding/figure.ts';
import { CORNERS, type Corner, ENDS, type End, endOf, type Place } from '../finding/place.ts';
import type { RideRun } from '../ride/result.ts';
import type { Reading } from '../rig/reading.ts';
import type { Setup } from '../rig/setup.ts';
import type { Draws } from '../stance/draws.ts';

export const CRITERIA = [
  'metal-contact',
  'clearance',
  'body-shock',
  'absorbed-power',
  'bracket-load',
  'tyre-contact',
] as const;
export type CriterionId = (typeof CRITERIA)[number];

/** The share of the time that each tyre must carry when the owner gave none. Common practice, no source. */
export const USUAL_TYRE_CONTACT = 0.9;

/** The model of absorbed power ends at 20 Hz; a fifth of the rate is right to 0.1 dB [Hz]. */
const POWER_RATE = 200;

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
  /** Samples a second that it needs of the body's acceleration; 0 when the peaks of the run are enough. */
  readonly historyRate: number;
  measure(run: RideRun, trial: number): Measured;
}

/**
 * The criteria of a setup, in the order of `CRITERIA`. Another one, for example a dose, is one more entry here;
 * everything after takes it as it comes.
 */
export function criteriaOf(setup: Setup, draws: Draws): readonly Criterion[] {
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
      historyRate: 0,
      measure: (run) => least((corner) => run.corners[corner].clearance),
    },
    {
      id: 'clearance',
      dimension: 'length',
      keeps: 'above',
      limit: () => 0,
      because: [...ENDS.map((end) => setup.ends[end].base.flex.key), limits.reserve.key],
      isPeak: true,
      historyRate: 0,
      measure: (run, trial) => least((corner) => run.corners[corner].clearance - keep(endOf(corner), trial)),
    },
    {
      id: 'body-shock',
      dimension: 'acceleration',
      keeps: 'below',
      limit: limitOf(limits.bodyAcceleration),
      because: [limits.bodyAcceleration.key],
      isPeak: true,
      historyRate: 0,
      measure: (run) => ({ value: run.body.peakAcceleration, place: 'rig' }),
    },
    {
      id: 'absorbed-power',
      dimension: 'power',
      keeps: 'below',
      limit:
        limits.absorbedPower === null ? () => RIDE_TEST_LIMITS.absorbedPower : limitOf(limits.absorbedPower),
      because: limits.absorbedPower === null ? [] : [limits.absorbedPower.key],
      isPeak: false,
      historyRate: POWER_RATE,
      measure: ({ history }) => ({
        value: history === null ? Number.NaN : absorbedPower(history.bodyAcceleration, history.rate),
        place: 'rig',
      }),
    },
    {
      id: 'bracket-load',
      dimension: 'force',
      keeps: 'below',
      limit: limitOf(limits.bracketForce),
      because: limits.bracketForce === null ? [] : [limits.bracketForce.key],
      isPeak: true,
      historyRate: 0,
      measure: (run) => negated(least((corner) => -run.corners[corner].peakStopForce)),
    },
    {
      id: 'tyre-contact',
      dimension: 'ratio',
      keeps: 'above',
      limit: limits.tyreContact === null ? () => USUAL_TYRE_CONTACT : limitOf(limits.tyreContact),
      because: limits.tyreContact === null ? [] : [limits.tyreContact.key],
      isPeak: false,
      historyRate: 0,
      measure: (run) => least((corner) => 1 - run.corners[corner].airborneShare),
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

const negated = ({ value, place }: Measured): Measured => ({ value: -value, place });
