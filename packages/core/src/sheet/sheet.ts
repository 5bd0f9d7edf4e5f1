import type { UnitSystem } from '../quantity/quantity.ts';
import type { TravelResult } from '../travel/result.ts';

/**
 * The build sheet as data: what lies on the bench while the work is done. Paper and page lay out the same blocks, so
 * that they cannot differ; figures come from the answers that the screen shows, written by the same functions.
 */
export interface Sheet {
  readonly rig: string;
  /** The setup that is built. */
  readonly setup: string;
  /** The setup that is on the rig now. */
  readonly against: string;
  /** The units that its figures are written in. */
  readonly system: UnitSystem;
  readonly sections: readonly SheetSection[];
}

export const SHEET_SECTIONS = [
  'decision',
  'travel',
  'work',
  'brackets',
  'lines',
  'settings',
  'order',
  'cold',
  'first-drive',
  'card',
  'spares',
  'assumed',
  'cautions',
] as const;
export type SheetSectionId = (typeof SHEET_SECTIONS)[number];

export interface SheetSection {
  readonly id: SheetSectionId;
  readonly title: string;
  readonly blocks: readonly SheetBlock[];
}

export type SheetBlock =
  | SheetWords
  | SheetTable
  | SheetColumns
  /** A heading within a section. */
  | { readonly kind: 'heading'; readonly text: string }
  /** A box to tick when it is done or seen. */
  | { readonly kind: 'tick'; readonly text: string }
  /** A line to write a reading on. */
  | SheetReading;

/** A sentence, or a caution that stands out. */
export interface SheetWords {
  readonly kind: 'say' | 'warn';
  readonly text: string;
}

export interface SheetTable {
  readonly kind: 'table';
  /** The first column names its row. */
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** The travel columns of both setups, to scale: what is drawn, not the drawing. */
export interface SheetColumns {
  readonly kind: 'columns';
  readonly travel: TravelResult;
  readonly against: TravelResult;
}

export interface SheetReading {
  readonly kind: 'reading';
  /** What is read, and where. */
  readonly what: string;
  /** What the model expects, with its interval: so that reality can contradict it. */
  readonly expected: string;
  /** Key of the rig file that the reading is typed into; empty when it only warns. */
  readonly key: string;
}

export const say = (text: string): SheetBlock => ({ kind: 'say', text });
export const warn = (text: string): SheetBlock => ({ kind: 'warn', text });
export const tick = (text: string): SheetBlock => ({ kind: 'tick', text });
export const heading = (text: string): SheetBlock => ({ kind: 'heading', text });
