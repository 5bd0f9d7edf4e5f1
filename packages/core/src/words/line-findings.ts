import type { FindingCode } from '../finding/codes.ts';
import type { Phrase } from './facts.ts';

type LineCode = Extract<FindingCode, `line-${string}`>;

/** What a hose or line says. The caution stands in each that touches its length. */
export const LINE_PHRASES: Readonly<Record<LineCode, Phrase>> = {
  'line-length-needed': (say) =>
    `the ends of the ${say.text('line')} come to stand ${say.figure('longest')} apart over bump, droop, roll and steer; a free length of ${say.atLeast('wantedLength')} or more keeps ${say.plain('least')} of slack. A person qualified under your local rules has to look at it.`,
  'line-taut': (say) =>
    `the ${say.text('line')} has ${say.figure('slack')} of slack where its ends are furthest apart, ${say.figure('longest')}: it may be taut. Do not drive it before a person qualified under your local rules has looked at it.`,
  'line-slack-minimum': (say) =>
    `the ${say.text('line')} has ${say.figure('slack')} of slack where its ends are furthest apart, ${say.figure('longest')}; ${say.plain('least')} is the least that is usual.`,
  'line-bends-tight': (say) =>
    `the slack of the ${say.text('line')} hangs in a loop of ${say.figure('radius')} radius where its ends are closest, ${say.figure('arc')} if it is led well; ${say.text('known') === 'own' ? `its maker wants ${say.limit}` : `${say.limit} is usual for its diameter (common practice, no source)`}.`,
  'line-tie': (say) =>
    `tied to the ${say.text('link')} link, ${say.plain('fromBody')} from its joint on the body, both parts of the ${say.text('line')} have to reach least: ${say.plain('bodyNeed')} from the body and ${say.plain('axleNeed')} to the axle, before slack.`,
};
