import type { FindingCode } from '../finding/codes.ts';
import type { Finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import { BRACKET_PHRASES } from './bracket-findings.ts';
import { EXPOSURE_PHRASES } from './exposure-findings.ts';
import { Facts, type Phrase } from './facts.ts';
import { FLEX_PHRASES } from './flex-findings.ts';
import { LINE_PHRASES } from './line-findings.ts';
import { LINK_PHRASES } from './link-findings.ts';
import { PLACE_NAMES } from './places.ts';
import { readingName } from './readings.ts';
import { RIDE_PHRASES } from './ride-findings.ts';
import { SHAFT_PHRASES } from './shaft-findings.ts';
import { STABILITY_PHRASES } from './stability-findings.ts';
import { SWEEP_PHRASES } from './sweep-findings.ts';

export interface WordOptions {
  readonly system: UnitSystem;
  /** False leaves the place away from the head of the sentence, for a view that shows it beside. */
  readonly place?: boolean;
}

/**
 * A finding in one or two sentences, its place first: `Front left: fail: …`.
 *
 * @invariant every figure that rests on readings stands with its tolerance, or with `± unknown`
 */
export function findingText(finding: Finding, { system, place = true }: WordOptions): string {
  const said = PHRASES[finding.code](new Facts(finding, system));
  return place && finding.place !== 'rig' ? `${PLACE_NAMES[finding.place]}: ${said}` : capital(said);
}

const capital = (sentence: string): string => sentence.charAt(0).toUpperCase() + sentence.slice(1);

const DROOP_LIMITS: Readonly<Record<string, string>> = {
  shock: 'the open shock',
  strap: 'the stretched strap',
  spring: 'the unseated coil',
  hose: 'the brake hose',
  shaft: 'the driveshaft',
};
const limitName = (id: string): string => DROOP_LIMITS[id] ?? id;

const PHRASES: Readonly<Record<FindingCode, Phrase>> = {
  ...RIDE_PHRASES,
  ...SWEEP_PHRASES,
  ...EXPOSURE_PHRASES,
  ...SHAFT_PHRASES,
  ...LINE_PHRASES,
  ...LINK_PHRASES,
  ...FLEX_PHRASES,
  ...STABILITY_PHRASES,
  ...BRACKET_PHRASES,
  'travel-pass': (say) =>
    `pass: with the stop fully crushed, ${say.text('contact')} still has ${say.figure('spare')} to spare beyond the ${say.plain('allowance')} that must stay free; nothing else has less.`,
  'travel-not-proven': (say) =>
    `not proven: with the stop fully crushed, ${say.text('contact')} has ${say.figure('spare')} to spare beyond the ${say.plain('allowance')} that must stay free, and the readings may be off by more than that. Chance that it is too little: ${say.chance}.`,
  'travel-fail': (say) =>
    `fail: with the stop fully crushed, ${say.text('contact')} is ${say.size('spare')} short. It is hit after ${say.figure('travel')}; free bump ${say.figure('freeBump')}, crush ${say.figure('crush')} and the ${say.plain('allowance')} that must stay free need more.`,
  'travel-contacts-tie': (say) =>
    `which comes first cannot be told: ${say.text('contacts')} lie within their uncertainty, from ${say.figure('travel')} of bump. Look after all of them.`,
  'travel-only-one-contact': (say) => {
    const missing = say.finding.facts.missing === '' ? '' : ` Nothing is known of: ${say.text('missing')}.`;
    return `only one contact of axle and frame is on the list, ${say.text('contact')}; whether another comes sooner nobody has measured.${missing}`;
  },
  'stop-after-metal': (say) =>
    `${say.text('contact')} is hit ${say.size('clearance')} before the stop is fully crushed: the stop is never used up, metal is.`,
  'stop-touches-at-ride': (say) =>
    say.number('freeBump') <= 0
      ? `the rig stands on its stop at ride height (gap ${say.figure('freeBump')}).`
      : `the stop may touch at ride height: its gap is ${say.figure('freeBump')}.`,
  'stop-gap-needed': (say) =>
    `gap or height of this setup cannot be worked out before these are measured: ${say.text('needed').split(', ').map(readingName).join(', ')}. Until then the column shows them as unchanged, and nothing here is proven.`,
  'coil-binds-before-stop': (say) =>
    `the coil is solid at ${say.figure('travel')} of bump; full crush and its reserve of ${say.plain('allowance')} leave ${say.figure('spare')}. A spacer on the coil does not move this limit.`,
  'shock-bottoms-before-stop': (say) =>
    `the shock bottoms at ${say.figure('travel')} of bump; full crush and its reserve of ${say.plain('allowance')} leave ${say.figure('spare')}. A shock is no bump stop: rods bend and mounts tear.`,
  'droop-first-limit': (say) =>
    `droop ends ${say.figure('travel')} down, at ${limitName(say.text('limit'))}.`,
  'droop-shock-is-the-limit': (say) =>
    say.text('strap') === 'none'
      ? `the shock ends droop by its own length, ${say.figure('travel')} down. A strap should catch the axle before it tops out.`
      : `the stretched strap lets the shock open to ${say.figure('stretched')}, past its ${say.figure('open')}: the shock is the droop stop.`,
  'droop-hose-taut': (say) =>
    `the brake hose has ${say.figure('slack')} of slack at strap-stretched droop and full lock: it may be taut. Do not drive it before a person qualified under your local rules has looked at it.`,
  'droop-spring-unseats': (say) =>
    `the coil is loose from ${say.figure('travel')} of droop on, ${say.figure('loose')} before ${limitName(say.text('limitName'))}. It must be held, so that it finds its seat again.`,
  'strap-shorten': (say) =>
    `the stretched strap leaves the shock ${say.figure('left')}, and ${say.plain('reserve')} is wanted. One of ${say.atMost('shorter')} or less keeps it, for ${say.atLeast('droopLost')} of droop.`,
  'hose-slack-minimum': (say) =>
    `the brake hose has ${say.figure('slack')} of slack at strap-stretched droop and full lock; ${say.plain('least')} is the least that is usual.`,
  'witness-data-valid': (say) =>
    `${say.text('passes')} passes agree within ${say.rough('spread')}, inside the uncertainty of ${say.rough('uncertainty')}: they can be used.`,
  'witness-data-scattered': (say) =>
    `${say.text('passes')} passes differ by ${say.rough('spread')}, more than the uncertainty of ${say.rough('uncertainty')}: same road, pressures and load, and drive them again before you conclude anything.`,
  'witness-travel-share': (say) =>
    `the hardest pass used ${say.percent('share')} of the travel to full crush (${say.figure('furthest')} of ${say.figure('toFullCrush')}). Wanted on the worst known hit: 85 to 95 % (common practice).`,
  'witness-flex-observed': (say) =>
    `clay and markers show that the frame gave ${say.figure('flex')}; carried on to full crush that is ${say.figure('atFullCrush')}, against ${say.figure('flexEntered')} entered.`,
  'witness-margin-short': (say) =>
    `with the flex that was seen, full crush would leave ${say.figure('left')}, less than the reserve of ${say.plain('reserve')} and its uncertainty. This is a safety correction, not tuning: do it before anything else is changed.`,
  'lift-buys-no-safety': (say) =>
    `the lift of ${say.plain('lift')} buys free gap (${say.plain('freeBumpGained')} more), not safety: ${say.figure('spare')} to spare, ${say.plain('spareBefore')} before. Only a stop that comes sooner, or metal out of the way, helps.`,
  'statics-spring-length-disagrees': (say) =>
    `the coil should stand at ${say.figure('settled')} by weight, rate and free length, but the tape says ${say.figure('measured')}. One of these readings is off.`,
  'statics-weights-cross': (say) => {
    const [one, other] = say.text('heavier').split(', ') as Place[];
    return `${PLACE_NAMES[one]?.toLowerCase() ?? one} and ${PLACE_NAMES[other]?.toLowerCase() ?? other} carry ${say.percent('share')} together, ${say.size('difference')} more than half each way of the other diagonal: look at floor level and spring preload.`;
  },
  'assumption-matters': (say) =>
    say.text('what') === 'value'
      ? `${say.percent('share')} of the uncertainty of this verdict comes from a reading that is assumed: ${readingName(say.text('reading'))}.`
      : `${say.percent('share')} of the uncertainty of this verdict comes from a tolerance that is assumed: that of ${readingName(say.text('reading'))}.`,
};
