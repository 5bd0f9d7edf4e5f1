import type { Candidate } from '../choose/space.ts';
import type { RideModel } from '../ride/model.ts';
import type { Choices, DrivenCourse } from '../rig/choices.ts';
import type { Setup } from '../rig/setup.ts';
import type { Draws } from '../stance/draws.ts';
import type { ChoiceGrounds, Pass } from './choose-drive.ts';
import type { Want } from './choose-objectives.ts';
import type { Change, TrimPatch } from './choose-patch.ts';
import type { ChoiceTable } from './choose-table.ts';

/** What a candidate is known to be without driving it. */
export interface Known {
  readonly changes: readonly Change[];
  /** Of the end that stands higher, above the rig as measured: nominal, then one a trial [m]. */
  readonly lift: Float64Array;
  readonly price: number;
  /** [h] */
  readonly hours: number;
}

/** All that a candidate on its way needs of its judge. */
export interface WaysOfJudging {
  readonly choices: Choices;
  readonly table: ChoiceTable;
  readonly draws: Draws;
  readonly grounds: ChoiceGrounds;
  readonly wants: readonly Want[];
  /** Time on all courses of a day [s]: of those without a distance once over, at the nominal readings of the rig. */
  readonly daySeconds: number;
  know(candidate: Candidate): Known;
  setupOf(changes: readonly Change[], settings: TrimPatch): Setup;
  /** Drives a candidate in a trim over one of the courses, in one trial. */
  pass(
    driven: { readonly setup: Setup; readonly modelOf: (trial: number) => RideModel },
    one: DrivenCourse,
    trial: number,
  ): Pass;
  /** No middle comes out below these: the least of what is not known is zero, the fastest the end of the range. */
  atLeast(known: Known, driven: Partial<Record<Want, number>>): number[];
  /** Hoses, shafts and pads that the changes break; the present ones may be as they are. Settings reach none of them. */
  brokenLimits(changes: readonly Change[]): readonly string[];
}
