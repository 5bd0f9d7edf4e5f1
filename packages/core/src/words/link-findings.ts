import type { FindingCode } from '../finding/codes.ts';
import type { Phrase } from './facts.ts';

type LinkCode = Extract<FindingCode, `links-${string}`>;

/** What links say by themselves. */
export const LINK_PHRASES: Readonly<Record<LinkCode, Phrase>> = {
  'links-range-ends': (say) =>
    `the links do not let the axle go through its travel: ${say.text('links')} would have to give ${say.figure('gap')}; it goes to ${say.figure('travel')} of ${say.text('way')} and ${say.figure('roll')} of roll. Something bends or breaks there, and nothing beyond is known.`,
  'links-stop-off-pad': (say) =>
    `fully crushed, the tip of the stop is ${say.figure('offset')} from the middle of its pad, whose edge is at ${say.limit}: it slips off and pushes sideways.`,
};
