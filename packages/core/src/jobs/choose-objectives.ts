import type { Objective, Spread } from '../choose/objectives.ts';
import type { Dimension } from '../finding/figure.ts';

/**
 * What is wanted of a candidate. Inside, smaller is better; `speed` is negated there, `short` is the probability that
 * what shall stay clear does not.
 */
export const WANTS = ['lift', 'harshness', 'short', 'speed', 'price', 'hours'] as const;
export type Want = (typeof WANTS)[number];

interface WantRule {
  readonly dimension: Dimension;
  /** Finer than this nobody feels, measures or pays [of its dimension]; 0: as it is. Common practice, no source. */
  readonly resolution: number;
  /** −1 where more is better. */
  readonly sign: 1 | -1;
}

/** Price and hours are bare numbers of the owner's: a ratio stands in for them. */
export const WANT_RULES: Readonly<Record<Want, WantRule>> = {
  // An eighth of an inch.
  lift: { dimension: 'length', resolution: 0.003175, sign: 1 },
  // A hundredth of the acceleration of gravity.
  harshness: { dimension: 'acceleration', resolution: 0.1, sign: 1 },
  short: { dimension: 'ratio', resolution: 0, sign: 1 },
  // A mile an hour.
  speed: { dimension: 'speed', resolution: 0.44704, sign: -1 },
  price: { dimension: 'ratio', resolution: 0, sign: 1 },
  hours: { dimension: 'ratio', resolution: 0, sign: 1 },
};

/** Without a course on which it is asked, nobody wants a speed. */
export const wantsOf = (asksSpeed: boolean): readonly Want[] =>
  WANTS.filter((want) => want !== 'speed' || asksSpeed);

export const objectivesOf = (wants: readonly Want[]): readonly Objective[] =>
  wants.map((want) => ({ id: want, resolution: WANT_RULES[want].resolution }));

export const exactly = (value: number): Spread => ({ low: value, middle: value, high: value });

/**
 * Nominal value and its 95 % interval: twice the root mean square deviation of the trials, as for every figure of a
 * ride. The value alone without two trials.
 */
export function spreadAbout(middle: number, trials: readonly number[]): Spread {
  if (trials.length < 2) return exactly(middle);
  let squares = 0;
  for (const value of trials) squares += (value - middle) ** 2;
  const half = 2 * Math.sqrt(squares / trials.length);
  return { low: middle - half, middle, high: middle + half };
}

/** 95 % point of the standard normal, two sides. */
const Z = 1.959964;

/**
 * A share that was counted, with the score interval for its probability.
 *
 *     (p + z²/2n ± z·√(p(1 − p)/n + z²/4n²)) ÷ (1 + z²/n)
 *
 * @source E. B. Wilson, J. Am. Stat. Assoc. 22 (1927) 209 (from memory)
 */
export function shareSpread(hits: number, count: number): Spread {
  if (count === 0) return { low: 0, middle: hits > 0 ? 1 : 0, high: 1 };
  const share = hits / count;
  const square = (Z * Z) / count;
  const centre = share + square / 2;
  const half = Math.sqrt(square * (share * (1 - share) + square / 4));
  return {
    low: Math.max(0, (centre - half) / (1 + square)),
    middle: share,
    high: Math.min(1, (centre + half) / (1 + square)),
  };
}
