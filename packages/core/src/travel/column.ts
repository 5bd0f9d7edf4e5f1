import type { Figure } from '../finding/figure.ts';
import { endOf } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { type Column, figureOf, figureOfReading, shareOf, unsure } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import { blameOf } from './blame.ts';
import type { SampledContact } from './contacts.ts';
import type { ContactLine, DroopLine, TravelColumn } from './result.ts';
import type { SampledColumn, SampledEnd } from './sampled-column.ts';
import { verdictOn } from './verdict.ts';

/**
 * The travel column of one corner out of its samples: figures, verdict, probabilities, blame.
 *
 * @invariant contacts are sorted by travel, hardTravel is the first of them, clearance = hardTravel − freeBump − crush
 */
export function columnOfCorner(
  setup: Setup,
  sampled: SampledColumn,
  droop: readonly DroopLine[],
  draws: Draws,
): TravelColumn {
  const { corner, contacts, spares, hard, clearance, spare, firstCount, moves } = sampled;
  const end = endOf(corner);
  const { base } = setup.ends[end];
  const { trials } = draws;
  const known = sampled.needs.length === 0;
  // A gap or a lift that nobody knows has no tolerance either, and neither has what is made from it.
  const honest = (figure: Figure): Figure => (known ? figure : unsure(figure));
  // All body contacts keep the same free: one column, one figure.
  const allowances = new Map<Column, Figure>();
  const allowanceOf = ({ allowance }: SampledContact): Figure => {
    const figure = allowances.get(allowance) ?? figureOf('length', allowance);
    allowances.set(allowance, figure);
    return figure;
  };
  const line = (contact: SampledContact, k: number): ContactLine => ({
    id: contact.id,
    name: contact.name,
    kind: contact.kind,
    travel: honest(figureOf('length', contact.travel)),
    allowance: allowanceOf(contact),
    spare: honest(figureOf('length', spares[k])),
    firstShare: firstCount[k] / trials,
  });
  const flex = draws.of(base.flex);
  // A frame that flexes brings body contacts closer and presses neither coil nor shock.
  const reached = ({ kind, travel }: SampledContact, i: number): boolean =>
    travel[i] - (kind === 'body' ? flex[i] : 0) < sampled.freeBump[i] + sampled.crush[i];
  const spareFigure = honest(figureOf('length', spare));
  return {
    corner,
    hardTravel: honest(figureOf('length', hard)),
    freeBump: honest(figureOf('length', sampled.freeBump)),
    crush: figureOf('length', sampled.crush),
    flex: figureOfReading(base.flex),
    reserve: figureOfReading(setup.rig.limits.reserve),
    clearance: honest(figureOf('length', clearance)),
    spare: spareFigure,
    contacts: contacts.map(line).sort((a, b) => a.travel.value - b.travel.value),
    droop,
    verdict: verdictOn(spareFigure),
    probability: {
      metal: shareOf(trials, (i) => contacts.some((contact) => reached(contact, i))),
      spareBelowZero: shareOf(trials, (i) => spare[i] < 0),
    },
    blame: blameOf(spare, sampled.readings.values(), draws),
    lift: honest(figureOf('length', moves.height)),
  };
}

/** The droop limits of an end, nearest first; both sides have the same. */
export function droopLines({ droop, needs }: SampledEnd): readonly DroopLine[] {
  return droop
    .map(({ id, travel }): DroopLine => {
      const figure = figureOf('length', travel);
      return { id, travel: needs.length === 0 ? figure : unsure(figure) };
    })
    .sort((a, b) => a.travel.value - b.travel.value);
}
