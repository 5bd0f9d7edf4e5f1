import type { Finding } from '../finding/finding.ts';
import { ENDS, type End, type Side } from '../finding/place.ts';
import { bad, good, type Result } from '../finding/problem.ts';
import { curvesOf } from '../linkage/curves.ts';
import { linkProblemsOf, linksOf as linksAt, type RigLinks } from '../linkage/from-setup.ts';
import { dragLinkOf, hosesOf } from '../linkage/lines-from-setup.ts';
import { geometryAsMeasured } from '../linkage/measured-geometry.ts';
import { type Reach, reachOf, tiePointOn } from '../linkage/reach.ts';
import { shaftIn } from '../linkage/shaft.ts';
import { shaftOf } from '../linkage/shaft-from-setup.ts';
import { type ShaftTravel, shaftOver } from '../linkage/shaft-travel.ts';
import { posesOn, sampleRange, type TravelRange } from '../linkage/travel-range.ts';
import type { Setup } from '../rig/setup.ts';
import { centresOfGravity } from '../stance/centre-of-gravity.ts';
import type { Draws } from '../stance/draws.ts';
import { movesOf } from '../stance/moves.ts';
import { weightsOf } from '../stance/weights.ts';
import { type EndExtremes, type EndInTrial, endInTrial } from './end-in-trial.ts';
import { endLines } from './end-lines.ts';
import { columnBook, type LinkColumn } from './link-columns.ts';
import type { EndLinksAnswer } from './links-answer.ts';
import { endFindings } from './links-findings.ts';
import { type SampledTravel, sampledTravel } from './travel-columns.ts';

/** Links of one setup: what is drawn, every line sampled, and what they say. */
export interface SetupLinks {
  readonly setup: Setup;
  readonly links: RigLinks;
  readonly ends: Readonly<Record<End, EndLinksAnswer | null>>;
  readonly columns: readonly LinkColumn[];
  readonly findings: readonly Finding[];
}

/** Places along each wheel's travel: lengths and angles vary smoothly, and the peaks are refined. */
const COARSE = { across: 5 };
/** Curves: so many poses to each side of ride height. */
const BUMP_STEPS = 12;
const ROLL_STEPS = 4;

/**
 * Everything that follows the links of a setup, with trials.
 *
 * @param roadSpeed – at which shafts are judged [m/s]
 * @failure `links-…` where a geometry cannot be worked with, or cannot be brought to the ride height of the setup
 */
export function setupLinks(setup: Setup, draws: Draws, roadSpeed: number): Result<SetupLinks> {
  const problems = linkProblemsOf(setup);
  if (problems.length > 0) return bad(...problems);
  const travel = { front: sampledTravel(setup, 'front', draws), rear: sampledTravel(setup, 'rear', draws) };
  const liftIn = (i: number) => ({ front: travel.front.height[i], rear: travel.rear.height[i] });
  const found = linksAt(setup, { lift: liftIn(0) });
  if (!found.ok) return found;
  const links = found.value;
  const weights = weightsOf(setup, draws);
  const moves = { front: movesOf(setup, 'front', draws), rear: movesOf(setup, 'rear', draws) };
  const cgHeight = centresOfGravity(setup, weights, moves, draws).whole.height;
  const whole = { wheelbase: setup.rig.wheelbase.value, cgHeight: cgHeight[0] };
  const drawn = {
    front: drawnEnd(setup, 'front', links, travel.front, whole),
    rear: drawnEnd(setup, 'rear', links, travel.rear, whole),
  };
  const book = columnBook(draws.trials + 1);
  const parts: Record<End, EndInTrial[]> = { front: [], rear: [] };
  const asMeasured: Setup = { ...setup, ends: { front: bare(setup, 'front'), rear: bare(setup, 'rear') } };
  for (let i = 0; i <= draws.trials; i += 1) {
    const read = draws.trial(i);
    const here = i === 0 ? links : valueOrNull(linksAt(setup, { lift: liftIn(i), read }));
    for (const end of ENDS) {
      const at = here?.ends[end];
      const extremes = drawn[end]?.extremes;
      const measured = geometryAsMeasured(asMeasured, end, read);
      if (!here || !at || !extremes || !measured) continue;
      const of = travel[end];
      const range: TravelRange = { ...extremes.range, bump: of.bump[i], droop: of.droop[i] };
      const inTrial = endInTrial(setup, end, { links: here, at, read }, extremes, range);
      parts[end].push(inTrial);
      endLines(
        {
          setup,
          end,
          read,
          links: here,
          at,
          measured,
          range,
          parts: inTrial,
          cgHeight: cgHeight[i],
          wheelbase: read(setup.rig.wheelbase),
          roadSpeed,
          coilAtRide: moves[end].coilLength?.[i] ?? null,
          lift: of.height[i],
        },
        book.put(i),
      );
    }
  }
  const columns = book.columns().map((column) => {
    const { unsure } = travel[column.place as End];
    return { ...column, unsure };
  });
  const findings = ENDS.flatMap((end) => {
    const one = drawn[end];
    return one
      ? endFindings(setup, end, { answer: one.answer, parts: parts[end], columns, draws, roadSpeed })
      : [];
  });
  const ends = { front: drawn.front?.answer ?? null, rear: drawn.rear?.answer ?? null };
  return good({ setup, links, ends, columns, findings });
}

