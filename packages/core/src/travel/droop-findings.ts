import type { Finding, Remedy } from '../finding/finding.ts';
import type { End } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { columnOf, exact, figureOf } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import { hoseSlack, type SampledDroop, shockAtStretchedStrap } from './droop.ts';
import { shorterStrap } from './strap.ts';
import { verdictOn } from './verdict.ts';

/** Slack that a brake hose should keep at strap-stretched droop and full lock [m]: 25 to 50 mm, common practice, no source. */
const HOSE_SLACK = { least: 0.025, easy: 0.05 };

/** What ends droop at one end, and whether it should. */
export function droopFindings(
  setup: Setup,
  end: End,
  droop: readonly SampledDroop[],
  draws: Draws,
): readonly Finding[] {
  const lines = [...droop].sort((a, b) => a.travel[0] - b.travel[0]);
  const hard = lines.filter(({ id }) => id !== 'spring');
  const [first] = hard;
  const findings: Finding[] = [];
  if (first) findings.push(firstLimit(end, first));
  findings.push(...strapFindings(setup, end, first, draws));
  findings.push(...hoseFindings(setup, end, draws));
  const spring = lines.find(({ id }) => id === 'spring');
  if (spring && first && spring.travel[0] < first.travel[0]) {
    const travel = figureOf('length', spring.travel);
    findings.push({
      id: `droop-spring-unseats.${end}`,
      code: 'droop-spring-unseats',
      severity: 'note',
      place: end,
      value: travel,
      limit: figureOf('length', first.travel),
      facts: {
        travel,
        limitName: first.id,
        limit: figureOf('length', first.travel),
        loose: figureOf(
          'length',
          columnOf(
            travel.tolerance === null ? 1 : spring.travel.length,
            (i) => first.travel[i] - spring.travel[i],
          ),
        ),
      },
      because: [`${end}.spring`],
      remedies: [],
    });
  }
  return findings;
}

const firstLimit = (end: End, first: SampledDroop): Finding => {
  const travel = figureOf('length', first.travel);
  return {
    id: `droop-first-limit.${end}`,
    code: 'droop-first-limit',
    severity: 'note',
    place: end,
    value: travel,
    facts: { limit: first.id, travel },
    because: [],
    remedies: [],
  };
};

/** The strap has to catch the axle, fully stretched, before the shock is at its own end. */
function strapFindings(
  setup: Setup,
  end: End,
  first: SampledDroop | undefined,
  draws: Draws,
): readonly Finding[] {
  const { base } = setup.ends[end];
  const { extendedLength } = base.shock;
  if (!extendedLength) return [];
  const open = draws.of(extendedLength);
  const stretched = shockAtStretchedStrap(setup, end, draws);
  if (!stretched || !base.strap) {
    if (first?.id !== 'shock') return [];
    const travel = figureOf('length', first.travel);
    return [
      {
        id: `droop-shock-is-the-limit.${end}`,
        code: 'droop-shock-is-the-limit',
        severity: 'note',
        place: end,
        value: travel,
        facts: { travel, strap: 'none' },
        because: [extendedLength.key],
        remedies: [],
      },
    ];
  }
  const reserve = draws.of(base.shockDroopReserve);
  const left = figureOf(
    'length',
    columnOf(open.length, (i) => open[i] - stretched[i]),
  );
  const overReserve = figureOf(
    'length',
    columnOf(open.length, (i) => open[i] - stretched[i] - reserve[i]),
  );
  const verdict = verdictOn(overReserve);
  if (verdict === 'pass') return [];
  const severity = verdict === 'fail' ? 'over' : 'unproven';
  const shorter = shorterStrap(setup, end, draws);
  const remedies: readonly Remedy[] = shorter
    ? [{ code: 'shorten-strap', amount: exact('length', shorter.length) }]
    : [];
  const because = [
    base.strap.stretch.key,
    base.strap.length.key,
    base.strap.tightAtShock.key,
    extendedLength.key,
  ];
  const facts = {
    left,
    reserve: exact('length', base.shockDroopReserve.value),
    stretched: figureOf('length', stretched),
    open: figureOf('length', open),
    ...(shorter
      ? {
          shorter: exact('length', shorter.length),
          droopLost: exact('length', shorter.droopLost),
          leftAfter: shorter.left,
        }
      : {}),
  };
  const findings: Finding[] = [
    {
      id: `strap-shorten.${end}`,
      code: 'strap-shorten',
      severity,
      place: end,
      value: left,
      limit: exact('length', base.shockDroopReserve.value),
      facts,
      because,
      remedies,
    },
  ];
  if (left.value <= 0)
    findings.unshift({
      id: `droop-shock-is-the-limit.${end}`,
      code: 'droop-shock-is-the-limit',
      severity: left.value <= -(left.tolerance ?? 0) ? 'over' : 'unproven',
      place: end,
      value: left,
      limit: exact('length', 0),
      facts: { ...facts, strap: 'too long' },
      because,
      remedies,
    });
  return findings;
}

function hoseFindings(setup: Setup, end: End, draws: Draws): readonly Finding[] {
  const { hose } = setup.ends[end].base;
  const sampled = hoseSlack(setup, end, draws);
  if (!hose || !sampled) return [];
  const slack = figureOf('length', sampled);
  const because = [hose.freeLength.key, hose.distanceAtDroop.key];
  const missing = HOSE_SLACK.least - slack.value;
  const longer: readonly Remedy[] =
    missing > 0 ? [{ code: 'longer-hose', amount: exact('length', missing) }] : [];
  const least = exact('length', HOSE_SLACK.least);
  if (slack.value - (slack.tolerance ?? 0) <= 0)
    return [
      {
        id: `droop-hose-taut.${end}`,
        code: 'droop-hose-taut',
        severity: slack.value <= 0 ? 'over' : 'unproven',
        place: end,
        value: slack,
        limit: least,
        facts: { slack, least },
        because,
        remedies: [...longer, { code: 'inspect-hose' }],
      },
    ];
  if (slack.value >= HOSE_SLACK.easy) return [];
  return [
    {
      id: `hose-slack-minimum.${end}`,
      code: 'hose-slack-minimum',
      severity: missing > ROUNDING ? 'unproven' : 'note',
      place: end,
      value: slack,
      limit: least,
      facts: { slack, least },
      because,
      remedies: [...longer.filter(() => missing > ROUNDING), { code: 'inspect-hose' }],
    },
  ];
}

/** A micrometre: what rounding takes from a tape reading. */
const ROUNDING = 1e-6;
