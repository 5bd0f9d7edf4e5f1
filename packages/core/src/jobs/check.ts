import type { Finding } from '../finding/finding.ts';
import { bad, good, type Result } from '../finding/problem.ts';
import type { Rig } from '../rig/rig.ts';
import { resolveSetup } from '../rig/setup-resolve.ts';
import type { TrialOptions } from '../stance/draws.ts';
import { stanceOf } from '../stance/stance.ts';
import { travelNeeds, travelOf } from '../travel/travel.ts';
import type { CheckResult } from './protocol.ts';

export interface CheckOptions extends TrialOptions {
  /** Name of a setup; the rig as measured is always there. */
  readonly setup: string;
}

/**
 * Statics and travel of one setup of a rig, with all findings, worst first.
 *
 * @failure what `resolveSetup` says; `rig-needs-reading` for a free length without which the setup's gap or height is
 * not known
 */
export function checkRig(rig: Rig, { setup: id, ...options }: CheckOptions): Result<CheckResult> {
  const resolved = resolveSetup(rig, id);
  if (!resolved.ok) return resolved;
  const setup = resolved.value;
  const needs = travelNeeds(setup);
  if (needs.length > 0) return bad(...needs);
  const stance = stanceOf(setup, options);
  const travel = travelOf(setup, options);
  return good({
    rig: rig.name,
    setup: id,
    stance,
    travel,
    findings: worstFirst([...travel.findings, ...stance.findings]),
  });
}

const RANK = { over: 0, unproven: 1, note: 2, fine: 3 } as const;

/** Findings in the order in which they matter; equals stay in the order in which they were made. */
export const worstFirst = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort((a, b) => RANK[a.severity] - RANK[b.severity]);
