import type { Finding, Remedy } from '../finding/finding.ts';
import { cornerAt, type End } from '../finding/place.ts';
import { cubicValue, monotoneCubic } from '../numerics/monotone-cubic.ts';
import type { Setup } from '../rig/setup.ts';
import { type Column, columnOf, exact, figureOf, figureOfReading } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import { shortOf } from './enough.ts';
import type { Columns } from './result.ts';
import type { SampledColumn, Samples } from './sampled-column.ts';
import { verdictOn } from './verdict.ts';

/** Share of the limit that the worst known hit should use: 85 to 95 %, common practice, no source. */
export const TARGET_SHARE = { low: 0.85, high: 0.95 };

/**
 * What the marks of a test drive say about one end: whether the passes agree, how much of the travel they used, how
 * far the frame gave, and whether full crush would still leave the reserve.
 *
 *     limit = freeBump + crush;    share = furthest pass ÷ limit
 *     flex seen = (contact − furthest pass) − clay;    flex at full crush = flex seen · F(crush) ÷ F(crush seen)
 *     margin = hardTravel − limit − flex at full crush − reserve
 *
 * @validity the clay lay at the body contact that comes first; frame and brackets give in proportion to the force of
 * the stop; the passes were driven in the state of this setup, so only the rig as measured is judged
 * @source rule T21 of SPEC.md; common practice, no source
 */
export function witnessFindings(
  setup: Setup,
  end: End,
  samples: Samples,
  columns: Columns,
  draws: Draws,
): readonly Finding[] {
  const { base, patch } = setup.ends[end];
  const { witness } = base;
  if (!witness || witness.passes.length === 0 || Object.keys(patch).length > 0) return [];
  const [left, right] = [cornerAt(end, 'left'), cornerAt(end, 'right')];
  const corner = columns[left].spare.value <= columns[right].spare.value ? left : right;
  const column = columns[corner];
  const sampled = samples[corner];
  const u = column.spare.tolerance ?? 0;
  const values = witness.passes.map(({ value }) => value);
  const furthest = witness.passes.reduce((a, b) => (b.value > a.value ? b : a));
  const spread = exact('length', Math.max(...values) - Math.min(...values));
  const steady = spread.value <= u;
  const keys = witness.passes.map(({ key }) => key);
  const findings: Finding[] = [
    {
      id: `witness-data-${steady ? 'valid' : 'scattered'}.${end}`,
      code: steady ? 'witness-data-valid' : 'witness-data-scattered',
      severity: steady ? 'fine' : 'note',
      place: end,
      value: spread,
      limit: exact('length', u),
      facts: { spread, uncertainty: exact('length', u), passes: String(values.length) },
      because: keys,
      remedies: steady ? [] : [{ code: 'measure-again', target: `${end}.witness.passes` }],
    },
  ];
  const pass = draws.of(furthest);
  const share = figureOf(
    'ratio',
    columnOf(pass.length, (i) => pass[i] / (sampled.freeBump[i] + sampled.crush[i])),
  );
  const flex = observedFlex(setup, end, sampled, pass, draws);
  const marks = flex ? flexFindings(setup, end, sampled, flex, keys, draws) : [];
  // Clicks are tuning; while the margin is short, or the passes disagree, nothing is tuned.
  const tuned = steady && !marks.some(({ code }) => code === 'witness-margin-short');
  findings.push({
    id: `witness-travel-share.${end}`,
    code: 'witness-travel-share',
    severity: 'note',
    place: end,
    value: share,
    limit: exact('ratio', TARGET_SHARE.high),
    facts: {
      share,
      furthest: figureOfReading(furthest),
      toFullCrush: figureOf(
        'length',
        columnOf(pass.length, (i) => sampled.freeBump[i] + sampled.crush[i]),
      ),
    },
    because: keys,
    remedies: tuned ? clicksFor(share.value) : [],
  });
  return [...findings, ...marks];
}

function clicksFor(share: number): readonly Remedy[] {
  if (share > TARGET_SHARE.high) return [{ code: 'more-compression-damping' }];
  return share < TARGET_SHARE.low ? [{ code: 'softer-compression-damping' }] : [];
}

interface ObservedFlex {
  readonly seen: Column;
  readonly atFullCrush: Column;
}

function observedFlex(
  setup: Setup,
  end: End,
  sampled: SampledColumn,
  pass: Column,
  draws: Draws,
): ObservedFlex | null {
  const { base, stop } = setup.ends[end];
  const clay = base.witness?.clay && draws.of(base.witness.clay);
  const body = sampled.contacts
    .filter(({ kind }) => kind === 'body')
    .reduce<SampledColumn['contacts'][number] | null>(
      (a, b) => (a && a.travel[0] <= b.travel[0] ? a : b),
      null,
    );
  // Where the stop was not touched it did not bend anything.
  if (!clay || !body || pass[0] <= sampled.freeBump[0]) return null;
  const ratio = draws.of(body.ratio);
  const stopRatio = draws.of(base.stopMount.ratio);
  const curve = monotoneCubic(stop.crush, stop.force);
  const seen = columnOf(pass.length, (i) => body.travel[i] - pass[i] - clay[i] / ratio[i]);
  const atFullCrush = columnOf(pass.length, (i) => {
    const force = cubicValue(curve, Math.max(0, pass[i] - sampled.freeBump[i]) * stopRatio[i]);
    const full = cubicValue(curve, sampled.crush[i] * stopRatio[i]);
    return force > 0 ? (seen[i] * full) / force : Number.NaN;
  });
  return { seen, atFullCrush };
}

function flexFindings(
  setup: Setup,
  end: End,
  sampled: SampledColumn,
  { seen, atFullCrush }: ObservedFlex,
  passes: readonly string[],
  draws: Draws,
): readonly Finding[] {
  const { base } = setup.ends[end];
  const flex = figureOf('length', seen);
  const full = figureOf('length', atFullCrush);
  const because = [base.witness?.clay?.key, ...passes].filter((key) => key !== undefined);
  const assumed = figureOfReading(base.flex);
  const findings: Finding[] = [
    {
      id: `witness-flex-observed.${end}`,
      code: 'witness-flex-observed',
      severity: full.value > assumed.value + (assumed.tolerance ?? 0) ? 'unproven' : 'note',
      place: end,
      value: flex,
      limit: assumed,
      facts: { flex, atFullCrush: full, flexEntered: assumed },
      because,
      remedies: [],
    },
  ];
  const reserve = draws.of(setup.rig.limits.reserve);
  const left = columnOf(seen.length, (i) => sampled.clearance[i] - atFullCrush[i]);
  // The flex was seen and not assumed: what is doubtful now is the marks, the clay and how they were carried on.
  const over = figureOf(
    'length',
    columnOf(seen.length, (i) => left[i] - reserve[i]),
  );
  const verdict = verdictOn(over);
  if (verdict === 'pass') return findings;
  findings.push({
    id: `witness-margin-short.${end}`,
    code: 'witness-margin-short',
    severity: over.value < 0 ? 'over' : 'unproven',
    place: end,
    value: figureOf('length', left),
    limit: exact('length', reserve[0]),
    facts: { left: figureOf('length', left), reserve: exact('length', reserve[0]), atFullCrush: full },
    because,
    remedies: [{ code: 'stop-spacer', amount: exact('length', shortOf(over) * base.stopMount.ratio.value) }],
  });
  return findings;
}
