import {
  type CheckComparison,
  type CheckResult,
  CORNERS,
  type Corner,
  type Rig,
  type TravelColumn,
  type UnitSystem,
  type Verdict,
} from '@lastinch/core';
import { assumptionsJson, figureJson, findingJson } from './figure-json.ts';

/** What two setups are compared by. */
const COMPARED = ['hardTravel', 'freeBump', 'crush', 'clearance', 'spare', 'lift'] as const;

/** The answer of `check --json`: `lastinch/check/1`. Lengths in metres; keys may be added, none changes its meaning. */
export function checkJson(
  rig: Rig,
  result: CheckResult,
  comparison: CheckComparison | null,
  system: UnitSystem,
) {
  return {
    schema: 'lastinch/check/1',
    units: 'SI',
    rig: result.rig,
    setup: result.setup,
    verdict: worstVerdict(result),
    probability: { metal: Math.max(...CORNERS.map((at) => result.travel.corners[at].probability.metal)) },
    corners: cornersOf(result, columnJson),
    stance: stanceJson(result),
    findings: result.findings.map((finding) => findingJson(finding, system)),
    assumptions: assumptionsJson(rig),
    sampling: { trials: result.travel.trials, seed: result.travel.seed },
    ...(comparison === null
      ? {}
      : {
          against: {
            setup: comparison.before.setup,
            verdict: worstVerdict(comparison.before),
            corners: cornersOf(comparison.before, columnJson),
            stance: stanceJson(comparison.before),
            findings: comparison.before.findings.map((finding) => findingJson(finding, system)),
          },
          differences: differencesJson(comparison),
        }),
  };
}

const ORDER: readonly Verdict[] = ['pass', 'not-proven', 'fail'];

const worstVerdict = (result: CheckResult): Verdict =>
  CORNERS.map((at) => result.travel.corners[at].verdict).reduce((worst, one) =>
    ORDER.indexOf(one) > ORDER.indexOf(worst) ? one : worst,
  );

const cornersOf = <T>(result: CheckResult, of: (column: TravelColumn) => T): Record<Corner, T> =>
  Object.fromEntries(CORNERS.map((at) => [at, of(result.travel.corners[at])])) as Record<Corner, T>;

const columnJson = (column: TravelColumn) => ({
  hardTravel: figureJson(column.hardTravel),
  freeBump: figureJson(column.freeBump),
  crush: figureJson(column.crush),
  flex: figureJson(column.flex),
  reserve: figureJson(column.reserve),
  clearance: figureJson(column.clearance),
  spare: figureJson(column.spare),
  lift: figureJson(column.lift),
  contacts: column.contacts.map((contact) => ({
    id: contact.id,
    name: contact.name,
    kind: contact.kind,
    travel: contact.travel.value,
    tolerance: contact.travel.tolerance,
    allowance: figureJson(contact.allowance),
    spare: figureJson(contact.spare),
    firstShare: contact.firstShare,
  })),
  droop: column.droop.map(({ id, travel }) => ({ id, travel: travel.value, tolerance: travel.tolerance })),
  verdict: column.verdict,
  probability: column.probability,
  blame: column.blame,
});

const stanceJson = ({ stance: { findings: _, setup: __, ...figures } }: CheckResult) =>
  withoutDimensions(figures);

/** Figures as SI value and tolerance all the way down; in JSON the key says what they are. */
function withoutDimensions(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if ('dimension' in value && 'value' in value && 'tolerance' in value)
    return { value: value.value, tolerance: value.tolerance };
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, withoutDimensions(part)]));
}

/**
 * This setup minus the one it is held against. What both have wrong in common falls out, so a difference is known
 * better than either side of it.
 */
const differencesJson = (comparison: CheckComparison) =>
  Object.fromEntries(
    CORNERS.map((at) => [
      at,
      Object.fromEntries(COMPARED.map((name) => [name, figureJson(comparison.corners[at][name])])),
    ]),
  );
