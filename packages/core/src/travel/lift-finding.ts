import type { Finding, Remedy } from '../finding/finding.ts';
import { endOf, type Place } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { exact } from '../stance/columns.ts';
import { NOMINAL_DRAWS } from '../stance/draws.ts';
import type { TravelColumn } from './result.ts';
import { sampleColumn } from './sampled-column.ts';

/** A lift of which less than this share arrives as spare has bought free gap, not safety. */
const BOUGHT = 0.25;

/**
 * Says so when a setup lifts the rig on its springs, does not pass, and has hardly more to spare than before: the
 * lift opens the stop's gap as far as it opens the metal's.
 *
 * @source rules T1 and T3 of SPEC.md
 */
export function liftFinding(
  setup: Setup,
  column: TravelColumn,
  place: Place,
  remedies: readonly Remedy[],
): Finding | null {
  const end = endOf(column.corner);
  const { base, patch } = setup.ends[end];
  if (column.verdict === 'pass' || !(patch.springSpacer || patch.spring)) return null;
  const now = sampleColumn(setup, column.corner, NOMINAL_DRAWS);
  const lift = now.moves.springLift[0];
  if (!(lift > 0)) return null;
  const asMeasured: Setup = {
    ...setup,
    ends: {
      ...setup.ends,
      [end]: {
        base,
        patch: {},
        spring: base.spring,
        stop: base.stop,
        shockSetting: setup.ends[end].shockSetting,
      },
    },
  };
  const before = sampleColumn(asMeasured, column.corner, NOMINAL_DRAWS);
  const gained = now.spare[0] - before.spare[0];
  if (gained >= BOUGHT * lift) return null;
  return {
    id: `lift-buys-no-safety.${place}`,
    code: 'lift-buys-no-safety',
    severity: column.verdict === 'fail' ? 'over' : 'unproven',
    place,
    value: column.spare,
    limit: exact('length', column.spare.tolerance ?? 0),
    facts: {
      lift: exact('length', lift),
      spareBefore: exact('length', before.spare[0]),
      spare: column.spare,
      spareGained: exact('length', gained),
      freeBumpGained: exact('length', now.freeBump[0] - before.freeBump[0]),
    },
    because: [patch.springSpacer?.key, setup.ends[end].spring.rate.key].filter((key) => key !== undefined),
    remedies: remedies.filter(
      ({ code }) => code === 'stop-spacer' || code === 'notch-contact' || code === 'longer-coil',
    ),
  };
}
