import type { FindingCode } from '../finding/codes.ts';
import type { Facts, Phrase } from './facts.ts';

type FlexCode = Extract<FindingCode, `flex-${string}`>;

/** `with this wheel up and the other one down, flex ends at 10.2 deg ± 0.3 on …` */
const ends = (say: Facts): string =>
  `with this wheel up and the other one down, flex ${say.text('verdict')} on ${say.text('limit')}`;
const early = (say: Facts): string =>
  `where stop, strap or tyres would end it, ${say.figure('left')} are left to it. Chance that it comes first: ${say.chance}.`;

/** What ends the flex of an axle and should not. */
export const FLEX_PHRASES: Readonly<Record<FlexCode, Phrase>> = {
  'flex-on-body': (say) =>
    `${ends(say)}: ${early(say)} A tyre is cut there, or metal takes the load; both wheels up alike do not show it.`,
  'flex-on-solid': (say) =>
    `${ends(say)}: ${early(say)} Then it takes the load that the stop is there for, and its mounts bend.`,
  'flex-on-hose': (say) =>
    `${ends(say)}: ${early(say)} A brake hose must never be what holds an axle. Do not drive it before a person qualified under your local rules has looked at it.`,
  'flex-on-shaft': (say) => `${ends(say)}: ${early(say)} There the driveshaft binds or comes apart.`,
  'flex-on-shock': (say) =>
    say.text('strap') === 'none'
      ? `with this wheel up and the other one down, the open shock ends flex at ${say.figure('angle')}, for no strap is there. A strap should hold the axle before the shock does.`
      : `${ends(say)}: ${early(say)} Level, the strap may spare it; flexed it does not.`,
  'flex-off-pad': (say) =>
    `with this wheel up and the other one down, at ${say.figure('angle')}, the tip of the stop is ${say.figure('offset')} from the middle of its pad, whose edge is at ${say.limit}: it may slip off.`,
};
