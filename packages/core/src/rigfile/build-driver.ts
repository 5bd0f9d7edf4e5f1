import type { Cushion, Driver } from '../rig/driver.ts';
import type { Reading } from '../rig/reading.ts';
import { TAPED } from './build-spring.ts';
import type { Gaps } from './gaps.ts';
import { behindFrontAxleOfSeat, leftOfSeat, USUAL } from './usual-value.ts';

/** What the place and the mass of a driver are held against. */
export interface RigAround {
  readonly wheelbase: Reading;
  /** Mean of both ends [m]. */
  readonly track: number;
  /** Both ends together [kg]. */
  readonly sprungMass: number;
  readonly rollInertia: Reading;
}

const SHARE = { dimension: 'ratio', tool: 'guess-tolerance' } as const;
/** How a seat is said to give: one of them. */
const GIVES = ['sag', 'rate', 'frequency'] as const;

/** The driver, where the file has one; what it leaves out about him is filled. */
export function buildDriver(gaps: Gaps, around: RigAround): Driver | null {
  if (gaps.at('driver') === undefined) return null;
  const driver: Driver = {
    mass: gaps.readingOr('driver.mass', { dimension: 'mass', tool: 'scale-tolerance' }, USUAL.driverMass),
    onSeat: gaps.readingOr('driver.onSeat', SHARE, USUAL.onSeat),
    behindFrontAxle: gaps.readingOr(
      'driver.seat.behindFrontAxle',
      TAPED,
      behindFrontAxleOfSeat(around.wheelbase.value),
    ),
    left: gaps.readingOr('driver.seat.left', TAPED, leftOfSeat(around.track)),
    cushion: buildCushion(gaps),
  };
  checkDriver(gaps, driver, around);
  return driver;
}

function buildCushion(gaps: Gaps): Cushion {
  const key = 'driver.seat';
  const [first, second] = GIVES.filter((name) => gaps.at(`${key}.${name}`) !== undefined);
  if (second !== undefined) {
    gaps.problem(
      'rig-inconsistent',
      `${key}.${second}`,
      gaps.text(`${key}.${second}`) ?? '',
      `either this or ${key}.${first}`,
    );
  }
  const frequency = { dimension: 'frequency', tool: 'guess-tolerance' } as const;
  const said = first !== undefined;
  return {
    sag: gaps.typedReading(`${key}.sag`, TAPED),
    rate: gaps.typedReading(`${key}.rate`, { dimension: 'rate', tool: 'press-rate-tolerance' }),
    frequency: said
      ? gaps.typedReading(`${key}.frequency`, frequency)
      : gaps.readingOr(`${key}.frequency`, frequency, USUAL.seatFrequency),
    dampingRatio: gaps.readingOr(`${key}.dampingRatio`, SHARE, USUAL.seatDampingRatio),
  };
}

/** Room for what is left of the body when he is taken out of it: the rest cannot be lighter than a tenth. */
const MOST_SHARE = 0.9;

function checkDriver(
  gaps: Gaps,
  driver: Driver,
  { wheelbase, track, sprungMass, rollInertia }: RigAround,
): void {
  const { mass, onSeat, behindFrontAxle, left } = driver;
  const refuse = (reading: Reading, accepted: string): void => {
    if (reading.text !== '') gaps.problem('rig-inconsistent', reading.key, reading.text, accepted);
  };
  if (onSeat.value > 1) refuse(onSeat, 'at most 1: all of him sits');
  if (mass.value > MOST_SHARE * sprungMass)
    refuse(mass, 'less than what the springs carry: he is aboard in the weights');
  if (behindFrontAxle.value > wheelbase.value)
    refuse(behindFrontAxle, `at most the wheelbase, ${wheelbase.text}`);
  if (Math.abs(left.value) > track / 2) refuse(left, 'at most half the track, right negative');
  const seated = onSeat.value * mass.value;
  if (seated * left.value ** 2 > MOST_SHARE * rollInertia.value)
    refuse(rollInertia, 'more than the driver has by himself, so far off the middle');
}
