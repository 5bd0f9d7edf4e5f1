import type { Finding } from '../finding/finding.ts';
import { ENDS, type End } from '../finding/place.ts';
import { bad, good, type Result } from '../finding/problem.ts';
import type { Rig } from '../rig/rig.ts';
import { AS_MEASURED, type Setup } from '../rig/setup.ts';
import { resolveSetup } from '../rig/setup-resolve.ts';
import { DEFAULT_SEED, drawsOf, type TrialOptions } from '../stance/draws.ts';
import { travelNeeds, travelOf } from '../travel/travel.ts';
import { worstFirst } from './check.ts';
import { type SetupFlex, setupFlex } from './flex-lines.ts';
import { changes, knockOnLines, paired } from './knock-on.ts';
import type { LinksAnswer, LinksMissing, LinksRequest, LinksRoadSpeed } from './links-answer.ts';
import { LINE_RULES } from './links-limits.ts';
import { type SetupLinks, setupLinks } from './setup-links.ts';
import { stabilityLines } from './stability-lines.ts';
import { travelColumns } from './travel-columns.ts';

/** Each trial moves both axles of both setups, and tilts them; a half-width is then good to about 10 %. */
export const LINK_TRIALS = 256;
/** When nobody says how fast a rig is driven [m/s]. */
const USUAL_SPEED = 80 / 3.6;

/**
 * What a setup does to links and to everything that moves with them: pose, curves, shaft, hoses, mounts, and the
 * knock-on list against another setup, with findings. Where links were not measured, the lines that travel, tape and
 * scales tell are there, and what is missing is named.
 *
 * @failure what `resolveSetup` says; `rig-needs-reading` for a length without which a height is not known; `links-…`
 * for a geometry that cannot be worked with or brought to its ride height
 */
export function linksRig(rig: Rig, request: LinksRequest): Result<LinksAnswer> {
  const setup = resolveSetup(rig, request.setup);
  if (!setup.ok) return setup;
  const before = resolveSetup(rig, request.against ?? AS_MEASURED);
  if (!before.ok) return before;
  const needs = [...travelNeeds(setup.value), ...travelNeeds(before.value)];
  if (needs.length > 0) return bad(...needs);
  const seed = request.seed ?? DEFAULT_SEED;
  const draws = drawsOf(rig, { trials: request.trials ?? LINK_TRIALS, seed });
  const roadSpeed = roadSpeedOf(rig, request.roadSpeed);
  const after = setupLinks(setup.value, draws, roadSpeed.speed);
  if (!after.ok) return after;
  // A setup beside itself is looked at alone: all its lines are steady.
  const alone = before.value.id === setup.value.id;
  const from = alone ? after : setupLinks(before.value, draws, roadSpeed.speed);
  if (!from.ok) return from;
  const flex = setupFlex(setup.value, draws);
  const flexBefore = alone ? flex : setupFlex(before.value, draws);
  return good({
    rig: rig.name,
    setup: setup.value.id,
    against: alone && request.against === undefined ? null : before.value.id,
    ends: after.value.ends,
    endsBefore: from.value.ends,
    articulation: { before: flexBefore.articulation, after: flex.articulation },
    pitch: { before: from.value.links.pitch, after: after.value.links.pitch },
    ...linesOf(
      { links: from.value, flex: flexBefore },
      { links: after.value, flex },
      { trials: request.trials, seed, roadSpeed: roadSpeed.speed },
    ),
    missing: ENDS.flatMap((end) => missingAt(setup.value, end)),
    roadSpeed,
    trials: draws.trials,
    seed,
  });
}

/** One side of the knock-on list. */
interface ListSide {
  readonly links: SetupLinks;
  readonly flex: SetupFlex;
}

/** All lines of two setups, those that change apart from those that stay. */
function linesOf(
  before: ListSide,
  after: ListSide,
  { roadSpeed, ...options }: TrialOptions & { readonly roadSpeed: number },
): Pick<LinksAnswer, 'knockOn' | 'steady' | 'findings'> {
  const alone = before.links === after.links;
  const draws = drawsOf(after.links.setup.rig, options);
  const fewer = { ...options, trials: options.trials ?? LINK_TRIALS };
  const stability = stabilityLines(alone ? null : before.links, after.links, { ...fewer, roadSpeed });
  const findings = [
    ...after.links.findings,
    ...withoutTwins(after),
    ...travelFindings(after.links.setup, options),
    ...stability.findings,
  ];
  const columns = ({ links, flex }: ListSide) => [
    ...travelColumns(links.setup, draws),
    ...flex.columns,
    ...links.columns,
  ];
  const own = columns(after);
  const lines = knockOnLines([...paired(alone ? own : columns(before), own), ...stability.lines], findings);
  const moved = alone ? [] : lines.filter(changes);
  return {
    knockOn: moved,
    steady: lines.filter((line) => !moved.includes(line)),
    findings: worstFirst(findings),
  };
}

/** A tip that links find off its pad over the whole travel is not told again in flex. */
function withoutTwins({ links, flex }: ListSide): readonly Finding[] {
  const told = new Set(
    links.findings.flatMap(({ code, place }) => (code === 'links-stop-off-pad' ? [place] : [])),
  );
  return flex.findings.filter(
    ({ code, place }) =>
      code !== 'flex-off-pad' || !ENDS.some((end) => told.has(end) && place.startsWith(end)),
  );
}

/** Those of the travel column that speak of a line here; `check` has them all. */
function travelFindings(setup: Setup, options: TrialOptions): readonly Finding[] {
  const spoken = new Set(Object.values(LINE_RULES).flatMap(({ findings }) => findings));
  return travelOf(setup, options).findings.filter(({ code }) => spoken.has(code));
}

function roadSpeedOf(rig: Rig, asked: number | undefined): LinksRoadSpeed {
  if (asked !== undefined) return { speed: asked, from: 'asked' };
  const speeds = Object.values(rig.courses).flatMap(({ speed }) => (speed === null ? [] : [speed]));
  return speeds.length > 0
    ? { speed: Math.max(...speeds), from: 'course' }
    : { speed: USUAL_SPEED, from: 'usual' };
}

function missingAt(setup: Setup, end: End): readonly LinksMissing[] {
  const { base } = setup.ends[end];
  if (base.kind === 'independent') return [];
  const { linkage, mounts, driveline, hose, steering, axleRatio } = base.points;
  const wanted: readonly (readonly [LinksMissing['what'], boolean])[] = [
    ['links', linkage === null],
    ['spring-mounts', mounts.spring === null],
    ['shock-mounts', mounts.shock === null],
    ['stop-mounts', mounts.stop === null],
    ['pad', mounts.stop !== null && mounts.stop.padSize === null],
    ['shaft', driveline === null],
    ['slip', driveline !== null && (driveline.slip === null || driveline.slipIn === null)],
    ['axle-ratio', driveline !== null && axleRatio === null],
    ['hose', hose === null],
    ['steering', end === 'front' && steering === null],
  ];
  return wanted.flatMap(([what, missing]) => (missing ? [{ end, what }] : []));
}
