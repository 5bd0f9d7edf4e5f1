import type { Finding } from '../finding/finding.ts';
import { cornerAt, ENDS, SIDES } from '../finding/place.ts';
import type { Reading } from '../rig/reading.ts';
import { readingsOf } from '../rig/readings.ts';
import type { Setup } from '../rig/setup.ts';
import { exact } from '../stance/columns.ts';
import type { Columns } from './result.ts';

/** Share of the uncertainty from which on an assumption is worth replacing by a reading. */
const MATTERS = 0.15;

/**
 * Assumptions that a verdict hangs on: readings that nobody took, or whose tolerance nobody typed, which make a good
 * part of the uncertainty of a corner that does not pass. One finding a reading.
 */
export function assumptionFindings(setup: Setup, columns: Columns): readonly Finding[] {
  const findings = new Map<string, Finding>();
  let readings: Map<string, Reading> | null = null;
  for (const end of ENDS)
    for (const side of SIDES) {
      const { verdict, blame } = columns[cornerAt(end, side)];
      if (verdict === 'pass') continue;
      readings ??= new Map(readingsOf(setup).map((reading) => [reading.key, reading]));
      for (const { key, share } of blame) {
        const reading = readings.get(key);
        if (!reading || share < MATTERS) continue;
        const filled =
          reading.origin === 'assumed' ? 'value' : reading.toleranceOrigin === 'assumed' ? 'tolerance' : null;
        const known = findings.get(key)?.facts.share;
        if (!filled || (typeof known === 'object' && known.value >= share)) continue;
        findings.set(key, {
          id: `assumption-matters.${key}`,
          code: 'assumption-matters',
          severity: 'note',
          place: end,
          value: exact('ratio', share),
          facts: { reading: key, what: filled, share: exact('ratio', share) },
          because: [key],
          remedies: [{ code: 'measure-again', target: key }],
        });
      }
    }
  return [...findings.values()];
}
