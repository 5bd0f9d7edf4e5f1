import type { End } from '../finding/place.ts';
import { linkProblemsOf, linksOf } from '../linkage/from-setup.ts';
import type { StrutId } from '../linkage/geometry.ts';
import { ratioTables, type StrutTable } from '../linkage/ratio-tables.ts';
import { type KnownPaths, PATH_ELEMENTS, type PathElement } from '../rig/known-paths.ts';
import type { Setup } from '../rig/setup.ts';
import { NOMINAL_DRAWS } from '../stance/draws.ts';
import { movesOf } from '../stance/moves.ts';
import type { ElementPath } from './model.ts';

/** A path, and where it counts. */
export interface MountedPath extends ElementPath {
  /** Half the distance between left and right at which axle travel counts [m]. */
  readonly halfStation: number;
}

/** Null where mounts or links were not measured: then the typed ratio holds, the same over all travel. */
export type ElementPaths = Readonly<Record<PathElement, MountedPath | null>>;

const NONE: ElementPaths = { spring: null, shock: null, stop: null };

/** Farther than any axle of a rig goes from ride height [m]; the tables end where the links do. Roll is not asked for. */
const RANGE = { bump: 0.25, droop: 0.25, roll: 0 };

const known = new WeakMap<Setup, Readonly<Record<End, ElementPaths>>>();

/**
 * Paths of spring, shock and stop of both ends, from the links at the ride height of a setup.
 *
 * @validity nominal readings in all trials. Left and right are taken alike, by the mean of their tables: a Panhard makes
 * them differ a little. What the tables leave out of roll is told at `ratioTables`. Links that cannot be worked with give
 * none; `lastinch links` says what is wrong with them.
 */
export function pathsOf(setup: Setup): Readonly<Record<End, ElementPaths>> {
  const before = known.get(setup);
  if (before) return before;
  const paths = measured(setup);
  known.set(setup, paths);
  return paths;
}

/** Which of them there are. */
export function knownPaths(setup: Setup): KnownPaths {
  const paths = pathsOf(setup);
  const of = (end: End) => PATH_ELEMENTS.filter((element) => paths[end][element] !== null);
  return { front: of('front'), rear: of('rear') };
}

function measured(setup: Setup): Readonly<Record<End, ElementPaths>> {
  if (linkProblemsOf(setup).length > 0) return { front: NONE, rear: NONE };
  const lift = (end: End): number => movesOf(setup, end, NOMINAL_DRAWS).height[0];
  const links = linksOf(setup, { lift: { front: lift('front'), rear: lift('rear') } });
  if (!links.ok) return { front: NONE, rear: NONE };
  const pathsAt = (end: End): ElementPaths => {
    const at = links.value.ends[end];
    if (!at || Object.keys(at.geometry.struts).length === 0) return NONE;
    const tables = ratioTables(at.geometry, RANGE);
    const both = (element: PathElement): MountedPath | null => {
      const [left, right] = (['left', 'right'] as const).map(
        (side) => tables[`${element}-${side}` as StrutId],
      );
      return left && right ? meanOf(left, right) : null;
    };
    return { spring: both('spring'), shock: both('shock'), stop: both('stop') };
  };
  return { front: pathsAt('front'), rear: pathsAt('rear') };
}

/** The mean of both sides over the travel that both reach. */
function meanOf(left: StrutTable, right: StrutTable): MountedPath {
  const travel = left.travel.filter((place) => right.travel.includes(place));
  const mean = (of: (table: StrutTable) => readonly number[]): number[] =>
    travel.map(
      (place) => (of(left)[left.travel.indexOf(place)] + of(right)[right.travel.indexOf(place)]) / 2,
    );
  return {
    halfStation: (Math.abs(left.station) + Math.abs(right.station)) / 2,
    travel,
    compression: mean(({ compression }) => compression),
    ratio: mean(({ ratio }) => ratio),
  };
}
