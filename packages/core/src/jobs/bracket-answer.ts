import type { BracketChange } from '../bracket/changes.ts';
import type { BracketCheck, BracketLoad, BracketPart } from '../bracket/checks.ts';
import type { DetailName } from '../bracket/fatigue.ts';
import type { Figure } from '../finding/figure.ts';
import type { Finding } from '../finding/finding.ts';
import type { End } from '../finding/place.ts';
import type { Bracket, MountName } from '../rig/bracket.ts';
import type { Rig } from '../rig/rig.ts';
import type { Hit } from './bracket-loads.ts';
import type { NotChecked } from './bracket-not-checked.ts';
import type { Demand } from './stop-drive.ts';

export interface BracketRequest {
  readonly rig: Rig;
  readonly setup: string;
  readonly demands: readonly Demand[];
  readonly trials: number;
  readonly seed: number;
  /** A load that was thought of, instead of those of a ride [N]; for every bracket. */
  readonly force: number | null;
}

/** One way to give way, with its interval over the readings. */
export interface BracketLine {
  readonly part: BracketPart;
  /** Bears ÷ carries; its half-width is that to the worse side. */
  readonly factor: Figure;
  /** What it must be: the owner's, or its own. */
  readonly needs: number;
  readonly verdict: 'holds' | 'open' | 'short';
  readonly carries: number | null;
  readonly bears: number | null;
  readonly in: BracketCheck['in'];
}

/** A load case of a bracket. */
export interface BracketCase {
  readonly hit: Hit;
  /** Of the mount, with its interval; what the bracket swings further than that at rest; what it is checked with [N]. */
  readonly force: Figure;
  readonly swing: number;
  readonly load: BracketLoad;
  /** The worst first. */
  readonly lines: readonly BracketLine[];
}

export interface BracketLife {
  readonly demand: string;
  readonly part: BracketPart;
  readonly detail: DetailName;
  /** Length of a pass [m]; null for a drop. */
  readonly pass: number | null;
  readonly loops: number;
  /** Passes until Miner's sum is 1, by the class less its factor and by the class; null where none does harm. */
  readonly passes: { readonly least: number | null; readonly most: number | null };
}

/** Whether one bracket holds. */
export interface BracketAnswer {
  readonly end: End;
  readonly mount: MountName;
  readonly kind: Bracket['kind'];
  /** Null where the load was thought of. */
  readonly lean: number | null;
  readonly ride: BracketCase;
  /** Stop on metal: at the speeds asked for, or at the first faster one that gets there; null when none does. */
  readonly metal: (BracketCase & { readonly speedShare: number }) | null;
  /** The smallest factor ÷ what it needs, after one change each; nominal readings. */
  readonly changes: readonly {
    readonly change: BracketChange;
    readonly step: number;
    readonly part: BracketPart;
    readonly factor: number;
    readonly needs: number;
  }[];
  readonly life: readonly BracketLife[];
  readonly notChecked: readonly NotChecked[];
}

export interface BracketsAnswer {
  readonly rig: string;
  readonly setup: string;
  readonly demands: readonly { readonly name: string; readonly speed: number }[];
  /** The load that was thought of; null: those of the ride. */
  readonly force: number | null;
  readonly wanted: number;
  readonly brackets: readonly BracketAnswer[];
  readonly findings: readonly Finding[];
}
