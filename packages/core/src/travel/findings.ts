import type { Figure } from '../finding/figure.ts';
import type { Finding, Severity } from '../finding/finding.ts';
import { cornerAt, ENDS, type End, endOf, type Place } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { exact } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import { assumptionFindings } from './assumption-findings.ts';
import { COIL, SHOCK } from './contacts.ts';
import { droopFindings } from './droop-findings.ts';
import { liftFinding } from './lift-finding.ts';
import { remediesOf } from './remedies.ts';
import type { Columns, ContactLine, TravelColumn, Verdict } from './result.ts';
import type { SampledColumn, SampledEnd, Samples } from './sampled-column.ts';
import { verdictOn } from './verdict.ts';
import { witnessFindings } from './witness.ts';

export const SEVERITY: Readonly<Record<Verdict, Severity>> = {
  pass: 'fine',
  'not-proven': 'unproven',
  fail: 'over',
};

/** A contact that comes first in this share of the trials or more cannot be told from the first: rule T18. */
const TIE_SHARE = 0.05;

/** What the travel columns of a setup say. Where both sides of an end are alike, it is said once for the end. */
export function travelFindings(
  setup: Setup,
  ends: Readonly<Record<End, SampledEnd>>,
  samples: Samples,
  columns: Columns,
  draws: Draws,
): readonly Finding[] {
  const findings: Finding[] = [];
  for (const end of ENDS) {
    const left = cornerAt(end, 'left');
    const right = cornerAt(end, 'right');
    const alike = sameColumn(columns[left], columns[right]);
    for (const corner of alike ? [left] : [left, right])
      findings.push(...cornerFindings(setup, samples[corner], columns[corner], alike ? end : corner, draws));
    findings.push(...droopFindings(setup, end, ends[end].droop, draws));
    findings.push(...witnessFindings(setup, end, samples, columns, draws));
  }
  findings.push(...assumptionFindings(setup, columns));
  return findings;
}

/** Alike where nobody could tell the sentences apart: same verdict, same contacts, same figures but for the draws. */
function sameColumn(a: TravelColumn, b: TravelColumn): boolean {
  const figures = ({ spare, clearance, freeBump, crush, contacts }: TravelColumn) => [
    spare,
    clearance,
    freeBump,
    crush,
    ...contacts.map(({ travel }) => travel),
  ];
  const [of, against] = [figures(a), figures(b)];
  const order = (column: TravelColumn) => column.contacts.map(({ id }) => id).join();
  return (
    a.verdict === b.verdict &&
    order(a) === order(b) &&
    of.every((figure, k) => sameFigure(figure, against[k]))
  );
}

/** Half-widths from the trials scatter by some per cent. */
const sameFigure = (a: Figure, b: Figure): boolean =>
  Math.abs(a.value - b.value) < ROUNDING &&
  (a.tolerance === null || b.tolerance === null
    ? a.tolerance === b.tolerance
    : Math.abs(a.tolerance - b.tolerance) <= SCATTER * Math.max(a.tolerance, b.tolerance));

const SCATTER = 0.1;

