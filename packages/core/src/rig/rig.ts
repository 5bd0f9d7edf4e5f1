import type { Corner, End, Side } from '../finding/place.ts';
import type { Assumption } from './assumptions.ts';
import type { Brackets } from './bracket.ts';
import type { Choices } from './choices.ts';
import type { CourseSpec } from './course-spec.ts';
import type { Driver } from './driver.ts';
import type { EndPoints } from './linkage.ts';
import type { AntiRollBar, ShockGas, ShockSetting, Spring, Stop, TyreSize } from './parts.ts';
import type { Reading, Sided } from './reading.ts';
import type { SetupPatch } from './setup-patch.ts';

/**
 * What a hard contact is, because changes act on it differently (trade.md section 0, table "which change moves which term"):
 * - `body`: something of the axle meets something of the frame or body (sump, Panhard bar, tyre on guard…);
 * - `coil`: the spring goes solid; - `shock`: the shock bottoms.
 */
export type ContactKind = 'body' | 'coil' | 'shock';

/** One candidate of the hard-travel list, as measured at ride height. */
export interface Contact {
  /** Key in the file, for example `sump`; `coil` and `shock` for the two derived ones. */
  readonly id: string;
  readonly name: string;
  readonly kind: ContactKind;
  /** Gap at ride height, along the motion of the point that touches [m]. */
  readonly gap: Sided<Reading>;
  /** Travel of that point ÷ axle travel in heave at the stop's station (> 0). */
  readonly ratio: Reading;
  /** From left to right, where it touches [m]: tells how it moves when the axle rolls. Null: as at the stops. */
  readonly spread: Reading | null;
}

/** Something that ends droop. `travel` formulas live in `travel/droop.ts`. */
export interface Strap {
  /** Free length of the strap [m]. */
  readonly length: Reading;
  /** Stretch at full load as a fraction of free length (0.08 = 8 %). */
  readonly stretch: Reading;
  /** Eye-to-eye length of the shock when the strap comes tight [m]. */
  readonly tightAtShock: Reading;
  /** Strap travel ÷ shock travel (> 0). */
  readonly ratio: Reading;
  /** Pull ÷ stretch [N/m]; null when not measured. */
  readonly rate: Reading | null;
}

export interface Hose {
  /** Free length between its fixed ends [m]. */
  readonly freeLength: Reading;
  /** Distance between those ends at the strap-stretched droop and full lock [m]. */
  readonly distanceAtDroop: Reading;
}

/** Droop travel before the driveshaft runs out of plunge or joint angle, as measured on the rig [m]. */
export interface ShaftLimit {
  readonly droop: Reading;
}

export interface Shock {
  /** Eye to eye at ride height [m]. */
  readonly rideLength: Reading | null;
  /** Eye to eye fully closed, on its own metal [m]. */
  readonly collapsedLength: Reading | null;
  /** Eye to eye fully open [m]. */
  readonly extendedLength: Reading | null;
  /** Shock travel ÷ axle travel in heave (> 0, ≤ 1 normally): the cosine of its lean. */
  readonly ratio: Reading;
  /** Distance from left to right shock mount on the axle [m]. */
  readonly spread: Reading;
  /** Damping only: gas and seals stand beside them. */
  readonly settings: Readonly<Record<string, ShockSetting>>;
  /** Name of the setting that is on the rig now. */
  readonly setting: string;
  /** Null when its gas was not measured. */
  readonly gas: ShockGas | null;
  /** Friction of seals and guides [N], where the settings do not hold it; null when not measured. */
  readonly friction: Reading | null;
  /** Rate on its own top, shaft fully out [N/m]; null when not measured. */
  readonly topOutRate: Reading | null;
}

/** How the stop is mounted. Its own data are in `Stop`. */
export interface StopMount {
  /** Tip to strike pad at ride height, per side, along the stop [m]. */
  readonly gap: Sided<Reading>;
  /** Stop travel ÷ axle travel in heave (> 0). */
  readonly ratio: Reading;
  /** Distance from left to right stop [m]. */
  readonly spread: Reading;
}

export interface Tyre {
  /** Vertical rate at the pressure in use [N/m]. */
  readonly rate: Reading;
  /** [N·s/m] */
  readonly damping: Reading;
  /** Inflation [Pa], null when not given. */
  readonly pressure: Reading | null;
  /** Loaded radius at ride [m]: for the drawing. */
  readonly radius: Reading;
  /** As on its side; null when not given. Shapes how the rate goes with pressure. */
  readonly size: TyreSize | null;
}

/** Witness marks of a test drive, section 3.8 and 3.9 of trade.md. Axle travel at the stop's station [m]. */
export interface Witness {
  readonly passes: readonly Reading[];
  /** Thinnest clay at the limiting contact [m]. */
  readonly clay: Reading | null;
}

/** A beam from wheel to wheel, or each wheel by itself. */
export type AxleKind = 'solid' | 'independent';

/**
 * One end of the rig: the axle and all that hangs on it. An independent pair of wheels is held as the solid axle that it
 * moves like (elements/independent-axle): every spread is the track, every ratio per wheel travel.
 */
