import { formatFigure, fromSi, shownUnit, type UnitSystem } from '@lastinch/core';
import {
  type ChooseAnswer,
  type ChosenSetup,
  changesText,
  moneyText,
  WANT_NAMES,
  WANT_RULES,
  type Want,
  wantHead,
} from '@lastinch/core/choose';
import type { ScatterSpread } from '@lastinch/picture';
import type { ChooseView } from '../../choosing.ts';
import { inAHundred } from '../../parts/place-name.ts';

export interface WantWords {
  readonly system: UnitSystem;
  readonly money: string;
}

/** A candidate in the list: `A` to `Z`, then `AA` and so on. */
export const markOf = (place: number): string =>
  place < 26 ? String.fromCharCode(65 + place) : `${markOf(Math.floor(place / 26) - 1)}${markOf(place % 26)}`;

/** What is wanted, on the axis of a chart. */
export function axisName(want: Want, words: WantWords): string {
  const head = wantHead(want, words);
  const unit = want === 'short' ? '%' : want === 'price' ? words.money : (head.split(' ')[1] ?? head);
  const name = unit === '' ? WANT_NAMES[want] : `${WANT_NAMES[want]}, ${unit}`;
  return WANT_RULES[want].sign === 1 ? name : `${name}; more is better`;
}

/** A figure in the unit in which it is shown. */
export function shownValue(want: Want, value: number, system: UnitSystem): number {
  if (want === 'short') return 100 * value;
  const { dimension } = WANT_RULES[want];
  return dimension === 'ratio' ? value : fromSi(value, shownUnit(dimension, system, 0));
}

export function shownSpread(
  want: Want,
  { low, middle, high }: ScatterSpread,
  system: UnitSystem,
): ScatterSpread {
  const of = (value: number): number => shownValue(want, value, system);
  return { low: of(low), middle: of(middle), high: of(high) };
}

/** A figure without its interval: as the edge of what is asked for. */
export function edgeText(want: Want, value: number, { system, money }: WantWords): string {
  if (want === 'price') return moneyText(value, money);
  if (want === 'hours') return `${Number(value.toFixed(2))} h`;
  if (want === 'short') return inAHundred(value);
  const { dimension } = WANT_RULES[want];
  return formatFigure({ dimension, value, tolerance: 0 }, { system });
}

/** Edges that tell members apart, from the least asked to the most; none when they are all alike. */
export function edgesOf(
  { members }: ChooseAnswer,
  want: Want,
  words: WantWords,
): readonly { readonly value: number; readonly text: string }[] {
  const { sign } = WANT_RULES[want];
  const values = [...new Set(members.flatMap(({ wants }) => wants[want]?.middle ?? []))].sort(
    (a, b) => sign * (b - a),
  );
  // Figures that read alike are one edge: the one that lets all of them in.
  const byText = new Map<string, number>();
  for (const value of values) {
    const text = edgeText(want, value, words);
    if (!byText.has(text)) byText.set(text, value);
  }
  return byText.size < 2 ? [] : [...byText].map(([text, value]) => ({ value, text }));
}

/** Whether a candidate is within all that is asked for. */
export function isAskedFor({ wants }: ChosenSetup, most: ChooseView['most']): boolean {
  return Object.entries(most).every(([want, edge]) => {
    const value = wants[want as Want]?.middle;
    return value === undefined || WANT_RULES[want as Want].sign * (value - edge) <= 0;
  });
}

/** What a candidate is, in a row: what it changes, and where its settings are left as they are. */
export function candidateName({ changes, settings }: ChosenSetup, system: UnitSystem): string {
  if (changes.length === 0) return settings === 'best' ? 'only the settings' : 'nothing';
  const what = changesText(changes, system);
  return settings === 'best' ? what : `${what}; settings as they are`;
}

/** Decimals that a figure of a single drive is worth. */
const DECIMALS: Readonly<Record<'length' | 'speed' | 'acceleration', Readonly<Record<UnitSystem, number>>>> =
  {
    length: { shop: 2, metric: 0 },
    speed: { shop: 0, metric: 0 },
    acceleration: { shop: 2, metric: 1 },
  };

/** A figure of one drive at the nominal readings: without an interval, and with no more digits than it is worth. */
export function drivenText(dimension: keyof typeof DECIMALS, value: number, system: UnitSystem): string {
  const unit = shownUnit(dimension, system, 0);
  return `${fromSi(value, unit).toFixed(DECIMALS[dimension][system])} ${unit.name}`;
}
