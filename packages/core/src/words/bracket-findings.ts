import type { FindingCode } from '../finding/codes.ts';
import { BRACKET_PART_NAMES, bracketName, NOT_CHECKED_TEXTS } from './brackets.ts';
import type { Facts, Phrase } from './facts.ts';

type BracketCode = Extract<FindingCode, `bracket-${string}`>;

const of = (say: Facts): string => bracketName(say.text('mount'));
const part = (say: Facts): string => BRACKET_PART_NAMES[say.text('part')] ?? say.text('part');
const load = (say: Facts): string =>
  say.finding.facts.demand === ''
    ? `under ${say.figure('force')}`
    : `under ${say.figure('force')}, the worst of ${say.text('demand')}`;
const factor = (say: Facts): string => `${say.figure('factor')} where ${say.limit} is wanted`;

/** What a bracket says. A factor is a formula's answer to readings, never a promise. */
export const BRACKET_PHRASES: Readonly<Record<BracketCode, Phrase>> = {
  'bracket-holds': (say) =>
    `${of(say)} holds by the formulas: ${part(say)} has the least factor, ${factor(say)}, ${load(say)}.`,
  'bracket-open': (say) =>
    `${of(say)} is not proven: ${part(say)} has a factor of ${factor(say)}, ${load(say)}, and the readings may be off by more than is to spare.`,
  'bracket-short': (say) =>
    say.text('bends') === 'yes'
      ? `${of(say)} gives way: ${part(say)} has a factor of ${factor(say)}, ${load(say)}.`
      : `${of(say)} is too weak: ${part(say)} has a factor of ${factor(say)}, ${load(say)}.`,
  'bracket-metal': (say) => {
    const when =
      say.text('asked') === 'yes'
        ? `metal is hit on ${say.text('demand')}`
        : `on ${say.text('demand')} metal is hit when driven ${Math.round(100 * say.number('share') - 100)} % faster`;
    const then =
      say.text('bends') === 'yes'
        ? `${of(say)} gives way under ${say.figure('force')}`
        : `${of(say)} sees ${say.figure('force')}`;
    return `${when}: ${then}, ${part(say)} at a factor of ${factor(say)}. That nothing bottoms is part of what keeps it whole.`;
  },
  'bracket-cracks': (say) =>
    `${of(say)} may crack after few passes of ${say.text('demand')}: ${part(say)}, ${say.text('detail')}, by Miner's sum after ${say.text('fewest')} to ${say.text('most')} passes.`,
  'bracket-not-checked': (say) =>
    `not checked at ${of(say)}: ${say
      .text('what')
      .split(',')
      .map((what) => NOT_CHECKED_TEXTS[what] ?? what)
      .join('; ')}.`,
};
