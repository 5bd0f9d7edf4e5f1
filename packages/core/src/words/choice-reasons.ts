import { fromSi } from '../quantity/dimension.ts';
import { formatValue } from '../quantity/format.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import { shownUnit } from '../quantity/shown.ts';
import { percent } from './amounts.ts';
import { moneyText, WANT_NAMES, type WantName } from './choices.ts';
import { readingName } from './readings.ts';
import { needle } from './speeds.ts';

/** Reasons as the job says them. */
type Reason =
  | { readonly code: 'best'; readonly want: WantName; readonly next: number | null }
  | { readonly code: 'best-within'; readonly want: WantName; readonly within: WantName }
  | { readonly code: 'most-even'; readonly lag: number }
  | { readonly code: 'kept-by'; readonly want: WantName; readonly rival: number; readonly by: number }
  | { readonly code: 'alone' }
  | { readonly code: 'between' };

interface Difference {
  readonly want: WantName;
  readonly by: number;
  readonly so: number;
  readonly notSo: number;
}

interface Comparison {
  readonly with: number;
  readonly better: readonly Difference[];
  readonly worse: readonly Difference[];
  readonly trials: number;
}

interface Why {
  readonly reasons: readonly Reason[];
  readonly limited: { readonly want: WantName; readonly behind: number; readonly lag: number } | null;
  readonly against: readonly Comparison[];
  readonly neighbours: readonly Comparison[];
  readonly held: number;
  readonly trials: number;
  readonly deciding: readonly { readonly key: string; readonly share: number }[];
}

export interface ReasonOptions {
  readonly system: UnitSystem;
  readonly money: string;
  /** What a candidate is called on this page, by its number. */
  readonly nameOf: (index: number) => string;
}

/** Everything that is said of a member: why it is there, what limits it, what it beats and gives up, how firmly it stands. */
export function whyTexts(why: Why, options: ReasonOptions): readonly string[] {
  return [
    ...why.reasons.map((reason) => reasonText(reason, options)),
    ...(why.limited === null ? [] : [limitedText(why.limited, options)]),
    ...[...why.against, ...why.neighbours].map((one) => comparisonText(one, options)),
    rankText(why),
    ...(why.deciding.length === 0 ? [] : [decidingText(why)]),
  ];
}

/** The same in short: why it is there, what limits it, and against doing nothing. */
export function whyShortTexts(why: Why, options: ReasonOptions): readonly string[] {
  return [
    why.reasons.map((reason) => reasonText(reason, options)).join(' '),
    [...(why.limited === null ? [] : [limitedText(why.limited, options)]), rankText(why)].join(' '),
    ...why.against.slice(0, 1).map((one) => comparisonText(one, options)),
  ];
}

const name = (want: WantName): string => WANT_NAMES[want].toLowerCase();

/** An amount of what is wanted: `0.05 g`, `19 in 100`, `107 EUR`. */
function amountText(want: WantName, amount: number, { system, money }: ReasonOptions): string {
  switch (want) {
    case 'lift':
      return formatValue(amount, 'length', { system });
    case 'harshness':
      return shaking(amount, system);
    case 'short':
      return `${Math.round(100 * amount)} in 100`;
    case 'speed':
      return needle(amount, system);
    case 'price':
      return moneyText(amount, money);
    case 'hours':
      return `${Number(amount.toFixed(2))} h`;
  }
}

/** To two digits: a difference between candidates is known no better. */
function shaking(amount: number, system: UnitSystem): string {
  const unit = shownUnit('acceleration', system, amount);
  return `${Number(fromSi(amount, unit).toPrecision(2))} ${unit.name}`;
}

function reasonText(reason: Reason, options: ReasonOptions): string {
  switch (reason.code) {
    case 'best':
      return reason.next === null
        ? `No other is better in ${name(reason.want)}.`
        : `No other is better in ${name(reason.want)}; the next is ${amountText(reason.want, reason.next, options)} behind.`;
    case 'best-within':
      return `The best in ${name(reason.want)} of all that are as good in ${name(reason.within)}.`;
    case 'most-even':
      return `The most even: nowhere more than ${percent(reason.lag)} of the span behind the best.`;
    case 'kept-by':
      return `Kept by ${name(reason.want)} alone: ${options.nameOf(reason.rival)} is no worse in all else.`;
    case 'alone':
      return 'The only one that stands: no other is better in anything.';
    case 'between':
      return 'Between the others: each of them is worse in several things.';
  }
}

const limitedText = ({ want, behind, lag }: NonNullable<Why['limited']>, options: ReasonOptions): string =>
  `Limited by ${name(want)}: ${amountText(want, behind, options)} behind the best of these, ${percent(lag)} of the span.`;

/** `Against as it is: better in seat by 0.05 g (in 14 of 16 rigs); gives up 107 EUR …`. */
function comparisonText({ with: other, better, worse, trials }: Comparison, options: ReasonOptions): string {
  const said = ({ want, by, so }: Difference): string => {
    // Lift, price and hours do not hang on readings.
    const sure = want === 'price' || want === 'hours' || so === trials ? '' : ` (in ${so} of ${trials} rigs)`;
    return `${name(want)} by ${amountText(want, by, options)}${sure}`;
  };
  const parts = [
    ...(better.length > 0 ? [`better in ${better.map(said).join(', ')}`] : []),
    ...(worse.length > 0 ? [`gives up ${worse.map(said).join(', ')}`] : []),
  ];
  return `Against ${options.nameOf(other)}: ${parts.length > 0 ? parts.join('; ') : 'alike in all that is wanted'}.`;
}

const rankText = ({ held, trials }: Why): string =>
  held === trials
    ? `It stands in all ${trials} rigs.`
    : `It stands in ${held} of ${trials} rigs; in the others one of these beats it.`;

const decidingText = ({ deciding }: Why): string =>
  `Measure again first: ${deciding
    .slice(0, 3)
    .map(({ key, share }) => `${readingName(key)} (${percent(share)} of what decides)`)
    .join(', ')}.`;