const bare = (setup: Setup, end: End) => ({ ...setup.ends[end], patch: {} });
const valueOrNull = <T>(result: Result<T>): T | null => (result.ok ? result.value : null);

/** One end at the nominal readings: what a view draws, and where everything is at its furthest. */
function drawnEnd(
  setup: Setup,
  end: End,
  links: RigLinks,
  travel: SampledTravel,
  whole: { readonly wheelbase: number; readonly cgHeight: number },
) {
  const at = links.ends[end];
  if (!at) return null;
  const { geometry } = at;
  const steering = setup.ends[end].base.points.steering;
  const range = {
    bump: travel.bump[0],
    droop: travel.droop[0],
    lock: steering?.lock?.value ?? 0,
    droopEnds: travel.droopEnds,
  };
  const most = Math.asin(Math.min(1, (range.bump + range.droop) / (2 * geometry.halfTrack)));
  const dragLink = dragLinkOf(setup, end, links);
  const curves = curvesOf(geometry, {
    bumps: [
      ...even(range.droop, BUMP_STEPS)
        .map((x) => -x)
        .reverse(),
      0,
      ...even(range.bump, BUMP_STEPS),
    ],
    rolls: [
      ...even(most, ROLL_STEPS)
        .map((x) => -x)
        .reverse(),
      0,
      ...even(most, ROLL_STEPS),
    ],
    end,
    anti: { ...whole, driveShare: 1, brakeShare: 1 },
    ...(dragLink && { dragLink }),
  });
  const poses = posesOn(geometry);
  const sampled = sampleRange(geometry, { ...range, lock: 0 }, poses, COARSE);
  const steered = sampleRange(geometry, range, poses, COARSE);
  const shaft = shaftOf(setup, end, links);
  const shaftTravel: ShaftTravel | null = shaft && shaftOver(shaft, geometry, sampled);
  const reaches = new Map<Side | 'middle', Reach>();
  const hoses = hosesOf(setup, end, links).flatMap(({ side, line, freeLength, tieTo }) => {
    const over = line.kingpin ? steered : sampled;
    const reach = reachOf(line, geometry, over);
    if (!reach) return [];
    reaches.set(side ?? 'middle', reach);
    const link = tieTo === null ? undefined : geometry.links.find(({ id }) => id === tieTo);
    const point = link && tiePointOn(link, line, geometry, over);
    return [{ side, line, freeLength, reach, tie: link && point ? { link: link.id, point } : null }];
  });
  const answer: EndLinksAnswer = {
    geometry,
    range,
    curves,
    shaft: shaft &&
      shaftTravel && {
        shaft,
        travel: shaftTravel,
        overBump: [...curves.bumps].map((bump) => {
          const pose = poses(bump, 0);
          return pose && shaftIn(shaft, geometry, pose);
        }),
      },
    hoses,
    dragLink,
  };
  const extremes: EndExtremes = { range, shaft: shaftTravel, reaches };
  return { answer, extremes };
}

/** Evenly up to a far end, without zero. */
const even = (far: number, steps: number): number[] =>
  Array.from({ length: steps }, (_, k) => (far * (k + 1)) / steps);
