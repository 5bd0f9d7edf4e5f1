import type { FindingCode } from '../finding/codes.ts';
import type { Figure } from '../finding/figure.ts';
import type { Finding, Remedy, Severity } from '../finding/finding.ts';
import type { Setup } from '../rig/setup.ts';
import { NOMINAL_DRAWS } from '../stance/draws.ts';
import { worstFirst } from './check.ts';
import type { CriterionSweep, SetupSweep, SweepAnswer } from './sweep-answer.ts';
import { criteriaOf } from './sweep-criteria.ts';

type About = Omit<SweepAnswer, 'setups'>;

/**
 * What a sweep says about a setup, one statement a criterion, and one more where it holds again at a faster speed.
 *
 * A break counts against the rig only where its owner wants to drive: it is `over` when the speed of the course is
 * beyond it, `unproven` when it may be within the readings, else a `note`. Without such a speed there is only a note.
 * What is broken at the slowest speed already is always `over`.
 */
export function sweepFindings(
  setup: Setup,
  about: About,
  sweep: Omit<SetupSweep, 'findings'>,
): readonly Finding[] {
  const because = new Map(
    criteriaOf(setup, NOMINAL_DRAWS, about.distancePerDay).map((one) => [one.id, one.because]),
  );
  return worstFirst(
    sweep.criteria.flatMap((one) =>
      statements(about, one).map((said): Finding => {
        return { ...said, because: because.get(one.id) ?? [] };
      }),
    ),
  );
}

type Statement = Omit<Finding, 'because'>;

function statements(about: About, one: CriterionSweep): readonly Statement[] {
  const { first, limit } = one;
  const slowest = about.speeds[0];
  const fastest = about.speeds[about.speeds.length - 1];
  const facts: Record<string, Figure | string> = {
    criterion: one.id,
    course: about.course,
    slowest: speed(slowest),
    fastest: speed(fastest),
    step: speed(about.step),
    ...(about.distancePerDay === null
      ? {}
      : { distance: { dimension: 'length', value: about.distancePerDay, tolerance: 0 } as Figure }),
  };
  const say = (
    code: FindingCode,
    severity: Severity,
    rest: Partial<Statement> & { readonly more?: Record<string, Figure | string> } = {},
  ): Statement => {
    const { more = {}, ...others } = rest;
    return {
      id: `${code}.${one.id}`,
      code,
      severity,
      place: first.place ?? 'rig',
      ...(limit === null ? {} : { limit }),
      remedies: [],
      ...others,
      facts: { ...facts, ...more },
    };
  };
  if (first.kind === 'no-limit') return [say('sweep-no-limit', 'note')];
  if (first.kind === 'never' || first.speed === null) {
    const mayBreak = first.neverShare !== null && first.neverShare < 1;
    if (!mayBreak) return [say('sweep-held', 'fine')];
    return [
      say('sweep-held-in-most', severityOf(about, null, first.trials?.low ?? null), {
        likelihood: 1 - (first.neverShare ?? 1),
        more: { low: speed(first.trials?.low ?? fastest) },
      }),
    ];
  }
  const value = speed(first.speed);
  const severity = {
    unknown: 'unproven',
    'broken-at-once': 'over',
    broken: severityOf(about, first.speed, first.trials?.low ?? null),
  } as const;
  const code = CODES[first.kind];
  const more: Record<string, Figure | string> = {
    speed: value,
    ...(first.trials === null
      ? {}
      : {
          low: speed(first.trials.low),
          high: Number.isFinite(first.trials.high) ? speed(first.trials.high) : 'never',
        }),
  };
  const found = [say(code, severity[first.kind], { value, more, remedies: REMEDIES[one.id] })];
  const [band, next] = one.bands;
  const holdsAgain = next !== undefined || (band !== undefined && band.to < fastest);
  if (holdsAgain && band !== undefined)
    found.push(
      say('sweep-holds-again', 'note', {
        more: { speed: speed(band.from), until: speed(band.to), bands: String(one.bands.length) },
      }),
    );
  return found;
}

const CODES = {
  broken: 'sweep-broken',
  'broken-at-once': 'sweep-broken-at-once',
  unknown: 'sweep-unknown',
} as const;

/** @param least – slowest first break over the trials */
function severityOf({ wantedSpeed }: About, first: number | null, least: number | null): Severity {
  if (wantedSpeed === null) return 'note';
  if (first !== null && first <= wantedSpeed) return 'over';
  return least === null || least <= wantedSpeed ? 'unproven' : 'note';
}

const speed = (value: number): Figure => ({ dimension: 'speed', value, tolerance: 0 });

/** That driving slower helps is what the whole answer says; here stands what else does. */
const AGAINST_METAL: readonly Remedy[] = [
  { code: 'more-compression-damping' },
  { code: 'seat-and-stop-drop' },
];
const REMEDIES: Readonly<Record<CriterionSweep['id'], readonly Remedy[]>> = {
  'metal-contact': AGAINST_METAL,
  clearance: AGAINST_METAL,
  'body-shock': [{ code: 'softer-stop' }],
  'seat-shock': [{ code: 'softer-stop' }],
  'absorbed-power': [],
  'seat-dose': [],
  'bracket-load': [{ code: 'softer-stop' }],
  'tyre-contact': [],
};
