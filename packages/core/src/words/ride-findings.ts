import type { FindingCode } from '../finding/codes.ts';
import type { Phrase } from './facts.ts';
import { needle } from './speeds.ts';

type RideCode = Extract<FindingCode, `ride-${string}`>;

/** `on whoops at 30 mph`; a drop is let go and has no speed. */
const where: Phrase = (say) => {
  const speed = say.number('speed');
  return `on ${say.text('course')}${Number.isNaN(speed) ? '' : ` at ${needle(speed, say.system)}`}`;
};

/** What a run over a course says. A run is a model of one road at one speed, and each sentence says so. */
export const RIDE_PHRASES: Readonly<Record<RideCode, Phrase>> = {
  'ride-metal': (say) =>
    `metal is hit ${where(say)}: the stop is crushed ${say.figure('crush')} and nothing is left, with a peak of ${say.figure('force')}.`,
  'ride-clearance-short': (say) =>
    `${say.figure('clearance')} is left to metal at the worst moment ${where(say)}; flex and reserve need ${say.limit}.`,
  'ride-clear': (say) =>
    `clear ${where(say)}: ${say.figure('clearance')} left to metal at the worst moment, ${say.limit} needed.`,
  'ride-airborne': (say) => `the tyre is off the ground ${say.percent('share')} of the time ${where(say)}.`,
  'ride-left-validity': (say) =>
    `the run ${where(say)} was given up after ${say.plain('time')}: the motion left what the model stands for, and nothing beyond is known.`,
  'ride-stop-past-table': (say) =>
    `the stop is crushed ${say.figure('crush')} ${where(say)}, past the last point of its table at ${say.limit}: the force beyond is a guess.`,
  'ride-shock-past-table': (say) => {
    const unit = say.system === 'shop' ? 'in/s' : 'm/s';
    const known =
      say.number('knownTo') > 0
        ? `its damping is known up to ${say.figure('knownTo', unit)}: beyond it is a guess`
        : 'nothing was read of its damping that way: it is an estimate at every speed';
    return `the shaft of the shock goes ${say.text('way')} at ${say.figure('shaftSpeed', unit)} ${where(say)}; ${known}.`;
  },
  'ride-vent-past-law': (say) => {
    const unit = say.system === 'shop' ? 'in/s' : 'm/s';
    return `the stop closes at up to ${say.figure('closingSpeed', unit)} ${where(say)}; above ${say.figure('ventHoldsTo', unit)} its air is squeezed and its hole chokes, and what the vent takes out is a guess.`;
  },
  'ride-harsh': (say) =>
    `the body takes ${say.figure('acceleration')} above rest ${where(say)}; ${say.limit} is accepted.`,
};
