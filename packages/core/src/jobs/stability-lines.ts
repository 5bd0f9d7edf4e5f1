import type { Figure } from '../finding/figure.ts';
import type { Finding } from '../finding/finding.ts';
import type { LinkLineId } from '../finding/link-lines.ts';
import { ENDS } from '../finding/place.ts';
import type { StabilityLine, StabilityLineId } from '../stability/result.ts';
import { type RollCentres, rollCentreReading } from '../stability/roll-centre.ts';
import { compareStability, stabilityOf } from '../stability/stability.ts';
import { exact, figureOf } from '../stance/columns.ts';
import type { TrialOptions } from '../stance/draws.ts';
import type { PairedLine } from './knock-on.ts';
import type { SetupLinks } from './setup-links.ts';
import { washboardsOf } from './stability.ts';

/** What of stability stands in the knock-on list. */
const TAKEN: Readonly<Partial<Record<StabilityLineId, LinkLineId>>> = {
  'cg-height': 'cg-height',
  'static-stability-factor': 'static-stability-factor',
  'slope-first-lift': 'slope-first-lift',
  'slope-tips': 'slope-tips',
  'roll-whole': 'roll-stiffness',
  'roll-springs': 'roll-springs',
  'roll-gas': 'roll-gas',
  'roll-bar': 'roll-bar',
  'roll-tyres': 'roll-tyres',
  'roll-gradient': 'roll-gradient',
  'load-transfer-share': 'load-transfer-share',
  'ride-frequency': 'ride-frequency',
  'hop-frequency': 'hop-frequency',
  'damping-compression': 'damping-compression',
  'damping-rebound': 'damping-rebound',
  'flat-ride-ratio': 'flat-ride-ratio',
  'flat-ride-speed': 'flat-ride-speed',
  'washboard-sinks': 'washboard-sinks',
  'washboard-swing': 'washboard-swing',
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
  const washboards = washboardsOf(after.setup.rig);
  if (!before) {
    const alone = stabilityOf(after.setup, { ...options, rollCentres, washboards });
    return {
      lines: alone.lines.flatMap(({ id, place, of, figure }) =>
        lineOf({ id, place, of }, figure, figure, null),
      ),
      findings: alone.findings,
    };
  }
  const both = compareStability(before.setup, after.setup, {
    ...options,
    rollCentres,
    washboards,
    rollCentresBefore: rollCentresFrom(before),
  });
  return {
    lines: both.lines.flatMap(({ id, place, of, before: from, after: to, change }) =>
      lineOf({ id, place, of }, from, to, change),
    ),
    findings: both.after.findings,
  };
}

function lineOf(
  { id, place, of: part }: Pick<StabilityLine, 'id' | 'place' | 'of'>,
  before: Figure | null,
  after: Figure | null,
  change: Figure | null,
): readonly PairedLine[] {
  const of = TAKEN[id];
  // A speed that does not exist for either is no line.
  if (!of || (before === null && after === null)) return [];
  const limit = of === 'static-stability-factor' ? exact('ratio', TIPS_FIRST) : null;
  return [
    {
      of,
      place,
      part,
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
