import { CORNERS, type Corner, ENDS, endOf } from '../finding/place.ts';
import type { Problem } from '../finding/problem.ts';
import type { Setup } from '../rig/setup.ts';
import { drawsOf, NOMINAL_DRAWS, type TrialOptions } from '../stance/draws.ts';
import { movesOf } from '../stance/moves.ts';
import { columnOfCorner, droopLines } from './column.ts';
import { travelFindings } from './findings.ts';
import type { TravelColumn, TravelResult } from './result.ts';
import { type SampledColumn, sampleColumn, sampleEnd } from './sampled-column.ts';
import { stopGapNeeds } from './stop-gap.ts';

/**
 * The travel columns of a setup: what is hit first at each corner, how much is to spare at full crush, how sure that
 * is, what ends droop, and what can be done. The rules are `SPEC.md`.
 *
 * @returns plain data, the same for the same setup, trials and seed
 * @validity heave, at the stop's station; ratios are constant over the travel
 * @failure none: ask `travelNeeds` first; where it names a reading, the figures that rest on it have tolerance null
 * and the verdict is `not-proven`
 */
export function travelOf(setup: Setup, options: TrialOptions = {}): TravelResult {
  const draws = drawsOf(setup.rig, options);
  const samples = {} as Record<Corner, SampledColumn>;
  const corners = {} as Record<Corner, TravelColumn>;
  const ends = { front: sampleEnd(setup, 'front', draws), rear: sampleEnd(setup, 'rear', draws) };
  const droop = { front: droopLines(ends.front), rear: droopLines(ends.rear) };
  for (const corner of CORNERS) {
    const end = endOf(corner);
    samples[corner] = sampleColumn(setup, corner, draws, ends[end]);
    corners[corner] = columnOfCorner(setup, samples[corner], droop[end], draws);
  }
  return {
    setup: setup.id,
    corners,
    findings: travelFindings(setup, ends, samples, corners, draws),
    trials: draws.trials,
    seed: draws.seed,
  };
}

/**
 * Readings that a setup needs before its gap or its height can be worked out: free lengths of stops and springs that
 * are swapped. They are asked for, never assumed.
 */
export function travelNeeds(setup: Setup): readonly Problem[] {
  const needs = ENDS.flatMap((end) => [
    ...movesOf(setup, end, NOMINAL_DRAWS).needs,
    ...stopGapNeeds(setup, end),
  ]);
  return [...new Map(needs.map((problem) => [problem.where.key, problem])).values()];
}
