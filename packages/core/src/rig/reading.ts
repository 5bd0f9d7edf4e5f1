import type { Dimension } from '../finding/figure.ts';
import type { Side } from '../finding/place.ts';

/** Where a value or a tolerance comes from. */
export type Origin =
  /** Typed by the owner as measured. */
  | 'measured'
  /** Typed by the owner with `~`: his own assumption. */
  | 'guessed'
  /** Filled in by the program, because nothing was typed. */
  | 'assumed';

/**
 * One input of the model: an SI value with 95 % half-widths (normal, k = 2) that are always present here,
 * because a missing tolerance was filled by a marked assumption when the file was read.
 * Every uncertain number of a rig is a Reading, so that uncertainty can be blamed on it by key.
 */
export interface Reading {
  /** Dotted path in the rig file, for example `front.contacts.sump.gap` or `front.stop.gap.left`. Unique in a rig. */
  readonly key: string;
  readonly dimension: Dimension;
  /** SI. */
  readonly value: number;
  /** 95 % half-width upward, SI, ≥ 0. */
  readonly plus: number;
  /** 95 % half-width downward, SI, ≥ 0. */
  readonly minus: number;
  readonly origin: Origin;
  readonly toleranceOrigin: Origin;
  /** As typed; empty when the program assumed it. */
  readonly text: string;
}

/** One reading for each side of an axle; the same object twice when the file gives one value for both. */
export type Sided<T> = Readonly<Record<Side, T>>;

/**
 * How a formula looks a reading up. At the nominal point it returns `reading.value`; a Monte Carlo trial returns
 * the sampled value. Every formula of the model takes one, so that it can be evaluated under uncertainty unchanged.
 */
export type ValueOf = (reading: Reading) => number;

export const nominal: ValueOf = (reading) => reading.value;
