import type { Figure } from '../finding/figure.ts';
import type { End, Place } from '../finding/place.ts';
import { fromSi } from '../quantity/dimension.ts';
import { formatFigure } from '../quantity/format.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import { shownUnit } from '../quantity/shown.ts';
import { inAHundred } from './amounts.ts';
import { PLACE_NAMES } from './places.ts';
import { needle } from './speeds.ts';

/** What is wanted, as the job says it. */
export type WantName = 'lift' | 'harshness' | 'short' | 'speed' | 'price' | 'hours';

interface Spread {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

interface Change {
  readonly end: End;
  readonly of:
    | 'stop'
    | 'spring'
    | 'stopSpacer'
    | 'seatAndStopDrop'
    | 'springSpacer'
    | 'strapLength'
    | 'notch';
  readonly part: string;
  readonly contact: string;
  readonly size: Figure | null;
}

interface Setting {
  readonly end: End;
  readonly of: 'shockSetting' | 'tyrePressure' | 'antiRollBar';
  readonly name: string;
  readonly pressure: Figure | null;
}

export interface ChoiceWordOptions {
  readonly system: UnitSystem;
  /** Name of the money; empty: none was given. */
  readonly money: string;
}

/** What is wanted, in a word or two. */
export const WANT_NAMES: Readonly<Record<WantName, string>> = {
  lift: 'Lift',
  harshness: 'Seat',
  short: 'Reserve used up',
  speed: 'Limiting speed',
  price: 'Price',
  hours: 'Hours',
};

/** What each of them is, for who reads it the first time. */
export const WANT_MEANINGS: Readonly<Record<WantName, string>> = {
  lift: 'how much higher the higher end stands than as measured',
  harshness: 'root mean square of what the seat takes up and down, over all courses of a day',
  short: 'how likely it is that flex allowance and reserve are used up on one of the courses',
  speed: 'at which something is broken first on the course named for it',
  price: 'of all changes',
  hours: 'of work',
};

const DIMENSIONS = { lift: 'length', harshness: 'acceleration', speed: 'speed' } as const;

/** Head of a narrow column, with the unit of its cells: `Lift in`, `Short %`, `EUR`. */
export function wantHead(want: WantName, { system, money }: ChoiceWordOptions): string {
  const unit =
    want in DIMENSIONS ? shownUnit(DIMENSIONS[want as keyof typeof DIMENSIONS], system, 0).name : '';
  const heads: Readonly<Record<WantName, string>> = {
    lift: `Lift ${unit}`,
    harshness: `Seat ${unit}`,
    short: 'Used up %',
    speed: `Speed ${unit}`,
    price: money === '' ? 'Price' : money,
    hours: 'h',
  };
  return heads[want];
}

/** The same in a cell below such a head: `1.00 ± 0.03`, `94 (72-99)`, `107`. */
export function wantCell(want: WantName, spread: Spread, { system }: ChoiceWordOptions): string {
  const { low, middle, high } = spread;
  if (want === 'price' || want === 'hours') return String(Number(middle.toFixed(2)));
  if (want === 'short') return `${percents(middle)} (${percents(low)}-${percents(high)})`;
  const { name } = shownUnit(DIMENSIONS[want], system, 0);
  const half = Math.max(high - middle, middle - low);
  if (Math.abs(middle) < 1e-9 && half < 1e-9) return '0';
  const unit = fromSi(1, shownUnit(DIMENSIONS[want], system, 0));
  const digits = half > 0 ? Math.max(0, 1 - Math.floor(Math.log10(half * unit))) : 2;
  const decimals = Math.min(want === 'lift' && name === 'in' ? 2 : 3, digits);
  return `${(middle * unit).toFixed(decimals)} ± ${(half * unit).toFixed(decimals)}`;
}

const percents = (share: number): number => Math.round(100 * share);

/** A figure of a candidate with its 95 % interval: `0.51 g ± 0.15`, `about 94 in 100 (72 to 99)`, `107 EUR`. */
export function wantText(want: WantName, spread: Spread, { system, money }: ChoiceWordOptions): string {
  const { low, middle, high } = spread;
  const half = Math.max(high - middle, middle - low);
  if (want === 'price') return moneyText(middle, money);
  if (want === 'hours') return `${Number(middle.toFixed(2))} h`;
  if (want === 'short') return `${inAHundred(middle)} (${percents(low)} to ${percents(high)})`;
  if (Math.abs(middle) < 1e-9 && half < 1e-9) return 'none';
  return formatFigure({ dimension: DIMENSIONS[want], value: middle, tolerance: half }, { system });
}

export const moneyText = (amount: number, money: string): string =>
  `${Number(amount.toFixed(2))}${money === '' ? '' : ` ${money}`}`;

const CHANGE_NAMES: Readonly<Record<Exclude<Change['of'], 'notch'>, string>> = {
  stop: 'stop',
  spring: 'spring',
  stopSpacer: 'stop spacer',
  seatAndStopDrop: 'seat and stop lowered',
  springSpacer: 'spring spacer',
  strapLength: 'strap',
};

/** `front stop soft`, `front seat and stop lowered 1 in`, `front notch at sump 1/2 in`. */
export function changeText({ end, of, part, contact, size }: Change, system: UnitSystem): string {
  const what = of === 'notch' ? `notch at ${contact}` : CHANGE_NAMES[of];
  const how = size === null ? part : formatFigure({ ...size, tolerance: 0 }, { system });
  return `${end} ${what} ${how}`;
}

/** All changes of a candidate; `nothing` when there are none. */
export const changesText = (changes: readonly Change[], system: UnitSystem): string =>
  changes.length === 0 ? 'nothing' : changes.map((change) => changeText(change, system)).join(', ');

/** `front shocks on road, front tyres 26 psi, front bar off`; `as it is set now`. */
export function settingsText(settings: readonly Setting[], system: UnitSystem): string {
  if (settings.length === 0) return 'as it is set now';
  return settings
    .map(({ end, of, name, pressure }) => {
      if (of === 'antiRollBar') return `${end} bar ${name}`;
      if (pressure === null) return `${end} shocks on ${name}`;
      return `${end} tyres ${formatFigure({ ...pressure, tolerance: 0 }, { system })}`;
    })
    .join(', ');
}

const BROKEN: Readonly<Record<string, string>> = {
  'metal-contact': 'metal is met',
  clearance: 'the reserve is used up',
  'body-shock': 'the body is shaken beyond its limit',
  'bracket-load': 'a bracket is loaded beyond its limit',
  'tyre-contact': 'a tyre is off the ground too long',
  'left-validity': 'the rig tumbles, which this model cannot follow',
};

interface Fastest {
  readonly speed: number;
  readonly held: number | null;
  readonly broken: number | null;
  readonly by: string | null;
  readonly place: Place;
}

/** What limits the speed: `at 17.2 mph the body is shaken beyond its limit; 16.9 mph was held`. */
export function fastestText({ held, broken, by, place }: Fastest, system: UnitSystem): string {
  if (broken === null || by === null) return `nothing is broken up to ${needle(held ?? 0, system)}`;
  const where = place === 'rig' ? '' : ` (${PLACE_NAMES[place].toLowerCase()})`;
  const said = `at ${needle(broken, system)} ${BROKEN[by] ?? by}${where}`;
  return held === null
    ? `${said}, and no slower speed was tried`
    : `${said}; ${needle(held, system)} was held`;
}

/** What a stage of judging knew, as the end of a sentence about those that it discarded. */
export function stageText(stage: string): string {
  if (stage === 'undriven') return 'by lift, price and hours alone';
  if (stage.startsWith('trim.')) return `once driven in ${stage.slice(5)} trim`;
  if (stage === 'speed') return 'once the limiting speed was known';
  if (stage.startsWith('short.')) return `while counting in how many rigs the reserve is used up`;
  if (stage === 'limits') return 'once hoses and shafts were looked at';
  return 'at the end';
}

/** A constraint by its name: `the budget`, `the hose at the front`. */
export function constraintText(constraint: string): string {
  const [what = '', ...rest] = constraint.split('.');
  const of = rest.join('.');
  switch (what) {
    case 'budget':
      return 'the budget (choices.budget)';
    case 'hours':
      return 'the hours of work (choices.hours)';
    case 'lift':
      return 'the highest lift (choices.liftAtMost)';
    case 'keep':
      return `what is kept: ${of} (choices.keep)`;
    case 'ride':
      return `the course ${of}, where it tumbles`;
    case 'hose':
      return `the brake hose at the ${of}, which pulls tight`;
    case 'shaft':
      return `the driveshaft at the ${of}, which binds or runs out of slip`;
    case 'pad':
      return `the strike pad at the ${of}, which the stop misses`;
    default:
      return constraint;
  }
}

/** Why a search ended. */
export const WHY_ENDED: Readonly<Record<'every-candidate' | 'front-stable' | 'limit-reached', string>> = {
  'every-candidate': 'Every candidate was looked at: none is left out that would stand here.',
  'front-stable':
    'There were too many to look at each: the search ended when the list did not grow any more. Better ones may exist.',
  'limit-reached':
    'There were too many to look at each, and the search ended at its limit while the list still grew: better ones are likely.',
};
