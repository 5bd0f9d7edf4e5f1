import { BRACKET_CHANGES, CHANGE_STEPS, changed } from '../bracket/changes.ts';
import { type BracketCheck, type BracketLoad, bentBy, bracketChecks } from '../bracket/checks.ts';
import { crackShare, FATIGUE_FACTOR } from '../bracket/fatigue.ts';
import { loadFactor } from '../bracket/load-factor.ts';
import { type BracketMeasures, measuresOf } from '../bracket/measures.ts';
import { ENDS } from '../finding/place.ts';
import { bad, good, type Result } from '../finding/problem.ts';
import { rideModels } from '../ride/from-setup.ts';
import { MOUNT_NAMES } from '../rig/bracket.ts';
import { nominal } from '../rig/reading.ts';
import { resolveSetup } from '../rig/setup-resolve.ts';
import { travelNeeds } from '../travel/travel.ts';
import type {
  BracketAnswer,
  BracketCase,
  BracketLife,
  BracketLine,
  BracketRequest,
  BracketsAnswer,
} from './bracket-answer.ts';
import { bracketFindings } from './bracket-findings.ts';
import { type Hit, type MountLoad, mountLoads } from './bracket-loads.ts';
import { notCheckedOf } from './bracket-not-checked.ts';
import { drawsToDrive, speedProblem } from './driving.ts';
import { FeltGrounds } from './felt-ground.ts';
import { leanOf } from './mount-lean.ts';

/** Rigs over the measurement tolerances that a bracket is loaded by, beside the nominal one. */
export const BRACKET_TRIALS = 12;
/** How much faster is tried until metal is met. */
const FASTER = [1, 1.1, 1.2, 1.35, 1.5, 1.75, 2] as const;
/** What hangs on a bracket and swings with it [kg]: common practice, no source. */
const SWINGS = 3;

/**
 * Whether the brackets of a setup hold: loads from the ride, each part by its formula, the case of metal apart, cracks by
 * rainflow and Miner, what one change each would give, and what was not checked.
 *
 * @param onProgress – share of the work done, 0…1, never falling
 * @failure as `rideRig`; `bracket-missing` when the rig file tells of none
 */
export function checkBrackets(
  request: BracketRequest,
  onProgress?: (share: number) => void,
): Result<BracketsAnswer> {
  const { rig, demands, trials, seed } = request;
  const problems = demands.flatMap(({ speed }) => speedProblem(speed));
  if (problems.length > 0) return bad(...problems);
  const resolved = resolveSetup(rig, request.setup);
  if (!resolved.ok) return resolved;
  const setup = resolved.value;
  const needs = travelNeeds(setup);
  if (needs.length > 0) return bad(...needs);
  const mounts = ENDS.flatMap((end) =>
    MOUNT_NAMES.flatMap((mount) => {
      const bracket = rig[end].brackets[mount];
      return bracket ? [{ end, mount, bracket }] : [];
    }),
  );
  if (mounts.length === 0)
    return bad({
      code: 'bracket-missing',
      where: { key: 'front.bracket' },
      found: 'none',
      accepted: 'front.bracket.stop with kind, standoff and section, or one of another mount or end',
    });
  const draws = drawsToDrive(rig, { trials, seed });
  const grounds = new FeltGrounds();
  const loadsOf = (): ((trial: number) => readonly MountLoad[]) => {
    if (request.force !== null) {
      const hit = { demand: '', force: request.force, lasted: Number.POSITIVE_INFINITY };
      const thought = mounts.map(() => ({
        peak: hit,
        metal: null,
        passes: [],
        isPastTable: false,
        isFinished: true,
      }));
      return () => thought;
    }
    const modelOf = rideModels(setup, draws);
    return (trial) => mountLoads(modelOf(trial), { setup, mounts, demands, grounds, counts: trial === 0 });
  };
  const driven = loadsOf();
  const all: (readonly MountLoad[])[] = [];
  for (let trial = 0; trial <= trials; trial += 1) {
    all.push(driven(trial));
    onProgress?.((0.8 * (trial + 1)) / (trials + 1));
  }
  const faster = request.force === null ? metalSought() : mounts.map(() => null);
  onProgress?.(1);

  /** For each stop that never met metal: the first faster try that does. */
  function metalSought(): readonly ({ readonly hit: Hit; readonly speedShare: number } | null)[] {
    const model = rideModels(setup, draws)(0);
    const found = mounts.map((_, k) => {
      const hit = all[0][k].metal;
      return hit ? { hit, speedShare: 1 } : null;
    });
    for (const speedShare of FASTER.slice(1)) {
      const open = mounts.flatMap((one, k) => (one.mount === 'stop' && !found[k] ? [{ one, k }] : []));
      if (open.length === 0) break;
      const asked = { setup, mounts: open.map(({ one }) => one), demands, grounds, counts: false };
      const loads = mountLoads(model, { ...asked, share: speedShare });
      for (const [i, { k }] of open.entries()) {
        const hit = loads[i].metal;
        if (hit) found[k] = { hit, speedShare };
      }
    }
    return found;
  }

  const wanted = rig.limits.bracketFactor?.value ?? 1;
  const answers = mounts.map(({ end, mount, bracket }, k): BracketAnswer => {
    const lean = request.force === null ? leanOf(setup, end, mount, nominal) : null;
    const measures = measuresOf(bracket, nominal);
    const inTrials = all.map((loads, trial) => ({
      measures: measuresOf(bracket, draws.trial(trial)),
      load: loads[k],
    }));
    const caseOf = (hitIn: (load: MountLoad) => Hit): BracketCase => {
      const hit = hitIn(inTrials[0].load);
      const swing = request.force === null ? swingOf(measures, hit) : 1;
      const loadBy = (force: number): BracketLoad => ({
        force: force * swing,
        sideways: force * swing * Math.sin(lean ?? 0),
      });
      const uses = inTrials.map((one) => checksUnder(one.measures, loadBy(hitIn(one.load).force)));
      const isKnown = trials >= 2 && inTrials.every(({ load }) => load.isFinished);
      const spread = (of: (trial: number) => number): number | null =>
        isKnown ? 2 * Math.sqrt(mean(uses.slice(1).map((_, t) => (of(t + 1) - of(0)) ** 2))) : null;
      return {
        hit,
        swing,
        load: loadBy(hit.force),
        force: {
          dimension: 'force',
          value: hit.force,
          tolerance: request.force === null ? spread((t) => hitIn(inTrials[t].load).force) : 0,
        },
        lines: uses[0]
          .map((check, i) =>
            lineOf(
              check,
              wanted,
              spread((t) => 1 / uses[t][i].factor),
            ),
          )
          .sort((a, b) => a.factor.value / a.needs - b.factor.value / b.needs),
      };
    };
    const ride = caseOf((load) => load.peak);
    const met = faster[k];
    const metal = met ? { ...caseOf(() => met.hit), speedShare: met.speedShare } : null;
    return {
      end,
      mount,
      kind: bracket.kind,
      lean,
      ride,
      metal,
      changes: changesOf(measures, ride.load, wanted),
      // What yields at the first hit has no life to count.
      life: ride.lines.some(({ factor }) => factor.value < 1) ? [] : livesOf(measures, all[0][k], ride.swing),
      notChecked: notCheckedOf(bracket, {
        isLeanUnknown: lean === null && request.force === null,
        isPastTable: all[0][k].isPastTable,
        isThoughtOf: request.force !== null,
      }),
    };
  });
  const { id, rig: owner } = setup;
  const answer = {
    rig: owner.name,
    setup: id,
    demands: demands.map(({ name, speed }) => ({ name, speed })),
    force: request.force,
    wanted,
    brackets: answers,
  };
  return good({ ...answer, findings: bracketFindings(answer) });
}

