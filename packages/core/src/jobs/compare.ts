import type { Finding } from '../finding/finding.ts';
import { CORNERS, type Corner } from '../finding/place.ts';
import { good, type Result } from '../finding/problem.ts';
import type { Rig } from '../rig/rig.ts';
import { resolveSetup } from '../rig/setup-resolve.ts';
import type { TrialOptions } from '../stance/draws.ts';
import { type ColumnChange, travelChange } from '../travel/change.ts';
import type { Verdict } from '../travel/result.ts';
import { checkRig } from './check.ts';
import type { CheckResult } from './protocol.ts';

export interface CompareOptions extends TrialOptions {
  /** The setup that is proposed. */
  readonly setup: string;
  /** The setup that it is held against. */
  readonly against: string;
}

/** What changes at one corner. */
export interface CornerChange extends ColumnChange {
  readonly verdict: { readonly before: Verdict; readonly after: Verdict };
  /** Name of the contact that comes first. */
  readonly first: { readonly before: string; readonly after: string };
}

/** Two setups of one rig and what lies between them. */
export interface CheckComparison {
  readonly before: CheckResult;
  readonly after: CheckResult;
  readonly corners: Readonly<Record<Corner, CornerChange>>;
  /** Findings that only one of the two has, by id; `fine` ones are left out. */
  readonly gone: readonly Finding[];
  readonly come: readonly Finding[];
}

/**
 * Checks two setups of a rig and says what changes at each corner, each change with its own tolerance.
 *
 * @failure what `checkRig` says of either setup
 */
export function compareSetups(
  rig: Rig,
  { setup, against, ...options }: CompareOptions,
): Result<CheckComparison> {
  const before = checkRig(rig, { setup: against, ...options });
  if (!before.ok) return before;
  const after = checkRig(rig, { setup, ...options });
  if (!after.ok) return after;
  const [from, to] = [resolveSetup(rig, against), resolveSetup(rig, setup)];
  if (!from.ok) return from;
  if (!to.ok) return to;
  const changes = travelChange(from.value, to.value, options);
  const corners = {} as Record<Corner, CornerChange>;
  for (const corner of CORNERS) {
    const [a, b] = [before.value.travel.corners[corner], after.value.travel.corners[corner]];
    corners[corner] = {
      ...changes[corner],
      verdict: { before: a.verdict, after: b.verdict },
      first: { before: a.contacts[0].name, after: b.contacts[0].name },
    };
  }
  return good({
    before: before.value,
    after: after.value,
    corners,
    gone: onlyIn(before.value, after.value),
    come: onlyIn(after.value, before.value),
  });
}

function onlyIn(one: CheckResult, other: CheckResult): readonly Finding[] {
  const ids = new Set(other.findings.map(({ id }) => id));
  return one.findings.filter(({ id, severity }) => severity !== 'fine' && !ids.has(id));
}