function cornerFindings(
  setup: Setup,
  sampled: SampledColumn,
  column: TravelColumn,
  place: Place,
  draws: Draws,
): readonly Finding[] {
  const { verdict, spare, contacts, probability, blame, freeBump, crush, clearance, hardTravel } = column;
  const [first] = contacts;
  const worst = contacts.reduce((a, b) => (b.spare.value < a.spare.value ? b : a));
  const because = blame.map(({ key }) => key);
  const remedies = remediesOf(setup, sampled, column, draws);
  const findings: Finding[] = [
    {
      id: `travel-${verdict}.${place}`,
      code: `travel-${verdict}`,
      severity: SEVERITY[verdict],
      place,
      value: spare,
      limit: exact('length', spare.tolerance ?? 0),
      likelihood: probability.spareBelowZero,
      facts: {
        contact: worst.name,
        travel: worst.travel,
        spare,
        clearance,
        hardTravel,
        freeBump,
        crush,
        allowance: worst.allowance,
      },
      because,
      remedies,
    },
  ];
  const note = (finding: Omit<Finding, 'id' | 'place' | 'because'>) =>
    findings.push({ id: `${finding.code}.${place}`, place, because, ...finding });

  const level = contacts.filter((line) => line === first || line.firstShare >= TIE_SHARE);
  if (level.length > 1)
    note({
      code: 'travel-contacts-tie',
      severity: 'note',
      value: first.travel,
      facts: { contacts: level.map(({ name }) => name).join(', '), travel: first.travel },
      remedies: [{ code: 'measure-again', target: keyOf(setup, endOf(column.corner), first) }],
    });
  const bodies = contacts.filter(({ kind }) => kind === 'body');
  if (bodies.length < 2)
    note({
      code: 'travel-only-one-contact',
      severity: 'note',
      facts: { contact: first.name, missing: missingOf(contacts) },
      remedies: [{ code: 'measure-more-contacts' }],
    });
  if (clearance.value < -ROUNDING)
    note({
      code: 'stop-after-metal',
      severity: clearance.value <= -(clearance.tolerance ?? Number.POSITIVE_INFINITY) ? 'over' : 'unproven',
      value: clearance,
      limit: exact('length', 0),
      likelihood: probability.metal,
      facts: { contact: first.name, hardTravel, freeBump, crush, clearance },
      remedies: [],
    });
  if (freeBump.value <= (freeBump.tolerance ?? 0))
    note({
      code: 'stop-touches-at-ride',
      severity: freeBump.value <= 0 ? 'over' : 'unproven',
      value: freeBump,
      limit: exact('length', 0),
      facts: { freeBump },
      remedies: [],
    });
  if (sampled.needs.length > 0)
    note({
      code: 'stop-gap-needed',
      severity: 'unproven',
      facts: { needed: sampled.needs.map(({ where }) => where.key ?? '').join(', ') },
      remedies: sampled.needs.map(({ where }) => ({ code: 'measure-again' as const, target: where.key })),
    });
  for (const [id, code] of [
    [COIL, 'coil-binds-before-stop'],
    [SHOCK, 'shock-bottoms-before-stop'],
  ] as const) {
    const line = contacts.find((contact) => contact.id === id);
    const own = line && verdictOn(line.spare);
    if (!line || own === 'pass' || own === undefined) continue;
    note({
      code,
      severity: SEVERITY[own],
      value: line.spare,
      limit: exact('length', line.spare.tolerance ?? 0),
      facts: { travel: line.travel, freeBump, crush, allowance: line.allowance, spare: line.spare },
      remedies: remedies.filter((remedy) => OF_STROKE.has(remedy.code)),
    });
  }
  const lift = liftFinding(setup, column, place, remedies);
  if (lift) findings.push(lift);
  return findings;
}

/** Remedies that keep the stop away from the end of a coil or a shock; the rest stand with the verdict. */
const OF_STROKE = new Set(['stop-spacer', 'longer-coil']);

/** A micrometre: what rounding makes of nothing. */
const ROUNDING = 1e-6;

function missingOf(contacts: readonly ContactLine[]): string {
  const missing = [
    contacts.some(({ kind }) => kind === 'coil') ? null : 'coil solid',
    contacts.some(({ kind }) => kind === 'shock') ? null : 'shock bottomed',
  ];
  return missing.filter((name) => name !== null).join(', ');
}

/** The reading that a contact's travel rests on. */
export function keyOf(setup: Setup, end: End, { id }: Pick<ContactLine, 'id'>): string {
  const { base } = setup.ends[end];
  const contact = base.contacts.find((each) => each.id === id);
  if (contact) return contact.gap.left.key;
  const length = id === COIL ? base.springRideLength : base.shock.rideLength;
  return length?.key ?? `${end}.${id === COIL ? 'spring' : 'shock'}.rideLength`;
}
