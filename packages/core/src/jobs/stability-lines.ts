import type { Figure } from '../finding/figure.ts';
import type { Finding } from '../finding/finding.ts';
import type { LinkLineId } from '../finding/link-lines.ts';
import { ENDS } from '../finding/place.ts';
import type { StabilityLineId, StabilityResult } from '../stability/result.ts';
import { type RollCentres, rollCentreReading } from '../stability/roll-centre.ts';
import { compareStability, stabilityOf } from '../stability/stability.ts';
import { exact, figureOf } from '../stance/columns.ts';
import type { TrialOptions } from '../stance/draws.ts';
import type { PairedLine } from './knock-on.ts';
import type { SetupLinks } from './setup-links.ts';

/** What of stability stands in the knock-on list. */
const TAKEN: Readonly<Partial<Record<StabilityLineId, LinkLineId>>> = {
  'cg-height': 'cg-height',
  'static-stability-factor': 'static-stability-factor',
  'roll-whole': 'roll-stiffness',
  'roll-gradient': 'roll-gradient',
  'slope-first-lift': 'slope-first-lift',
  'ride-frequency': 'ride-frequency',
};
/** Below one a rig tips on ground on which it would else slide; 1.2 is where nobody thinks of it (common practice). */
const TIPS_FIRST = 1;
const EASY = 0.2;
/** Half-width of a roll centre when links do not tell it [m]; the room of stability has the value. */
const ROUGH = 0.1;

export interface StabilityLines {
  readonly lines: readonly PairedLine[];
  readonly findings: readonly Finding[];
}

/** Stability of both setups, with roll centres from links where they were measured. */
export function stabilityLines(
  before: SetupLinks | null,
  after: SetupLinks,
  options: TrialOptions & { readonly roadSpeed: number },
): StabilityLines {
  const rollCentres = rollCentresFrom(after);
  if (!before) {
    const alone = stabilityOf(after.setup, { ...options, rollCentres });
    return {
      lines: alone.lines.flatMap(({ id, place, figure }) => lineOf(id, place, figure, figure, null)),
      findings: taken(alone),
    };
  }
  const both = compareStability(before.setup, after.setup, {
    ...options,
    rollCentres,
    rollCentresBefore: rollCentresFrom(before),
  });
  return {
    lines: both.lines.flatMap(({ id, place, before: from, after: to, change }) =>
      lineOf(id, place, from, to, change),
    ),
    findings: taken(both.after),
  };
}

const taken = ({ findings }: StabilityResult): readonly Finding[] =>
  findings.filter(({ code }) => code === 'stability-factor');

function lineOf(
  id: StabilityLineId,
  place: PairedLine['place'],
  before: Figure | null,
  after: Figure | null,
  change: Figure | null,
): readonly PairedLine[] {
  const of = TAKEN[id];
  if (!of) return [];
  const limit = of === 'static-stability-factor' ? exact('ratio', TIPS_FIRST) : null;
  return [
    {
      of,
      place,
      part: '',
      before,
      after,
      change,
      limit,
      limitOf: limit && 'practice',
      room: limit && after && { ...after, value: after.value - limit.value },
      scale: EASY,
    },
  ];
}

function rollCentresFrom({ columns }: SetupLinks): Partial<RollCentres> {
  return Object.fromEntries(
    ENDS.flatMap((end) => {
      const column = columns.find(({ of, place }) => of === 'roll-centre' && place === end);
      if (!column || !Number.isFinite(column.values[0])) return [];
      const { value, tolerance } = figureOf('length', column.values);
      const half = tolerance !== null && Number.isFinite(tolerance) ? tolerance : ROUGH;
      return [[end, rollCentreReading(end, value, half, 'measured')]];
    }),
  );
}
