import type { Figure } from '../finding/figure.ts';
import type { Finding, Remedy, Severity } from '../finding/finding.ts';
import { CORNERS, type Corner, cornerAt, ENDS, type End, endOf } from '../finding/place.ts';
import type { RideRun } from '../ride/result.ts';
import type { Setup } from '../rig/setup.ts';
import { worstFirst } from './check.ts';
import type { RideAnswer } from './protocol.ts';
import { shockPastTable } from './shock-findings.ts';
import { ventPastLaw } from './vent-findings.ts';

type Answer = Omit<RideAnswer, 'findings'>;

/** Share of time in the air that is worth saying. */
const WORTH_SAYING = 0.02;

/**
 * What a run says about the rig, worst first, one statement of a kind for each end (its worse corner speaks).
 * Clearance is held against what must stay free: flex allowance and reserve, as in the travel column.
 */
export function rideFindings(setup: Setup, answer: Answer, runs: readonly RideRun[]): readonly Finding[] {
  const { run } = answer;
  // A rig that is let go in the air has no speed that matters: none is named.
  const letGo = setup.rig.courses[answer.course]?.shape.kind === 'drop';
  const facts = {
    course: answer.course,
    ...(letGo ? {} : { speed: { dimension: 'speed', value: answer.speed, tolerance: 0 } as Figure }),
    time: { dimension: 'time', value: run.time, tolerance: 0 } as Figure,
  };
  if (run.status !== 'finished') {
    return [finding('ride-left-validity', 'over', 'rig', { facts, remedies: [{ code: 'slow-down' }] })];
  }
  const findings: Finding[] = [];
  const lost = shareOf(runs, ({ status }) => status !== 'finished') ?? 0;
  if (lost > 0) {
    findings.push(
      finding('ride-left-validity', 'unproven', 'rig', {
        facts,
        likelihood: lost,
        remedies: [{ code: 'slow-down' }],
      }),
    );
  }
  for (const end of ENDS) {
    findings.push(...endFindings(setup, end, answer, runs, facts));
    findings.push(...shockPastTable(setup, end, run, runs, facts));
    findings.push(...ventPastLaw(setup, end, run, runs, facts));
  }

  const harsh = answer.body.peakAcceleration;
  const limit = figureOf(setup.rig.limits.bodyAcceleration);
  const severity = judge(limit.value - harsh.value, harsh.tolerance);
  if (severity !== 'fine') {
    findings.push(
      finding('ride-harsh', severity, 'rig', {
        value: harsh,
        limit,
        facts: { ...facts, acceleration: harsh },
        remedies: [{ code: 'slow-down' }, { code: 'softer-stop' }],
        likelihood: shareOf(runs, (one) => one.body.peakAcceleration > limit.value),
        because: [setup.rig.limits.bodyAcceleration.key],
      }),
    );
  }
  return worstFirst(letGo ? findings.map(withoutSpeed) : findings);
}

const withoutSpeed = (finding: Finding): Finding => ({
  ...finding,
  remedies: finding.remedies.filter(({ code }) => code !== 'slow-down'),
});

function endFindings(
  setup: Setup,
  end: End,
  answer: Answer,
  runs: readonly RideRun[],
  facts: Record<string, Figure | string>,
): Finding[] {
  const { base, stop } = setup.ends[end];
  const corner = worseCorner(end, answer);
  const { clearance, peakCrush, peakStopForce } = answer.corners[corner];
  const keep = base.flex.value + setup.rig.limits.reserve.value;
  const limit: Figure = {
    dimension: 'length',
    value: keep,
    tolerance: Math.hypot(base.flex.plus, setup.rig.limits.reserve.plus),
  };
  const about = { ...facts, clearance, crush: peakCrush, force: peakStopForce };
  const place = sameOnBothSides(end, answer) ? end : corner;
  const because = [base.flex.key, setup.rig.limits.reserve.key, stop.usableCrush.key];
  const common = { value: clearance, limit, facts: about, because };
  const found: Finding[] = [];
  const metal = shareOf(runs, (one) => one.corners[corner].contacts.metal > 0);
  if (clearance.value <= 0) {
    found.push(
      finding('ride-metal', 'over', place, { ...common, likelihood: metal ?? 1, remedies: AGAINST_METAL }),
    );
  } else {
    const severity = judge(clearance.value - keep, joined(clearance.tolerance, limit.tolerance));
    found.push(
      finding(severity === 'fine' ? 'ride-clear' : 'ride-clearance-short', severity, place, {
        ...common,
        likelihood: shareOf(runs, (one) => one.corners[corner].clearance < keep),
        remedies: severity === 'fine' ? [] : AGAINST_METAL,
      }),
    );
  }
  const lastPoint = stop.crush[stop.crush.length - 1];
  if (peakCrush.value > lastPoint) {
    found.push(
      finding('ride-stop-past-table', 'unproven', place, {
        value: peakCrush,
        limit: { dimension: 'length', value: lastPoint, tolerance: 0 },
        facts: about,
        because: [stop.usableCrush.key],
        remedies: [{ code: 'measure-again', target: stop.usableCrush.key }],
      }),
    );
  }
  const { airborneShare } = answer.corners[corner];
  if (airborneShare.value > WORTH_SAYING) {
    found.push(
      finding('ride-airborne', 'note', place, {
        value: airborneShare,
        facts: { ...about, share: airborneShare },
        remedies: [{ code: 'slow-down' }],
      }),
    );
  }
  return found;
}

const AGAINST_METAL: readonly Remedy[] = [
  { code: 'slow-down' },
  { code: 'more-compression-damping' },
  { code: 'seat-and-stop-drop' },
];

/** Over a limit, under it for certain, or too close to say. An unknown spread proves nothing. */
function judge(margin: number, tolerance: number | null): Severity {
  if (tolerance === null) return margin < 0 ? 'over' : 'unproven';
  if (margin <= -tolerance) return 'over';
  return margin >= tolerance ? 'fine' : 'unproven';
}

const joined = (a: number | null, b: number | null): number | null =>
  a === null || b === null ? null : Math.hypot(a, b);

const figureOf = (reading: { dimension: Figure['dimension']; value: number; plus: number }): Figure => ({
  dimension: reading.dimension,
  value: reading.value,
  tolerance: reading.plus,
});

function shareOf(runs: readonly RideRun[], holds: (run: RideRun) => boolean): number | undefined {
  return runs.length > 0 ? runs.filter(holds).length / runs.length : undefined;
}

function worseCorner(end: End, answer: Answer): Corner {
  const left = cornerAt(end, 'left');
  const right = cornerAt(end, 'right');
  return answer.corners[right].clearance.value < answer.corners[left].clearance.value ? right : left;
}

function sameOnBothSides(end: End, answer: Answer): boolean {
  const [one, other] = CORNERS.filter((corner) => endOf(corner) === end).map(
    (corner) => answer.corners[corner].clearance.value,
  );
  return Math.abs(one - other) < 1e-5;
}

function finding(
  code: Finding['code'],
  severity: Severity,
  place: Finding['place'],
  rest: Partial<Omit<Finding, 'id' | 'code' | 'severity' | 'place'>>,
): Finding {
  return { because: [], remedies: [], facts: {}, ...rest, id: `${code}.${place}`, code, severity, place };
}
