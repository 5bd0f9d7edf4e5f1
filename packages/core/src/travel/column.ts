import type { Figure } from '../finding/figure.ts';
import { endOf } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { figureOf, figureOfReading, shareOf, unsure } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import { blameOf } from './blame.ts';
import type { SampledContact } from './contacts.ts';
import { droopOf } from './droop.ts';
import type { ContactLine, DroopLine, TravelColumn } from './result.ts';
import type { SampledColumn } from './sampled-column.ts';
import { verdictOn } from './verdict.ts';

/**
 * The travel column of one corner out of its samples: figures, verdict, probabilities, blame.
 *
 * @invariant contacts are sorted by travel, hardTravel is the first of them, clearance = hardTravel − freeBump − crush
 */
export function columnOfCorner(setup: Setup, sampled: SampledColumn, draws: Draws): TravelColumn {
  const { corner, contacts, spares, hard, clearance, spare, firstCount, moves } = sampled;
  const end = endOf(corner);
  const { base } = setup.ends[end];
  const { trials } = draws;
  const known = sampled.needs.length === 0;
  // A gap or a lift that nobody knows has no tolerance either, and neither has what is made from it.
  const honest = (figure: Figure): Figure => (known ? figure : unsure(figure));
  const line = (contact: SampledContact, k: number): ContactLine => ({
    id: contact.id,
    name: contact.name,
    kind: contact.kind,
    travel: honest(figureOf('length', contact.travel)),
    allowance: figureOf('length', contact.allowance),
    spare: honest(figureOf('length', spares[k])),
    firstShare: firstCount[k] / trials,
  });
  const droop = droopOf(setup, end, moves, draws).map(
    ({ id, travel }): DroopLine => ({ id, travel: honest(figureOf('length', travel)) }),
  );
  const flex = draws.of(base.flex);
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
    droop: droop.sort((a, b) => a.travel.value - b.travel.value),
    verdict: verdictOn(spareFigure),
    probability: {
      metal: shareOf(trials, (i) => clearance[i] < flex[i]),
      spareBelowZero: shareOf(trials, (i) => spare[i] < 0),
    },
    blame: blameOf(spare, sampled.readings.values(), draws),
    lift: honest(figureOf('length', moves.height)),
  };
}
