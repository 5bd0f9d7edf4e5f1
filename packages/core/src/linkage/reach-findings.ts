import type { Finding, Remedy, Severity } from '../finding/finding.ts';
import type { End } from '../finding/place.ts';
import { exactly, figureOver, severityOf } from './margins.ts';
import type { Reach, TiePoint } from './reach.ts';
import { slackLoop } from './slack-loop.ts';

/** Slack at full stretch [m], and least bend of the loop as a multiple of the outer diameter: common practice, no source. */
export const LINE_PRACTICE = { leastSlack: 0.025, easySlack: 0.05, bendPerDiameter: 6 } as const;

/** A hose or line whose reach is known. */
export interface LineAsked {
  /** What it is, for the sentence: `brake hose`. */
  readonly name: string;
  /** Free length between its fixed ends [m], in the order of the answers; null when not measured. */
  readonly freeLengths: readonly number[] | null;
  /** Outer diameter [m], and least bend radius of its maker [m]; null when not known. */
  readonly diameter: number | null;
  readonly leastRadius: number | null;
  /** A link to which it could be tied, and where. */
  readonly tie: { readonly link: string; readonly point: TiePoint } | null;
  readonly because: readonly string[];
}

const INSPECT: Remedy = { code: 'inspect-hose' };

/**
 * What a hose says: whether it is long enough over everything that the axle can do, whether its slack bends too
 * tightly, where it could be tied. A hose that passes here has still to be looked at by a qualified person, and every
 * finding says so through its remedies.
 *
 * @param reaches – `reachOf` at the nominal geometry, then in each trial; one alone has unknown tolerances
 */
export function lineFindings(end: End, reaches: readonly Reach[], asked: LineAsked): readonly Finding[] {
  const { name, freeLengths, because } = asked;
  const make = (
    code: Finding['code'],
    severity: Severity,
    rest: Pick<Finding, 'facts' | 'remedies'> & Partial<Pick<Finding, 'value' | 'limit'>>,
  ): Finding => ({ id: `${code}.${end}.${name}`, code, severity, place: end, because, ...rest });
  const longest = figureOver('length', reaches, (reach) => reach.longest.value);
  const least = exactly('length', LINE_PRACTICE.leastSlack);
  const wanted = longest.value + (longest.tolerance ?? 0) + LINE_PRACTICE.leastSlack;
  const facts = { line: name, longest, least, wantedLength: exactly('length', wanted) };
  const found: Finding[] = [];
  if (freeLengths === null) {
    found.push(make('line-length-needed', 'note', { facts, value: longest, remedies: [INSPECT] }));
  } else {
    const both = reaches.map((reach, i) => ({ reach, free: freeLengths[i] }));
    const slack = figureOver('length', both, ({ reach, free }) => free - reach.longest.value);
    const missing = LINE_PRACTICE.leastSlack - slack.value;
    const longer: Remedy[] =
      missing > ROUNDING ? [{ code: 'longer-hose', amount: exactly('length', missing) }] : [];
    const remedies = [...longer, INSPECT];
    const severity = severityOf(slack);
    const about = { facts: { ...facts, slack }, value: slack, limit: least, remedies };
    if (severity === 'over' || (severity === 'unproven' && slack.tolerance !== null))
      found.push(make('line-taut', severity, about));
    else if (slack.value < LINE_PRACTICE.easySlack)
      found.push(make('line-slack-minimum', missing > ROUNDING ? 'unproven' : 'note', about));
    found.push(...bendFindings(both, asked, make));
  }
  if (asked.tie) {
    const { link, point } = asked.tie;
    const fromBody = exactly('length', point.fromBody);
    found.push(
      make('line-tie', 'note', {
        facts: {
          ...facts,
          link,
          fromBody,
          bodyNeed: exactly('length', point.bodyPart.longest.value),
          axleNeed: exactly('length', point.axlePart.longest.value),
        },
        value: fromBody,
        remedies: [{ code: 'tie-line', amount: fromBody, target: link }, INSPECT],
      }),
    );
  }
  return found;
}

function bendFindings(
  both: readonly { readonly reach: Reach; readonly free: number }[],
  { name, diameter, leastRadius }: LineAsked,
  make: (
    code: Finding['code'],
    severity: Severity,
    rest: Pick<Finding, 'facts' | 'remedies'> & Partial<Pick<Finding, 'value' | 'limit'>>,
  ) => Finding,
): Finding[] {
  const wanted = leastRadius ?? (diameter === null ? null : LINE_PRACTICE.bendPerDiameter * diameter);
  if (wanted === null) return [];
  const loopOf = ({ reach, free }: (typeof both)[number]) => slackLoop(free, reach.shortest.value);
  // A line with hardly a bow has a radius past all telling; beyond this it does not matter.
  const radius = figureOver('length', both, (each) => Math.min(STRAIGHT, loopOf(each).freeRadius));
  const arc = figureOver('length', both, (each) => Math.min(STRAIGHT, loopOf(each).arcRadius));
  if (severityOf({ ...radius, value: radius.value - wanted }) === 'fine') return [];
  if (radius.tolerance === null && radius.value >= wanted) return [];
  const limit = exactly('length', wanted);
  const severity = arc.value < wanted - (arc.tolerance ?? 0) ? 'over' : 'unproven';
  return [
    make('line-bends-tight', severity, {
      facts: { line: name, radius, arc, known: leastRadius === null ? 'usual' : 'own' },
      value: radius,
      limit,
      remedies: [{ code: 'gentler-loop' }, INSPECT],
    }),
  ];
}

const STRAIGHT = 10;
/** A micrometre: what rounding takes from a tape reading. */
const ROUNDING = 1e-6;
