import { good, type Result } from '../finding/problem.ts';
import type { Rig } from '../rig/rig.ts';
import { resolveSetup } from '../rig/setup-resolve.ts';
import type { NamedWashboard } from '../stability/lines.ts';
import type { StabilityComparison, StabilityResult } from '../stability/result.ts';
import type { RollCentres } from '../stability/roll-centre.ts';
import {
  compareStability,
  type StabilityOptions,
  stabilityOf,
  USUAL_WASHBOARD,
} from '../stability/stability.ts';
import type { TrialOptions } from '../stance/draws.ts';
import { travelNeeds } from '../travel/travel.ts';
import { worstFirst } from './check.ts';

export interface StabilityRequest extends TrialOptions {
  /** Name of a setup, for example the road trim. */
  readonly setup: string;
  /** Another one that it is held against, for example the trail trim; left out: none. */
  readonly against?: string;
  /** At which a flat ride is wanted [m/s]. */
  readonly roadSpeed?: number;
  /** Roll centres of each setup where links were measured. */
  readonly rollCentres?: Partial<RollCentres>;
  readonly rollCentresAgainst?: Partial<RollCentres>;
}

export interface StabilityAnswer {
  readonly rig: string;
  /** Of `setup`, its findings worst first. */
  readonly stability: StabilityResult;
  /** `against` before, `setup` after; null when it was not asked. */
  readonly comparison: StabilityComparison | null;
}

/**
 * Stability and road manners of a setup, alone or beside another, over the washboards of the rig or else the usual one.
 *
 * @failure what `resolveSetup` says; `rig-needs-reading` for a length without which a setup's height is not known
 */
export function stabilityRig(rig: Rig, request: StabilityRequest): Result<StabilityAnswer> {
  const { setup: id, against, rollCentresAgainst, ...rest } = request;
  const options: StabilityOptions = { ...rest, washboards: washboardsOf(rig) };
  const setup = resolveSetup(rig, id);
  if (!setup.ok) return setup;
  const needs = travelNeeds(setup.value);
  if (needs.length > 0) return { ok: false, problems: needs };
  if (against === undefined)
    return good({ rig: rig.name, stability: sorted(stabilityOf(setup.value, options)), comparison: null });
  const other = resolveSetup(rig, against);
  if (!other.ok) return other;
  const missing = travelNeeds(other.value);
  if (missing.length > 0) return { ok: false, problems: missing };
  const comparison = compareStability(other.value, setup.value, {
    ...options,
    ...(rollCentresAgainst && { rollCentresBefore: rollCentresAgainst }),
  });
  return good({ rig: rig.name, stability: sorted(comparison.after), comparison });
}

const sorted = (result: StabilityResult): StabilityResult => ({
  ...result,
  findings: worstFirst(result.findings),
});

/** Washboards among the courses of a rig, at the speed that its owner gave or the usual one. */
export function washboardsOf(rig: Rig): readonly NamedWashboard[] {
  const own = Object.values(rig.courses).flatMap(({ id, shape, speed }): readonly NamedWashboard[] =>
    shape.kind === 'washboard'
      ? [{ name: id, spacing: shape.spacing, height: shape.height, speed: speed ?? USUAL_WASHBOARD.speed }]
      : [],
  );
  return own.length > 0 ? own : [USUAL_WASHBOARD];
}
