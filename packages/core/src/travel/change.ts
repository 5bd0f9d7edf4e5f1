import type { Figure } from '../finding/figure.ts';
import { CORNERS, type Corner } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { type Column, columnOf, figureOf, unsure } from '../stance/columns.ts';
import { drawsOf, type TrialOptions } from '../stance/draws.ts';
import { sampleColumn } from './sampled-column.ts';

/** What one setup has more than another at one corner, after − before [m, axle travel]. */
export interface ColumnChange {
  readonly hardTravel: Figure;
  readonly freeBump: Figure;
  readonly crush: Figure;
  readonly clearance: Figure;
  readonly spare: Figure;
  readonly lift: Figure;
}

/**
 * Differences of two setups of one rig, trial by trial: what both have wrong in common falls out, so a change is
 * known better than either setup.
 *
 * @source JCGM 101:2008, 7; common draws of `stance/draws.ts`
 */
export function travelChange(
  before: Setup,
  after: Setup,
  options: TrialOptions = {},
): Readonly<Record<Corner, ColumnChange>> {
  const draws = drawsOf(after.rig, options);
  const changes = {} as Record<Corner, ColumnChange>;
  for (const corner of CORNERS) {
    const from = sampleColumn(before, corner, draws);
    const to = sampleColumn(after, corner, draws);
    const known = from.needs.length === 0 && to.needs.length === 0;
    const change = (a: Column, b: Column): Figure => {
      const figure = figureOf(
        'length',
        columnOf(a.length, (i) => b[i] - a[i]),
      );
      return known ? figure : unsure(figure);
    };
    changes[corner] = {
      hardTravel: change(from.hard, to.hard),
      freeBump: change(from.freeBump, to.freeBump),
      crush: change(from.crush, to.crush),
      clearance: change(from.clearance, to.clearance),
      spare: change(from.spare, to.spare),
      lift: change(from.moves.height, to.moves.height),
    };
  }
  return changes;
}
