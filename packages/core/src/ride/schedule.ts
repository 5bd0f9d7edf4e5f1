import type { SampledSide, Track } from '../course/sampled.ts';

/** At least this many steps of three looks each over the shortest thing on the ground, so that none is jumped. */
const STEPS_PER_FEATURE = 2;
/** Ground that bends less than this between two samples is straight [m]. */
const STRAIGHT = 1e-9;

/** Where a ride goes, as far as its steps have to know. */
interface Passage {
  readonly speed: number;
  readonly wheelbase: number;
  readonly duration: number;
  /** Longest step anywhere [s]. */
  readonly longest: number;
}

interface Schedule extends Passage {
  readonly rows: Float64Array;
}

const SAME = ['speed', 'wheelbase', 'duration', 'longest'] as const;

const made = new WeakMap<Track, Schedule>();

/**
 * Times at which a tyre meets a place where the ground changes its law, rising, the end of the ride last; behind each the
 * longest step before it. While all tyres roll over straight ground nothing can be jumped there.
 * @returns time, longest step, time, longest step … [s]
 */
export function scheduleOf(track: Track, passage: Passage): Float64Array {
  const before = made.get(track);
  if (before && SAME.every((key) => before[key] === passage[key])) return before.rows;
  const rows = makeSchedule(track, passage);
  made.set(track, { ...passage, rows });
  return rows;
}

function makeSchedule(
  { left, right, shortestFeature }: Track,
  { speed, wheelbase, duration, longest }: Passage,
) {
  const times = [left, right]
    .flatMap((side) => side.breaks)
    .flatMap((distance) => [distance / speed, (distance + wheelbase) / speed])
    .filter((t) => t > 0 && t < duration);
  const ends = Float64Array.from(new Set([...times, duration])).sort();
  const overFeatures = Math.min(longest, shortestFeature / speed / STEPS_PER_FEATURE);
  const sides = left === right ? [left] : [left, right];
  const straight = sides.map(straightStretches);
  const rows = new Float64Array(2 * ends.length);
  let from = 0;
  for (const [k, to] of ends.entries()) {
    const distance = (speed * (from + to)) / 2;
    const isFree = sides.every((side, i) =>
      [distance, distance - wheelbase].every((under) => straight[i][stretchOf(side, under)]),
    );
    rows[2 * k] = to;
    rows[2 * k + 1] = isFree ? longest : overFeatures;
    from = to;
  }
  return rows;
}

/** Number of breaks up to a distance. */
function stretchOf({ breaks }: SampledSide, distance: number): number {
  let low = 0;
  let high = breaks.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (breaks[middle] <= distance) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Whether the ground is straight before the first break, between the first and the second … behind the last. */
function straightStretches({ breaks, origin, step, samples }: SampledSide): readonly boolean[] {
  const pieces = samples.length / 2 - 1;
  const bends = (piece: number): boolean => {
    const i = 2 * piece;
    const rise = samples[i + 2] - samples[i];
    return [samples[i + 1], samples[i + 3]].some((slope) => Math.abs(rise - step * slope) > STRAIGHT);
  };
  const edges = [-Infinity, ...breaks, Infinity].map((edge) =>
    Math.min(pieces, Math.max(0, (edge - origin) / step)),
  );
  return edges.slice(1).map((to, k) => {
    // A sample stands on a break, but for rounding.
    const last = Math.ceil(to - 1e-6);
    for (let piece = Math.floor(edges[k] + 1e-6); piece < last; piece += 1) if (bends(piece)) return false;
    return true;
  });
}
