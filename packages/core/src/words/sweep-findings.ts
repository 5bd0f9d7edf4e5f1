import type { FindingCode } from '../finding/codes.ts';
import type { Facts, Phrase } from './facts.ts';
import { needle, needles, roughSpeed } from './speeds.ts';
import { way } from './ways.ts';

type SweepCode = Extract<FindingCode, `sweep-${string}`>;

interface CriterionWords {
  /** At the head of a row. */
  readonly name: string;
  /** What happens when it is not held. */
  readonly breaks: (say: Facts) => string;
  /** What is true while it is held. */
  readonly holds: (say: Facts) => string;
  /** What is lacking when it has no limit; left out: the limit itself. */
  readonly missing?: string;
}

/** A way driven: feet and metres do not tell a day's drive. */
const wayOf: Phrase = (say) => way(say.number('distance'), say.system);

/** Criteria by their id; `names` below is what a view puts beside a row. */
const CRITERIA: Readonly<Record<string, CriterionWords>> = {
  'metal-contact': {
    name: 'metal contact',
    breaks: () => 'metal is hit',
    holds: () => 'metal is never hit',
  },
  clearance: {
    name: 'flex and reserve',
    breaks: () => 'flex and reserve are used up',
    holds: () => 'flex and reserve stay free',
  },
  'body-shock': {
    name: 'body acceleration',
    breaks: (say) => `the body takes more than ${say.limit} above rest`,
    holds: (say) => `the body never takes more than ${say.limit} above rest`,
  },
  'seat-shock': {
    name: 'seat shock',
    breaks: (say) => `the seat takes more than ${say.limit} above rest after a 30 Hz low-pass`,
    holds: (say) => `the seat never takes more than ${say.limit} above rest after a 30 Hz low-pass`,
  },
  'absorbed-power': {
    name: 'absorbed power',
    breaks: (say) => `a body on the seat takes up more than ${say.limit} on average`,
    holds: (say) => `a body on the seat takes up ${say.limit} or less on average`,
  },
  'seat-dose': {
    name: 'seat dose of a day',
    breaks: (say) =>
      `${wayOf(say)} of such ground in a day bring the seat a vibration dose above ${say.limit}`,
    holds: (say) =>
      `${wayOf(say)} of such ground in a day bring the seat a vibration dose of ${say.limit} or less`,
    missing: 'how far such ground is driven in a day is not given (perDay of the course)',
  },
  'bracket-load': {
    name: 'force on the frame',
    breaks: (say) => `a corner of the frame takes more than ${say.limit} from stop and metal`,
    holds: (say) => `no corner of the frame takes more than ${say.limit} from stop and metal`,
  },
  'tyre-contact': {
    name: 'tyre contact',
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

/** A speed of the sweep among the facts. */
const at =
  (name: string): Phrase =>
  (say) => {
    const speed = say.number(name);
    return Number.isNaN(speed) ? 'unknown' : needle(speed, say.system);
  };
const slowest = at('slowest');
const step: Phrase = (say) => roughSpeed(say.number('step'), say.system);
const speed = at('speed');

const range: Phrase = (say) => `from ${slowest(say)} to ${at('fastest')(say)}`;

/** `(21.9 to 25.1 mph within the readings)`; that nothing is known of it when there were no trials. */
const within: Phrase = (say) => {
  const [low, high] = [say.number('low'), say.number('high')];
  if (Number.isNaN(low)) return '(± unknown)';
  if (Number.isNaN(high)) return `(from ${needle(low, say.system)} on, or never, within the readings)`;
  return `(${low === high ? needle(low, say.system) : needles(low, high, say.system)} within the readings)`;
};

/** Where a rig stops to hold as it goes faster. A model of one road: each sentence names it. */
export const SWEEP_PHRASES: Readonly<Record<SweepCode, Phrase>> = {
  'sweep-broken': (say) =>
    `${wordsOf(say).breaks(say)} on ${say.text('course')} from ${speed(say)} on ${within(say)}; below that it held, driven every ${step(say)} from ${slowest(say)}.`,
  'sweep-broken-at-once': (say) =>
    `${wordsOf(say).breaks(say)} on ${say.text('course')} at ${slowest(say)} already, the slowest speed asked for.`,
  'sweep-unknown': (say) =>
    `whether ${wordsOf(say).breaks(say)} on ${say.text('course')} cannot be told from ${speed(say)} on: the motion left what the model stands for before the course was over.`,
  'sweep-holds-again': (say) =>
    `on ${say.text('course')} ${wordsOf(say).breaks(say)} between ${speed(say)} and ${at('until')(say)}, and it holds again beyond. Nobody gets to the faster speed without passing through; do not count on it.`,
  'sweep-held': (say) =>
    `${wordsOf(say).holds(say)} on ${say.text('course')}, ${range(say)}, driven every ${step(say)}.`,
  'sweep-held-in-most': (say) =>
    `${wordsOf(say).holds(say)} on ${say.text('course')}, ${range(say)}, with the readings as they are. Within their tolerances it may happen from ${at('low')(say)} on (chance: ${say.chance}).`,
  'sweep-no-limit': (say) =>
    `${wordsOf(say).missing ?? `no limit is given for ${wordsOf(say).name}`}, so no speed can be told for it.`,
};
