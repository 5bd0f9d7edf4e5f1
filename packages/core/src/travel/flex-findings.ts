import type { FindingCode } from '../finding/codes.ts';
import type { Figure } from '../finding/figure.ts';
import type { Finding, Remedy, Severity } from '../finding/finding.ts';
import { CORNERS, type Corner, cornerAt, ENDS, type End, endOf, SIDES } from '../finding/place.ts';
import { severityOf } from '../linkage/margins.ts';
import { LINE_PRACTICE } from '../linkage/reach-findings.ts';
import type { Setup } from '../rig/setup.ts';
import { exact, figureOf, shareOf, unsure } from '../stance/columns.ts';
import type { Articulation } from './articulation-result.ts';
import { COIL, SHOCK } from './contacts.ts';
import type { ClearAtFlex } from './flex-clear.ts';
import type { SampledArticulation } from './sampled-articulation.ts';

type FlexCode = Extract<FindingCode, `flex-${string}`>;

/** What is said of a limit that must not end a flex. */
const codeOf = (id: string): FlexCode => {
  if (id === 'hose') return 'flex-on-hose';
  if (id === 'shaft') return 'flex-on-shaft';
  if (id === 'shock-open') return 'flex-on-shock';
  return id === COIL || id === SHOCK ? 'flex-on-solid' : 'flex-on-body';
};

/**
 * Flexes that end, or may end, on something that should not end them: tyre or frame, coil or shock solid, hose, shaft,
 * shock open before the strap; and tips of stops off their pads. Of both sides of an end the worse one is told.
 *
 * @param told – its figures, as `articulationFrom` has them
 */
export function flexFindings(
  setup: Setup,
  sampled: SampledArticulation,
  told: Articulation,
): readonly Finding[] {
  const all = CORNERS.flatMap((corner) => [
    ...sampled.flex[corner].clear.flatMap((one) => endsOn(setup, corner, one, { sampled, told })),
    ...shockAlone(setup, corner, told),
  ]);
  const pads = CORNERS.flatMap((corner) => offPad(setup, corner, told));
  return ENDS.flatMap((end) => worseSide([...all, ...pads], end));
}

interface Both {
  readonly sampled: SampledArticulation;
  readonly told: Articulation;
}

function endsOn(
  setup: Setup,
  corner: Corner,
  { id, name, left: column }: ClearAtFlex,
  { sampled, told }: Both,
): readonly Finding[] {
  const made = figureOf('length', column);
  const left = sampled.flex[corner].known ? made : unsure(made);
  const likelihood = shareOf(column.length - 1, (i) => column[i] < 0);
  const severity = severityOf(left);
  if (severity === 'fine' || (left.value >= 0 && likelihood === 0)) return [];
  const code = codeOf(id);
  const { droop, angle } = told.flex[corner];
  const end = endOf(corner);
  const missing = Math.max(0, (left.tolerance ?? 0) - left.value);
  return [
    {
      id: `${code}.${corner}.${id}`,
      code,
      severity,
      place: corner,
      value: left,
      limit: exact('length', 0),
      likelihood,
      facts: { angle, left, limit: name, verdict: verdictOf(severity), strap: 'too long' },
      because: becauseOf(setup, end, id),
      remedies: remediesOf(code, name, missing, droop),
    },
  ];
}

const verdictOf = (severity: Severity): string => (severity === 'over' ? 'ends' : 'may end');

/** No strap: the shock is the strap, of every flex that it ends. */
function shockAlone(setup: Setup, corner: Corner, { flex }: Articulation): readonly Finding[] {
  const { limits, angle, droop } = flex[corner];
  const end = endOf(corner);
  const open = limits.find(({ id }) => id === 'shock-open');
  if (limits[0] !== open || !open || setup.ends[end].base.strap) return [];
  return [
    {
      id: `flex-on-shock.${corner}`,
      code: 'flex-on-shock',
      severity: 'note',
      place: corner,
      value: angle,
      likelihood: open.firstShare,
      facts: { angle, limit: open.name, strap: 'none', verdict: 'ends' },
      because: becauseOf(setup, end, open.id),
      remedies: remediesOf('flex-on-shock', open.name, 0, droop),
    },
  ];
}

function remediesOf(code: FlexCode, name: string, missing: number, droop: Figure): readonly Remedy[] {
  const strap: Remedy = {
    code: 'strap-in-flex',
    amount: exact('length', Math.max(0, droop.value - (droop.tolerance ?? 0))),
  };
  switch (code) {
    case 'flex-on-body':
      return [
        { code: 'notch-contact', amount: exact('length', missing), target: name },
        { code: 'stop-sooner-in-flex' },
      ];
    case 'flex-on-solid':
      return [{ code: 'stop-sooner-in-flex' }];
    case 'flex-on-hose':
      return [
        { code: 'longer-hose', amount: exact('length', missing + LINE_PRACTICE.leastSlack) },
        { code: 'inspect-hose' },
        strap,
      ];
    default:
      return [strap];
  }
}

function offPad(setup: Setup, corner: Corner, { flex }: Articulation): readonly Finding[] {
  const { pad, angle } = flex[corner];
  const end = endOf(corner);
  const size = setup.ends[end].base.points.mounts.stop?.padSize;
  if (pad?.stands !== 'off' || !size) return [];
  return [
    {
      id: `flex-off-pad.${corner}`,
      code: 'flex-off-pad',
      // Mounts at their nominal places only: what is off may be on.
      severity: 'unproven',
      place: corner,
      value: pad.offset,
      limit: exact('length', size.value / 2),
      facts: { angle, offset: pad.offset },
      because: [`${end}.mounts.stop.axle`, `${end}.mounts.stop.frame`, size.key],
      remedies: [{ code: 'larger-pad' }],
    },
  ];
}

function becauseOf(setup: Setup, end: End, id: string): readonly string[] {
  const { base } = setup.ends[end];
  const contact = base.contacts.find((each) => each.id === id);
  if (contact) return [...new Set(SIDES.map((side) => contact.gap[side].key))];
  const { extendedLength, collapsedLength } = base.shock;
  const readings = {
    hose: base.hose?.freeLength,
    'shock-open': extendedLength,
    [SHOCK]: collapsedLength,
    [COIL]: setup.ends[end].spring.solidLength,
  }[id];
  return readings ? [readings.key] : [];
}

const RANK: readonly Severity[] = ['over', 'unproven', 'note', 'fine'];

/** One finding a limit and end: the side where less is left. */
function worseSide(findings: readonly Finding[], end: End): readonly Finding[] {
  const [left, right] = SIDES.map((side) => findings.filter(({ place }) => place === cornerAt(end, side)));
  const keyOf = ({ id, place }: Finding) => id.replace(`.${place}`, '');
  const worse = new Map<string, Finding>();
  for (const finding of [...(left ?? []), ...(right ?? [])]) {
    const other = worse.get(keyOf(finding));
    if (!other || orderOf(finding, other) < 0) worse.set(keyOf(finding), finding);
  }
  return [...worse.values()];
}

/** An offset is worse the larger it is, all else the smaller it is. */
function orderOf(a: Finding, b: Finding): number {
  const sign = a.code === 'flex-off-pad' ? -1 : 1;
  const of = ({ value }: Finding) => sign * (value?.value ?? 0);
  return RANK.indexOf(a.severity) - RANK.indexOf(b.severity) || of(a) - of(b);
}
