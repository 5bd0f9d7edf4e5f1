import type { End } from '../finding/place.ts';
import type { Reading } from './reading.ts';

/** How the rig is set for the ground: what a hand changes at the trail head, without a tool box. */
export const TRIMS = ['trail', 'road'] as const;
export type Trim = (typeof TRIMS)[number];

/** What a change costs, in the owner's own money and hours; both ends of the axle together. */
export interface Effort {
  readonly price: number;
  /** [h] */
  readonly hours: number;
}

/** A part from the shelf that may go on. */
export interface PartOption extends Effort {
  /** Name in `parts`. */
  readonly id: string;
}

/** A length that may be set, in steps: holes, spacers that are there, straps that are sold. */
export interface SizeOptions extends Effort {
  /** At least one, in the order of the file. All have the same key: one way of cutting, one error. */
  readonly sizes: readonly Reading[];
}

/** What may be set at one end for one trim; an empty list leaves it as it is. */
export interface TrimOptions {
  readonly shockSetting: readonly string[];
  readonly tyrePressure: readonly Reading[];
  readonly antiRollBar: readonly ('on' | 'off')[];
}

/** What may be bolted on, cut or set at one end. */
export interface EndChoices {
  readonly stop: readonly PartOption[];
  readonly spring: readonly PartOption[];
  readonly stopSpacer: SizeOptions | null;
  readonly seatAndStopDrop: SizeOptions | null;
  readonly springSpacer: SizeOptions | null;
  readonly strapLength: SizeOptions | null;
  /** By contact. */
  readonly notch: Readonly<Record<string, SizeOptions>>;
  readonly trims: Readonly<Record<Trim, TrimOptions>>;
}

/** A course that the rig must be good on, and in which trim. */
export interface DrivenCourse {
  /** Name of a course of the rig that is driven along. */
  readonly course: string;
  readonly trim: Trim;
  /** [m/s] > 0 */
  readonly speed: number;
  /** Of such ground in a day [m]; null: once over the course. */
  readonly perDay: number | null;
}

/** Where it is asked how fast the rig may go. */
export interface FastestCourse {
  readonly course: string;
  readonly trim: Trim;
  /** Slowest and fastest speed that is looked at [m/s]. */
  readonly from: number;
  readonly to: number;
}

/** What the owner may change, what it costs, what must not be, and where he drives. */
export interface Choices {
  /** Setup that all changes are made to, and that "do nothing" is. */
  readonly from: string;
  /** Name of the money, as typed; empty when he gave none. */
  readonly money: string;
  /** Most that all changes together may cost; null: no limit. */
  readonly budget: number | null;
  /** [h] */
  readonly hours: number | null;
  /** Highest that either end may stand above the rig as measured [m]. */
  readonly liftAtMost: number | null;
  /** Changes that he will not make, as `front.spring` or `front.notch.sump`. */
  readonly keep: readonly string[];
  readonly ends: Readonly<Record<End, EndChoices>>;
  readonly drive: readonly DrivenCourse[];
  readonly fastest: FastestCourse | null;
}
