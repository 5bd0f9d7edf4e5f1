import type { FindingCode } from '../finding/codes.ts';
import type { Facts, Phrase } from './facts.ts';

type SweepCode = Extract<FindingCode, `sweep-${string}`>;

interface CriterionWords {
  /** At the head of a row. */
  readonly name: string;
  /** What happens when it is not held. */
  readonly breaks: (say: Facts) => string;
  /** What is true while it is held. */
  readonly holds: (say: Facts) => string;
}

/** Criteria by their id; `names` below is what a view puts beside a row. */
const CRITERIA: Readonly<Record<string, CriterionWords>> = {
  'metal-contact': {
    name: 'metal contact',
    breaks: () => 'metal is hit',
    holds: () => 'metal is never hit',
  },
  clearance: {
    name: 'clearance for flex and reserve',
    breaks: () => 'flex and reserve are used up',
    holds: () => 'flex and reserve stay free',
  },
  'body-shock': {
    name: 'body acceleration',
    breaks: (say) => `the body takes more than ${say.limit} above rest`,
    holds: (say) => `the body never takes more than ${say.limit} above rest`,
  },
  'absorbed-power': {
    name: 'power that a seated body takes up',
    breaks: (say) => `a body seated over the centre of gravity takes up more than ${say.limit} on average`,
    holds: (say) => `a body seated over the centre of gravity takes up ${say.limit} or less on average`,
  },
  'bracket-load': {
    name: 'force on one corner of the frame',
    breaks: (say) => `a corner of the frame takes more than ${say.limit} from stop and metal`,
    holds: (say) => `no corner of the frame takes more than ${say.limit} from stop and metal`,
  },
  'tyre-contact': {
    name: 'tyres on the ground',
    breaks: (say) => `a tyre carries for less than ${say.limitPercent} of the time`,
    holds: (say) => `every tyre carries for ${say.limitPercent} of the time or more`,
  },
};

const wordsOf = (say: Facts): CriterionWords =>
  CRITERIA[say.text('criterion')] ?? {
    name: 'unknown',
    breaks: () => 'an unknown limit is broken',
    holds: () => 'an unknown limit is held',
  };

/** What a view writes beside a criterion of a sweep. */
export const criterionName = (id: string): string => CRITERIA[id]?.name ?? id;

const range: Phrase = (say) => `from ${say.plain('slowest')} to ${say.plain('fastest')}`;

/** `(21.9 mph to 25.1 mph within the readings)`; that nothing is known of it when there were no trials. */
const within: Phrase = (say) => {
  if (!('low' in say.finding.facts)) return '(± unknown)';
  const high = say.text('high') === 'never' ? 'never' : say.plain('high');
  return high === 'never'
    ? `(from ${say.plain('low')} on, or never, within the readings)`
    : `(${say.plain('low')} to ${high} within the readings)`;
};

/** Where a rig stops to hold as it goes faster. A model of one road: each sentence names it. */
export const SWEEP_PHRASES: Readonly<Record<SweepCode, Phrase>> = {
  'sweep-broken': (say) =>
    `${wordsOf(say).breaks(say)} on ${say.text('course')} from ${say.plain('speed')} on ${within(say)}; below that it held, driven every ${say.plain('step')} from ${say.plain('slowest')}.`,
  'sweep-broken-at-once': (say) =>
    `${wordsOf(say).breaks(say)} on ${say.text('course')} at ${say.plain('slowest')} already, the slowest speed asked for.`,
  'sweep-unknown': (say) =>
    `whether ${wordsOf(say).breaks(say)} on ${say.text('course')} cannot be told from ${say.plain('speed')} on: the motion left what the model stands for before the course was over.`,
  'sweep-holds-again': (say) =>
    `on ${say.text('course')} ${wordsOf(say).breaks(say)} between ${say.plain('speed')} and ${say.plain('until')}, and it holds again beyond. Nobody gets to the faster speed without passing through; do not count on it.`,
  'sweep-held': (say) =>
    `${wordsOf(say).holds(say)} on ${say.text('course')}, ${range(say)}, driven every ${say.plain('step')}.`,
  'sweep-held-in-most': (say) =>
    `${wordsOf(say).holds(say)} on ${say.text('course')}, ${range(say)}, with the readings as they are; within their tolerances it may happen from ${say.plain('low')} on (chance: ${say.chance}).`,
  'sweep-no-limit': (say) =>
    `no limit is given for the ${wordsOf(say).name}, so no speed can be told for it.`,
};
