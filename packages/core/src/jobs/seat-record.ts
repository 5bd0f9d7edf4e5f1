import { type SeatPlace, seatAcceleration } from '../exposure/seat.ts';
import { NormalTable } from '../numerics/sampling.ts';
import type { RideModel } from '../ride/model.ts';
import type { RideRun } from '../ride/result.ts';
import type { Rig } from '../rig/rig.ts';

/** Samples a second at which a seat is listened to [Hz]: metal rings at tens of Hz, and the band goes to 80 Hz. */
export const SEAT_RATE = 1000;
/** In a sweep, which drives thousands of times: right to 100 Hz, and what a criterion asks for lies below 80. */
export const SWEEP_SEAT_RATE = 500;

/**
 * Where a seat is taken to be when the file tells no driver: as `driver.seat` is filled, with the same doubt.
 * Shares of wheelbase and track. Common practice, no source.
 */
const USUAL_PLACE = { behind: 0.55, left: 0.24 } as const;
const DOUBT = { behind: 0.1, left: 0.05 } as const;

/** Whose acceleration is told: of a sitter on his cushion, or of a place on the body where a seat usually is. */
export type SeatKind = 'sitter' | 'usual-place';

export const seatOf = ({ driver }: Rig): SeatKind => (driver === null ? 'usual-place' : 'sitter');

/** Where the seat is, by model and trial; 0 is the nominal one. A usual place is as unsure as any other reading. */
export function seatPlaces({
  trials,
  seed,
}: {
  readonly trials: number;
  readonly seed: number;
}): (model: RideModel, trial: number) => Required<SeatPlace> {
  // Of another seed, so that the place does not go with the first readings of the rig.
  const scores = trials === 0 ? null : new NormalTable(Math.max(2, trials), seed + SEED_APART);
  const score = (dimension: number, trial: number): number =>
    scores === null || trial === 0 ? 0 : scores.column(dimension)[trial - 1];
  return ({ seat, sprung, axles }, trial) => {
    if (seat !== undefined) return { ahead: seat.ahead, left: seat.left };
    const wheelbase = sprung.toFrontAxle + sprung.toRearAxle;
    const track = axles.front.halfTrack + axles.rear.halfTrack;
    const behind = USUAL_PLACE.behind + (DOUBT.behind / 2) * score(0, trial);
    const left = USUAL_PLACE.left + (DOUBT.left / 2) * score(1, trial);
    return { ahead: sprung.toFrontAxle - behind * wheelbase, left: left * track };
  };
}
const SEED_APART = 104_729;

/** Vertical acceleration of the seat in a run [m/s²]; null when it was not recorded. */
export function seatRecord({ shake }: RideRun, place: SeatPlace): Float64Array | null {
  if (shake === null) return null;
  return quiet(shake.sitter ?? seatAcceleration(shake, place));
}

/** The part of it that comes from pitching and rolling, at the seat's mount [m/s²]. */
export function tiltingRecord({ shake }: RideRun, place: SeatPlace): Float64Array | null {
  if (shake === null) return null;
  return quiet(seatAcceleration({ ...shake, heave: new Float64Array(shake.heave.length) }, place));
}

/** What rounding leaves of a rig that stands still [m/s²] is not shown as shaking. */
const ROUNDING = 1e-6;

function quiet(record: Float64Array): Float64Array {
  for (const acceleration of record) if (Math.abs(acceleration) > ROUNDING) return record;
  return new Float64Array(record.length);
}
