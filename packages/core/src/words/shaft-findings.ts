import type { FindingCode } from '../finding/codes.ts';
import type { Phrase } from './facts.ts';

type ShaftCode = Extract<FindingCode, `shaft-${string}`>;

const jointOf: Phrase = (say) => `the joint at the ${say.text('joint')}`;
const limitOf: Phrase = (say) =>
  say.text('known') === 'own'
    ? `it binds at ${say.limit}`
    : `joints of its kind bind near ${say.limit} (common practice, no source)`;
const running: Phrase = (say) =>
  `at ${say.plain('speed')}, where the shaft turns at ${say.figure('turns', 'rpm')}`;

/** What a driveshaft says over its travel and at speed. */
export const SHAFT_PHRASES: Readonly<Record<ShaftCode, Phrase>> = {
  'shaft-slip-short': (say) =>
    `the driveshaft has to change its length by ${say.figure('swing')} between bump and droop (${say.figure('goesIn')} in, ${say.figure('comesOut')} out); its slip can use ${say.plain('usable')}. It bottoms or comes apart.`,
  'shaft-slip-apart': (say) =>
    `at full droop the slip of the driveshaft has ${say.figure('leftOut')} left before less than what must hold is engaged: it can come apart.`,
  'shaft-slip-bottoms': (say) =>
    `at full bump the slip of the driveshaft can still go in ${say.figure('leftIn')}; ${say.plain('least')} should be left (common practice). A shaft that bottoms pushes into case and pinion.`,
  'shaft-joint-binds': (say) =>
    `${jointOf(say)} bends to ${say.figure('angle')} within the travel, and ${limitOf(say)}. A joint that binds breaks.`,
  'shaft-joint-near': (say) =>
    `${jointOf(say)} bends to ${say.figure('angle')} within the travel; ${limitOf(say)}. Only turning it by hand at full droop proves that it is free.`,
  'shaft-joint-straight': (say) =>
    `${jointOf(say)} is bent by ${say.figure('angle')} at ride height; below ${say.plain('least')} its needles do not roll and wear dents (common practice).`,
  'shaft-angle-speed': (say) =>
    `its joints are bent like one of ${say.figure('angle')} ${running(say)}; by rule of thumb ${say.figure('allowed')} is enough there. The rule holds up to ${say.figure('holdsTo')} (common practice, no source).`,
  'shaft-uneven': (say) =>
    `the pinion runs unevenly by ${say.percent('share')} twice a turn, like behind one joint of ${say.figure('residual')}: the bends do not cancel. By rule of thumb that can be borne up to ${say.figure('holdsTo')}, and ${say.plain('speed')} is asked for (common practice, no source).`,
  'shaft-whirl': (say) =>
    `the tube whirls at ${say.figure('whirl', 'rpm')} at the latest; kept to ${say.percent('share')} of that it may go ${say.figure('holdsTo')}, and ${say.plain('speed')} is asked for. A shaft that whirls bends and flies off.`,
  'shaft-pinion-aim': (say) =>
    `the pinion stands at ${say.figure('slope')} against level; ${say.text('aim') === 'at' ? 'with an even joint at the case it points at the case' : 'with two equal joints it lies along the output of the case'}, one to two degrees low: ${say.plain('low')} to ${say.plain('high')} (common practice). On a front axle turning it takes caster, degree for degree.`,
};
