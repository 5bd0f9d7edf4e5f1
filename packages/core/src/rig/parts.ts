import type { Reading } from './reading.ts';

/** A coil spring. Lengths are along its axis. */
export interface Spring {
  /** Name in the rig file, `as-fitted` for the one measured on the rig. */
  readonly id: string;
  /** Rate [N/m] > 0. */
  readonly rate: Reading;
  /** Free length [m], null when not measured. */
  readonly freeLength: Reading | null;
  /** Length at coil bind [m], null when not measured. */
  readonly solidLength: Reading | null;
}

/** A force table of one shock setting: speed [m/s] strictly rising and force [N] not falling; compression positive. */
export interface ShockSetting {
  readonly id: string;
  readonly speed: readonly number[];
  readonly force: readonly number[];
  /** Where the table comes from: measured, or estimated from one reading or from damping ratios. */
  readonly origin: 'measured' | 'guessed' | 'assumed';
}

/** A bump stop as measured in a press: crush [m] from 0 strictly rising, force [N] from 0 rising. */
export interface Stop {
  readonly id: string;
  /** Free length [m], null when not measured: then a swap cannot say where its gap ends. */
  readonly freeLength: Reading | null;
  /** Compression after which it is too stiff or would be damaged [m]. */
  readonly usableCrush: Reading;
  readonly crush: readonly number[];
  readonly force: readonly number[];
  /** Force gain per closing speed [s/m] ≥ 0: force is multiplied by max(0, 1 + rateFactor·speed). */
  readonly rateFactor: Reading;
  readonly origin: 'measured' | 'guessed' | 'assumed';
}
