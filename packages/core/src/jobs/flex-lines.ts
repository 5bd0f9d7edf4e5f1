import type { Finding } from '../finding/finding.ts';
import { cornerAt, ENDS, type End, type Place, type Side } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { type Column, columnOf } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import { articulationFrom } from '../travel/articulation.ts';
import type { Articulation } from '../travel/articulation-result.ts';
import { flexFindings } from '../travel/flex-findings.ts';
import { type SampledFlex, sampleArticulation } from '../travel/sampled-articulation.ts';
import type { LinkColumn } from './link-columns.ts';
import { LINE_RULES } from './links-limits.ts';

/** Room that is left in flex where nobody thinks of it [m] (common practice, no source). */
const EASY = 0.025;

/** How the axles of a setup flex: what is told, its lines, and what they say. */
export interface SetupFlex {
  readonly articulation: Articulation;
  readonly columns: readonly LinkColumn[];
  readonly findings: readonly Finding[];
}

/** One wheel up, the other down: lines of each end, the lesser of both sides, and findings. */
export function setupFlex(setup: Setup, draws: Draws): SetupFlex {
  const sampled = sampleArticulation(setup, draws);
  const articulation = articulationFrom(setup, sampled, draws);
  const { frontLeft, frontRight } = sampled.ramps;
  const ramp = lesser([frontLeft.index, frontRight.index]);
  return {
    articulation,
    columns: [
      ...ENDS.flatMap((end) => endColumns(end, [flexAt(end, 'left'), flexAt(end, 'right')])),
      ...(frontLeft.ends && frontRight.ends
        ? [line('ramp-index', 'rig', ramp, !(frontLeft.known && frontRight.known))]
        : []),
    ],
    findings: flexFindings(setup, sampled, articulation),
  };

  function flexAt(end: End, side: Side): SampledFlex {
    return sampled.flex[cornerAt(end, side)];
  }
}

function endColumns(end: End, sides: readonly SampledFlex[]): readonly LinkColumn[] {
  // What nothing known ends has no figures.
  if (sides.some(({ ends }) => !ends)) return [];
  const unsure = sides.some(({ known }) => !known);
  const clear = sides.flatMap((side) => side.clear.map(({ left }) => left));
  const of = (part: 'roll' | 'bump' | 'droop' | 'lowTyreLoad') => lesser(sides.map((side) => side[part]));
  return [
    ...(clear.length > 0 ? [line('flex-clear', end, lesser(clear), unsure, 0)] : []),
    line('flex-angle', end, of('roll'), unsure),
    line('flex-up', end, of('bump'), unsure),
    line('flex-down', end, of('droop'), unsure),
    line('flex-tyre-load', end, of('lowTyreLoad'), unsure),
  ];
}

/** The least of several, trial by trial. */
const lesser = (columns: readonly Column[]): Column =>
  columnOf(columns[0]?.length ?? 0, (i) => Math.min(...columns.map((column) => column[i])));

const line = (
  of: LinkColumn['of'],
  place: Place,
  values: Column,
  unsure: boolean,
  limit: number | null = null,
): LinkColumn => ({
  of,
  place,
  part: '',
  values,
  limits: limit === null ? null : columnOf(values.length, () => limit),
  scale: EASY,
  limitOf: limit === null ? null : LINE_RULES[of].limitOf,
  unsure,
});
