import { CORNERS, type Corner, ENDS } from '../finding/place.ts';
import type { Problem } from '../finding/problem.ts';
import type { Setup } from '../rig/setup.ts';
import { drawsOf, type TrialOptions } from '../stance/draws.ts';
import { columnOfCorner } from './column.ts';
import { travelFindings } from './findings.ts';
import { movesOf } from './moves.ts';
import type { TravelColumn, TravelResult } from './result.ts';
import { type SampledColumn, sampleColumn } from './sampled-column.ts';
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
  for (const corner of CORNERS) {
    samples[corner] = sampleColumn(setup, corner, draws);
    corners[corner] = columnOfCorner(setup, samples[corner], draws);
  }
  return {
    setup: setup.id,
    corners,
    findings: travelFindings(setup, samples, corners, draws),
    trials: draws.trials,
    seed: draws.seed,
  };
}

/**
 * Readings that a setup needs before its gap or its height can be worked out: free lengths of stops and springs that
 * are swapped. They are asked for, never assumed.
 */
export function travelNeeds(setup: Setup): readonly Problem[] {
  const draws = drawsOf(setup.rig);
  const needs = ENDS.flatMap((end) => [...movesOf(setup, end, draws).needs, ...stopGapNeeds(setup, end)]);
  return [...new Map(needs.map((problem) => [problem.where.key, problem])).values()];
}