const mean = (all: readonly number[]): number => all.reduce((sum, one) => sum + one, 0) / all.length;

/** A load of nothing uses nothing up; checks of their own still stand. */
const checksUnder = (measures: BracketMeasures, load: BracketLoad): readonly BracketCheck[] =>
  bracketChecks(measures, { ...load, force: Math.max(load.force, 1e-6) });

function lineOf(check: BracketCheck, wanted: number, useSpread: number | null): BracketLine {
  const { part, factor, carries, bears } = check;
  const needs = check.needs ?? wanted;
  const low = useSpread === null ? factor : 1 / (1 / factor + useSpread);
  const verdict = factor < needs ? 'short' : useSpread === null || low < needs ? 'open' : 'holds';
  return {
    part,
    factor: { dimension: 'ratio', value: factor, tolerance: useSpread === null ? null : factor - low },
    needs,
    verdict,
    carries,
    bears,
    in: check.in,
  };
}

/** How much further a bracket swings under a hit than it would bend at rest; 1 where its own beam is not known. */
function swingOf(measures: BracketMeasures, { force, lasted }: Hit): number {
  const bent = bentBy(measures, Math.max(force, 1));
  if (bent === null || !(lasted > 0)) return 1;
  const rate = Math.max(force, 1) / (bent.deflection + bent.shearDeflection);
  const period = 2 * Math.PI * Math.sqrt(SWINGS / rate);
  // A short hit may swing it less than at rest; that is not counted on.
  return Math.max(1, loadFactor('half-sine', lasted / period));
}

const worstOf = (checks: readonly BracketCheck[], wanted: number): BracketCheck =>
  checks.reduce((a, b) => (b.factor / (b.needs ?? wanted) < a.factor / (a.needs ?? wanted) ? b : a));

function changesOf(measures: BracketMeasures, load: BracketLoad, wanted: number): BracketAnswer['changes'] {
  return BRACKET_CHANGES.flatMap((change) => {
    const other = changed(measures, change);
    if (other === null) return [];
    const checks = checksUnder(other, load);
    if (checks.length === 0) return [];
    const { part, factor, needs } = worstOf(checks, wanted);
    return [{ change, step: CHANGE_STEPS[change], part, factor, needs: needs ?? wanted }];
  });
}

/** The part that cracks first, in each demand. */
function livesOf(measures: BracketMeasures, { passes }: MountLoad, swing: number): readonly BracketLife[] {
  const unit = 1000;
  return passes.flatMap(({ demand, length, cycles }) => {
    const lives = checksUnder(measures, { force: unit, sideways: 0 }).flatMap(({ part, cracks }) => {
      if (cracks === null) return [];
      const perForce = (cracks.stress / unit) * swing;
      const stresses = cycles.map((cycle) => ({ ...cycle, range: cycle.range * perForce }));
      const passesTo = (factor: number): number | null => {
        const share = crackShare(stresses, { ...cracks.detail, range: cracks.detail.range * factor });
        return share > 0 ? 1 / share : null;
      };
      const least = passesTo(1);
      const most = passesTo(FATIGUE_FACTOR);
      const loops = cycles.reduce((sum, { count }) => sum + count, 0);
      return [{ demand, part, detail: cracks.name, pass: length, loops, passes: { least, most } }];
    });
    if (lives.length === 0) return [];
    const first = (life: BracketLife): number => life.passes.least ?? Number.POSITIVE_INFINITY;
    return [lives.reduce((a, b) => (first(b) < first(a) ? b : a))];
  });
}