export interface AxleEnd {
  readonly end: End;
  readonly kind: AxleKind;
  /** Tyre centre to tyre centre [m]. */
  readonly track: Reading;
  /** Whole axle with wheels, half of links and shocks [kg]. */
  readonly unsprungMass: Reading;
  /** Roll inertia of the axle about its centre [kg·m²]. */
  readonly axleRollInertia: Reading;
  readonly spring: Spring;
  /** Coil length at ride height [m], null when not measured. */
  readonly springRideLength: Reading | null;
  /** Spring travel ÷ axle travel in heave (> 0). */
  readonly springRatio: Reading;
  /** Distance from left to right spring [m]. */
  readonly springSpread: Reading;
  /** Left free before coils touch [m]. */
  readonly coilReserve: Reading;
  /** Left free before the shock bottoms [m]. */
  readonly shockReserve: Reading;
  /** Left free before the shock tops out at strap-stretched droop [m]. */
  readonly shockDroopReserve: Reading;
  readonly shock: Shock;
  readonly stop: Stop;
  readonly stopMount: StopMount;
  readonly antiRollBar: AntiRollBar | null;
  /** Measured body contacts; `coil` and `shock` are added by `travel/` when their lengths are known. */
  readonly contacts: readonly Contact[];
  /** What frame, brackets, bushes and links give on the worst hit [m]. */
  readonly flex: Reading;
  readonly strap: Strap | null;
  readonly hose: Hose | null;
  readonly shaft: ShaftLimit | null;
  /** Links, mounts, shaft, hose and steering in space. */
  readonly points: EndPoints;
  readonly tyre: Tyre;
  /** Stiffness of metal on metal behind the stop [N/m]. */
  readonly metalRate: Reading;
  readonly witness: Witness | null;
  /** What carries stop, spring and shock on the frame; null where it was not told. */
  readonly brackets: Brackets;
}

/** What the owner accepts. */
export interface Limits {
  /** Clearance that must be left on the worst hit [m]: the `r` of the travel column. */
  readonly reserve: Reading;
  /** Peak body acceleration above rest that he accepts [m/s²]. */
  readonly bodyAcceleration: Reading;
  /** Force of stop and metal together on one corner of the frame that he accepts [N]; null when he gave none. */
  readonly bracketForce: Reading | null;
  /** Factor of safety against yield that he wants of brackets; null where the rig tells of none. */
  readonly bracketFactor: Reading | null;
  /** Power that a seated body may take up from vertical motion [W]; null when he gave none. */
  readonly absorbedPower: Reading | null;
  /** Largest acceleration of the seat above rest, after a low-pass of 30 Hz [m/s²]; null when he gave none. */
  readonly seatShock: Reading | null;
  /** Vibration dose of the seat in a day [m/s^1.75]; null when he gave none. */
  readonly seatDose: Reading | null;
  /** Least share of the time that each tyre must carry, 0…1; null when he gave none. */
  readonly tyreContact: Reading | null;
}

/** One axle raised and the other weighed meanwhile, for the height of the centre of gravity (elements/axle-lift). */
export interface CgLift {
  readonly raised: End;
  /** How much higher its hubs stood than on level ground [m]. */
  readonly by: Reading;
  /** On each tyre that stayed on the ground, the other axle raised [kg]. */
  readonly scale: Readonly<Record<Side, Reading>>;
  /** Hub to ground of those tyres, raised [m]; the one of the axle when it was not taped. */
  readonly tyreRadius: Reading;
  /** Share of the give of the springs that is taken off, about 1; null when the suspension was locked. */
  readonly give: Reading | null;
}

/** Spare parts on the shelf that setups may name. */
export interface Shelf {
  readonly stops: Readonly<Record<string, Stop>>;
  readonly springs: Readonly<Record<string, Spring>>;
}

/** A measured rig, complete: every gap has been filled by a marked assumption. Frozen. */
export interface Rig {
  readonly name: string;
  readonly notes: string;
  /** Axle to axle [m]. */
  readonly wheelbase: Reading;
  /** Mass on each tyre at ride, driver and fuel aboard [kg]. */
  readonly cornerMass: Readonly<Record<Corner, Reading>>;
  /** Centre of gravity of the whole rig above the ground [m]. */
  readonly cgHeight: Reading;
  /** Inertias of the sprung mass about its own centre of gravity [kg·m²]. */
  readonly rollInertia: Reading;
  readonly pitchInertia: Reading;
  readonly front: AxleEnd;
  readonly rear: AxleEnd;
  readonly shelf: Shelf;
  readonly setups: Readonly<Record<string, SetupPatch>>;
  readonly courses: Readonly<Record<string, CourseSpec>>;
  readonly limits: Limits;
  /** What may be changed; null where the file says nothing. */
  readonly choices: Choices | null;
  /** Null where the file says nothing: then he is part of the body. */
  readonly driver: Driver | null;
  /** Everything that was not measured, and what was taken instead. */
  readonly assumptions: readonly Assumption[];
  /** What `cgHeight` was worked out from; null when that was typed or assumed. */
  readonly cgLift: CgLift | null;
}
