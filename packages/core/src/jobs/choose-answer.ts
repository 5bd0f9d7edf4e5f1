import type { Spread } from '../choose/objectives.ts';
import type { WhyEnded } from '../choose/search.ts';
import type { Figure } from '../finding/figure.ts';
import type { Corner, End } from '../finding/place.ts';
import type { HardChoice } from '../rig/choice-names.ts';
import type { Trim } from '../rig/choices.ts';
import type { SetupPatch } from '../rig/setup-patch.ts';
import type { Verdict } from '../travel/result.ts';
import type { Fastest } from './choose-fastest.ts';
import type { Want } from './choose-objectives.ts';

/** Something that a candidate bolts on, cuts or sets in length. */
export interface ChosenChange {
  /** `front.stop`, `front.notch.sump`: as `keep` of a rig file names it. */
  readonly id: string;
  readonly end: End;
  readonly of: HardChoice | 'notch';
  /** Name of the part; empty where a length is set. */
  readonly part: string;
  /** Contact that is notched; empty for all others. */
  readonly contact: string;
  readonly size: Figure | null;
  readonly price: number;
  /** [h] */
  readonly hours: number;
}

/** One course at the nominal readings. */
export interface ChosenRide {
  readonly course: string;
  /** [m/s] */
  readonly speed: number;
  /** Time on such ground in a day [s]. */
  readonly seconds: number;
  /** Gap to metal less flex allowance and reserve at its least [m], and where. */
  readonly spare: number;
  readonly corner: Corner;
  /** Root mean square of the seat's vertical acceleration, and the largest of the body, above rest [m/s²]. */
  readonly shaking: number;
  readonly body: number;
}

/** What is set by hand; settings that stay as they are in the setup that was started from are left out. */
export interface ChosenSetting {
  readonly end: End;
  readonly of: 'shockSetting' | 'tyrePressure' | 'antiRollBar';
  /** Name of the shock setting, `on` or `off`; empty for a pressure. */
  readonly name: string;
  readonly pressure: Figure | null;
}

/** A candidate in one trim. */
export interface ChosenTrim {
  readonly trim: Trim;
  readonly settings: readonly ChosenSetting[];
  /** The whole setup, under a name under which it may be put into the rig file. */
  readonly patch: SetupPatch;
  readonly rides: readonly ChosenRide[];
  /** Of the travel column at full crush, the worst corner. */
  readonly column: { readonly corner: Corner; readonly spare: Figure; readonly verdict: Verdict };
}

/** A candidate that was judged in full. */
export interface ChosenSetup {
  /** Its number among all candidates. */
  readonly index: number;
  readonly changes: readonly ChosenChange[];
  /** Whether its settings are the best for each trim, or as they are. */
  readonly settings: 'best' | 'as-they-are';
  readonly trims: readonly ChosenTrim[];
  /** What it is judged by, with the 95 % interval of each; a speed is one here: more is better. */
  readonly wants: Readonly<Partial<Record<Want, Spread>>>;
  readonly fastest: Fastest | null;
  readonly isOnFront: boolean;
}

export interface ChosenMember extends ChosenSetup {
  /** Others that come out alike in all that is wanted; this one changes least. By number. */
  readonly alike: readonly number[];
  readonly why: MemberWhy;
}

/** Why a member stands: one of these at least. Amounts are above zero, in SI, money or hours. */
export type WhyReason =
  /** Nobody is better in it; the next is so much worse, null when all others are alike. */
  | { readonly code: 'best'; readonly want: Want; readonly next: number | null }
  /** Nobody with as little of `within` or less is better in `want`. */
  | { readonly code: 'best-within'; readonly want: Want; readonly within: Want }
  /** Its farthest lag behind the best, as a share of what the members span, is the smallest of all. */
  | { readonly code: 'most-even'; readonly lag: number }
  /** One thing alone keeps it: `rival` is nowhere worse but there, by a share of what the members span. */
  | { readonly code: 'kept-by'; readonly want: Want; readonly rival: number; readonly by: number }
  /** No other is better in anything. */
  | { readonly code: 'alone' }
  | { readonly code: 'between' };

/** One thing in which two candidates differ. */
export interface WhyDifference {
  readonly want: Want;
  /** How far apart they are at the middles. */
  readonly by: number;
  /** Trials in which it is so, and in which it is the other way round. */
  readonly so: number;
  readonly notSo: number;
}

/** What a member beats another candidate in, and what it gives up. */
export interface WhyComparison {
  /** The other, by number. */
  readonly with: number;
  readonly better: readonly WhyDifference[];
  readonly worse: readonly WhyDifference[];
  readonly trials: number;
}

export interface MemberWhy {
  readonly reasons: readonly WhyReason[];
  /** In what it is farthest behind the best: by how much, and as a share of what the members span. */
  readonly limited: { readonly want: Want; readonly behind: number; readonly lag: number } | null;
  /** Against doing nothing and only setting, where they were judged; then the members that stand nearest. */
  readonly against: readonly WhyComparison[];
  readonly neighbours: readonly WhyComparison[];
  /** Trials in which no other member beats it. */
  readonly held: number;
  readonly trials: number;
  /** Readings that decide nearly alone whether it stays, the most telling first; few trials can tell few. */
  readonly deciding: readonly { readonly key: string; readonly share: number }[];
}

/** What became of all candidates. */
export interface ChooseTally {
  readonly candidates: number;
  readonly seen: number;
  readonly judged: number;
  /** Beaten by one that was judged, by what was known of them after each stage. */
  readonly discarded: readonly { readonly stage: string; readonly candidates: number }[];
  readonly barred: number;
  /** By constraint: how many break it, and how many break nothing else. */
  readonly barredBy: readonly {
    readonly constraint: string;
    readonly candidates: number;
    readonly alone: number;
  }[];
}

/** The best few setups, and why. Plain data. */
export interface ChooseAnswer {
  readonly rig: string;
  /** Setup that was started from. */
  readonly from: string;
  readonly money: string;
  readonly trials: number;
  readonly seed: number;
  readonly wants: readonly Want[];
  /** Nobody beats them in all that is wanted; by lift, then harshness and so on. */
  readonly members: readonly ChosenMember[];
  /** Null where it breaks a constraint itself. */
  readonly doNothing: ChosenSetup | null;
  /** Null also where there is no setting to choose. */
  readonly onlySettings: ChosenSetup | null;
  /** Each hard change alone, with the best settings; those that break a constraint are missing. */
  readonly singles: readonly ChosenSetup[];
  readonly tally: ChooseTally;
  readonly why: WhyEnded;
}
