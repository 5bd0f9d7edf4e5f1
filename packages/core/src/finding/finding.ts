import type { FindingCode, RemedyCode } from './codes.ts';
import type { Figure } from './figure.ts';
import type { Place } from './place.ts';

/**
 * How a finding bears on the owner's limits:
 * `over` breaks a limit, `unproven` may break one within the uncertainty, `note` is worth knowing, `fine` is met.
 */
export type Severity = 'over' | 'unproven' | 'note' | 'fine';

/** One thing that can be done, with how much of it and to what. */
export interface Remedy {
  readonly code: RemedyCode;
  readonly amount?: Figure;
  /** Name of the part, contact or reading key that it acts on. */
  readonly target?: string;
}

/** What the model says about the rig: data that terminal, page and paper put into words through one phrase book. */
export interface Finding {
  /** Stable and unique within one result, for example `travel-fail.frontLeft`. */
  readonly id: string;
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly place: Place;
  /** The headline figure and the limit that it is held against. */
  readonly value?: Figure;
  readonly limit?: Figure;
  /** Probability of what the finding warns of, 0…1. */
  readonly likelihood?: number;
  /** Named slots of the sentence. */
  readonly facts: Readonly<Record<string, Figure | string>>;
  /** Keys of the readings that it rests on, most important first. */
  readonly because: readonly string[];
  readonly remedies: readonly Remedy[];
}
