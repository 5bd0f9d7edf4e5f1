import type { Figure } from '../finding/figure.ts';
import type { Finding } from '../finding/finding.ts';
import type { Corner } from '../finding/place.ts';
import type { ContactKind } from '../rig/rig.ts';

/** One line of the contact table: axle travel from ride height to this contact, sorted ascending. */
export interface ContactLine {
  readonly id: string;
  readonly name: string;
  readonly kind: ContactKind;
  /** Travel [m] and its 95 % half-width. */
  readonly travel: Figure;
  /** What must stay free here: flex and reserve for body contacts, own reserve for coil and shock. */
  readonly allowance: Figure;
  /** travel − (free bump + crush) − allowance. */
  readonly spare: Figure;
  /** Probability that this one is touched first. */
  readonly firstShare: number;
}

export type Verdict = 'pass' | 'not-proven' | 'fail';

/** Share of the variance of `spare` that one reading is to blame for. */
export interface Blame {
  readonly key: string;
  /** 0…1; the shares of a corner add to at most 1 (the rest is interaction). */
  readonly share: number;
}

/** One candidate for the end of droop: axle travel down from ride height. */
export interface DroopLine {
  readonly id: 'shock' | 'strap' | 'spring' | 'hose' | 'shaft';
  readonly travel: Figure;
}

/** The travel column of one corner. Every length is axle travel in heave at the stop's station, from ride height. */
export interface TravelColumn {
  readonly corner: Corner;
  readonly hardTravel: Figure;
  readonly freeBump: Figure;
  readonly crush: Figure;
  readonly flex: Figure;
  readonly reserve: Figure;
  /** hardTravel − freeBump − crush. */
  readonly clearance: Figure;
  /** Smallest spare over all contacts. */
  readonly spare: Figure;
  readonly contacts: readonly ContactLine[];
  /** Sorted ascending: the first ends droop. Empty when nothing is known. */
  readonly droop: readonly DroopLine[];
  readonly verdict: Verdict;
  readonly probability: {
    /** That any hard contact is reached at full crush: a body contact with the frame flexed, coil and shock without. */
    readonly metal: number;
    /** That spare is below zero: the verdict's own probability. */
    readonly spareBelowZero: number;
  };
  readonly blame: readonly Blame[];
  /** Height gained against the rig as measured [m]: what the rig is lifted by. */
  readonly lift: Figure;
}

/** A column for each corner. */
export type Columns = Readonly<Record<Corner, TravelColumn>>;

export interface TravelResult {
  readonly setup: string;
  readonly corners: Readonly<Record<Corner, TravelColumn>>;
  readonly findings: readonly Finding[];
  /** Trials of the Monte Carlo and its seed. */
  readonly trials: number;
  readonly seed: number;
}
