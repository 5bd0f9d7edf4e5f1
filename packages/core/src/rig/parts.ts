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
  /** How fast the readings behind it went; beyond, it is extrapolated. Left out: as far as the table goes. */
  readonly knownTo?: KnownTo;
}

/** Shaft speed up to which a table rests on a reading [m/s] ≥ 0, each way; 0 where nothing was read. */
export interface KnownTo {
  readonly compression: number;
  readonly rebound: number;
}

/** Gas in a shock, which pushes its shaft out. */
export interface ShockGas {
  /** Charge, gauge, shaft fully out [Pa]. */
  readonly pressure: Reading;
  readonly rodDiameter: Reading;
  /** Pressure gained over the whole stroke ÷ charge. */
  readonly rise: Reading;
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
  /** Lost ÷ put in, one slow press to the usable crush and back; null when not measured. */
  readonly hysteresis: Reading | null;
  /** Work of a press to the usable crush at 1 m/s ÷ work of a slow one, > 1; null when not known. */
  readonly dynamicFactor: Reading | null;
  /** What the curve was worked out from when the stop is a gas chamber; null for all others. */
  readonly gas: GasStop | null;
  /** Air space and hole when it is hollow and vented; null for all others, and beside gas. */
  readonly vent: StopVent | null;
  readonly origin: 'measured' | 'guessed' | 'assumed';
}

/** A hollow stop that breathes through a hole. */
export interface StopVent {
  /** Diameter of the air space, across the stop [m]. */
  readonly cavity: Reading;
  /** Diameter of one hole [m]. */
  readonly hole: Reading;
  /** How many such holes. */
  readonly count: number;
  /** Contraction of the jet: 0.62 for a sharp edge, 1 for a rounded one. */
  readonly discharge: Reading;
}

/** A gas-charged stop: its curve is that of its gas. */
export interface GasStop {
  readonly rodDiameter: Reading;
  /** Charge, gauge, rod fully out [Pa]. */
  readonly pressure: Reading;
  /** Gas volume ÷ rod area, rod fully out [m]. */
  readonly column: Reading;
  /** Polytropic index, 1 slow … 1.4 fast. */
  readonly index: Reading;
  /** Force of its oil alone at one closing speed; null when not known. */
  readonly oil: { readonly force: Reading; readonly speed: Reading } | null;
}

/**
 * An anti-roll bar: its rate at the axle, or as measured on a bench, one link held and the other pulled.
 * One of the two is there.
 */
export interface AntiRollBar {
  /** Roll moment ÷ tilt between axle and body [N·m/rad]. */
  readonly rate: Reading | null;
  readonly link: BarLink | null;
}

export interface BarLink {
  /** Force at a link ÷ its travel, the other held [N/m]. */
  readonly rate: Reading;
  /** Left to right link, on the axle [m]. */
  readonly spread: Reading;
  /** Travel of a link ÷ axle travel at its place. */
  readonly ratio: Reading;
}

/** Size of a tyre as it stands on its side, in SI. */
export interface TyreSize {
  /** Section width [m]. */
  readonly width: number;
  /** Section height ÷ width. */
  readonly aspect: number;
  /** Rim diameter [m]. */
  readonly rim: number;
}
