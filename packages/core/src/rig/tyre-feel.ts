import type { End } from '../finding/place.ts';

/** How the tyres read the ground: a foot that averages it, two cams that roll over it, or a point. */
export const TYRE_FEELS = ['footprint', 'two-cams', 'point'] as const;
/** Where nobody asks for another. */
export const USUAL_FEEL: TyreFeel = 'footprint';
export type TyreFeel = (typeof TYRE_FEELS)[number];

/** What a foot of a tyre covers, and what the ground was laid out for [m]. */
export interface TyreFoot {
  readonly feel: TyreFeel;
  /** Length of its contact on flat ground at rest. */
  readonly contact: Readonly<Record<End, number>>;
  /** One ground for both ends: the mean of the two; 0 for a point. */
  readonly used: number;
}
