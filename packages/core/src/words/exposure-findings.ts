import type { FindingCode } from '../finding/codes.ts';
import type { Phrase } from './facts.ts';

type ExposureCode = Extract<FindingCode, `exposure-${string}`>;

const where: Phrase = (say) => `on ${say.text('course')} at ${say.plain('speed')}`;

const taker: Phrase = (say) =>
  say.text('whose') === 'usual-place'
    ? 'a seat bolted to the body a little behind the middle of the wheelbase'
    : 'the seat';

/** Reactions in the words of ISO 2631-1, Annex C, mild first. */
const REACTIONS: Readonly<Record<string, string>> = {
  not: 'not uncomfortable',
  little: 'a little uncomfortable',
  fairly: 'fairly uncomfortable',
  uncomfortable: 'uncomfortable',
  very: 'very uncomfortable',
  extremely: 'extremely uncomfortable',
};

/** `fairly uncomfortable to uncomfortable`. */
const reaction: Phrase = (say) => {
  const bands = say
    .text('comfort')
    .split(', ')
    .map((each) => REACTIONS[each] ?? each);
  return bands.length === 1 ? bands[0] : `${bands[0]} to ${bands[bands.length - 1]}`;
};

const REASONS: Readonly<Record<string, Phrase>> = {
  'record-empty': () => 'nothing was recorded',
  'record-broken': () => 'the record has gaps or values that are no numbers',
  'record-short': (say) => `${say.plain('duration')} of record are too short for an average`,
  'rate-too-low': (say) => `${say.plain('samples')} of samples are too few to see what shakes a seat`,
  'gravity-left': () => 'the record does not come back to zero, so gravity is still in it',
};

/** What the seat takes. Comfort and yardsticks only: nothing here says what vibration does to a person. */
export const EXPOSURE_PHRASES: Readonly<Record<ExposureCode, Phrase>> = {
  'exposure-seat': (say) =>
    `${taker(say)} takes ${say.figure('rms', 'm/s²')} up and down (weighted r.m.s.) ${where(say)}, which people call ${reaction(say)}; driving on like this reaches the European action value for a day at work after ${say.duration('timeToAction')}, its limit value after ${say.duration('timeToLimit')}.`,
  'exposure-shocks': (say) =>
    `single hits stand out at the seat ${where(say)} (crest factor ${say.figure('crestFactor')}), and the r.m.s. tells too little of them: dose ${say.figure('dose')}, largest ${say.figure('peak')} after a 30 Hz low-pass.`,
  'exposure-unknown': (say) =>
    `what the seat takes ${where(say)} is not known: ${REASONS[say.text('reason')]?.(say) ?? 'the record does not tell'}.`,
  'exposure-narrow': (say) =>
    `what the seat takes ${where(say)} is right only up to ${say.plain('rightUpTo')}: the record has ${say.plain('samples')} of samples, and the band goes to 80 Hz.`,
};
