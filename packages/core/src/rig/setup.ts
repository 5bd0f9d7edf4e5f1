import type { End } from '../finding/place.ts';
import type { AxleEnd, Rig } from './rig.ts';
import type { EndPatch } from './setup-patch.ts';

/** One end as it is in a setup: the measured end, the parts chosen, and what was moved. */
export interface SetupEnd {
  readonly base: AxleEnd;
  readonly patch: EndPatch;
  readonly spring: AxleEnd['spring'];
  readonly stop: AxleEnd['stop'];
  readonly shockSetting: AxleEnd['shock']['settings'][string];
  /** Null without one, or with its links taken off. */
  readonly antiRollBar: AxleEnd['antiRollBar'];
}

/** A rig with its choices made: what every computation takes. Frozen plain data. */
export interface Setup {
  readonly id: string;
  readonly notes: string;
  readonly rig: Rig;
  readonly ends: Readonly<Record<End, SetupEnd>>;
}

/** Name under which the rig as measured, without any patch, is always available. */
export const AS_MEASURED = 'as-measured';
