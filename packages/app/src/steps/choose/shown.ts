import type { ChosenSetup } from '@lastinch/core/choose';

/** One candidate that is shown, with the letter under which it goes. */
export interface Shown {
  readonly mark: string;
  readonly of: ChosenSetup;
  readonly isMember: boolean;
  /** Within all that is asked for. */
  readonly isIn: boolean;
}
