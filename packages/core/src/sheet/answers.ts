import type { Figure } from '../finding/figure.ts';
import type { BracketsAnswer } from '../jobs/bracket-answer.ts';
import type { CheckComparison } from '../jobs/compare.ts';
import type { LinksAnswer } from '../jobs/links-answer.ts';
import type { RideAnswer } from '../jobs/protocol.ts';
import { formatFigure } from '../quantity/format.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import type { Setup } from '../rig/setup.ts';

/** Whole answers that a build sheet is written from: the same that screen and terminal show. */
export interface SheetAnswers {
  /** What is built, and what is on the rig now. */
  readonly setup: Setup;
  readonly against: Setup;
  readonly comparison: CheckComparison;
  readonly links: LinksAnswer;
  /** Rides of the setup that is built, course by course. */
  readonly rides: readonly RideAnswer[];
  /** Null where the rig file tells of none. */
  readonly brackets: BracketsAnswer | null;
  readonly system: UnitSystem;
}

/** A figure in the units of the sheet, with its tolerance. */
export const written = (figure: Figure, { system }: Pick<SheetAnswers, 'system'>): string =>
  formatFigure(figure, { system });
