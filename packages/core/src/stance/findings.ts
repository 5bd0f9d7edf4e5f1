import type { Figure } from '../finding/figure.ts';
import type { Finding } from '../finding/finding.ts';
import { ENDS, type End } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { columnOf, exact, figureOf, figureOfReading } from './columns.ts';
import type { Draws } from './draws.ts';
import { measuredSpringLoad, settledLength } from './springs.ts';
import type { Weights } from './weights.ts';

/** A diagonal that carries more than this much off half is worth a look: common practice, no source. */
const CROSS_SHARE_WORTH_NAMING = 0.01;

/** What the weights and springs say about themselves. */
export function stanceFindings(
  setup: Setup,
  weights: Weights,
  crossShare: Figure,
  draws: Draws,
): readonly Finding[] {
  const findings: Finding[] = [];
  for (const end of ENDS) {
    const finding = lengthFinding(setup, end, draws);
    if (finding) findings.push(finding);
  }
  const off = Math.abs(crossShare.value - 0.5);
  if (off > Math.max(CROSS_SHARE_WORTH_NAMING, crossShare.tolerance ?? 0)) {
    const { corner } = weights;
    const heavier = columnOf(
      draws.trials + 1,
      (i) => (corner.frontLeft[i] + corner.rearRight[i] - corner.frontRight[i] - corner.rearLeft[i]) / 2,
    );
    findings.push({
      id: 'statics-weights-cross.rig',
      code: 'statics-weights-cross',
      severity: 'note',
      place: 'rig',
      value: crossShare,
      limit: exact('ratio', 0.5),
      facts: {
        share: crossShare,
        difference: figureOf(
          'mass',
          heavier.map((mass) => Math.abs(mass)),
        ),
        heavier: crossShare.value > 0.5 ? 'frontLeft, rearRight' : 'frontRight, rearLeft',
      },
      because: Object.values(setup.rig.cornerMass).map((reading) => reading.key),
      remedies: [{ code: 'weigh-again' }],
    });
  }
  return findings;
}

/** Weights, rate and free length say how long the coil should be at ride; the tape says how long it is. */
function lengthFinding(setup: Setup, end: End, draws: Draws): Finding | null {
  const base = setup.rig[end];
  const measured = base.springRideLength;
  const settled = settledLength(base.spring, measuredSpringLoad(setup, end, draws), draws);
  if (!measured || !settled || !base.spring.freeLength) return null;
  const taped = draws.of(measured);
  const difference = figureOf(
    'length',
    columnOf(draws.trials + 1, (i) => taped[i] - settled[i]),
  );
  if (Math.abs(difference.value) <= (difference.tolerance ?? 0)) return null;
  return {
    id: `statics-spring-length-disagrees.${end}`,
    code: 'statics-spring-length-disagrees',
    severity: 'note',
    place: end,
    value: difference,
    limit: exact('length', 0),
    facts: { measured: figureOfReading(measured), settled: figureOf('length', settled), difference },
    because: [measured.key, base.spring.freeLength.key, base.spring.rate.key, base.unsprungMass.key],
    remedies: [{ code: 'measure-again', target: measured.key }, { code: 'weigh-again' }],
  };
}
