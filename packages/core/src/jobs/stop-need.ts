import { cornerAt, type End, SIDES } from '../finding/place.ts';
import { bad, good, type Result } from '../finding/problem.ts';
import { rideModels } from '../ride/from-setup.ts';
import type { RideModel } from '../ride/model.ts';
import { runRide } from '../ride/run.ts';
import type { CourseShape } from '../rig/course-spec.ts';
import type { Rig } from '../rig/rig.ts';
import type { Setup } from '../rig/setup.ts';
import { resolveSetup } from '../rig/setup-resolve.ts';
import { NOMINAL_DRAWS } from '../stance/draws.ts';
import { travelNeeds } from '../travel/travel.ts';
import { durationOf, speedProblem, TRIAL_TOLERANCE } from './driving.ts';
import { FeltGrounds } from './felt-ground.ts';

/** A course and the speed at which it has to be driven. */
export interface Demand {
  readonly name: string;
  readonly course: CourseShape;
  /** [m/s] */
  readonly speed: number;
}

export interface StopNeedRequest {
  readonly rig: Rig;
  readonly setup: string;
  readonly end: End;
  readonly demands: readonly Demand[];
}

/** What a stop breaks: it lets the axle past the reserve, shakes the body too much, or loads its bracket too much. */
export type Broken = 'clearance' | 'body' | 'bracket';

/** Curves of one steepness, F = full·(crush ÷ room)^power, of which a range of full forces will do. */
export interface Family {
  readonly power: number;
  /** Least and most force at the end of the room [N]; null when none will do. */
  readonly range: { readonly least: number; readonly most: number } | null;
  /** What breaks just below and just above the range, or everywhere when there is none. */
  readonly below: readonly Broken[];
  readonly above: readonly Broken[];
}

/** The band of stop curves that one end of a rig needs. */
export interface StopNeed {
  readonly end: End;
  /** Crush from touch to where the reserve and the flex allowance begin [m]. */
  readonly room: number;
  /** Places of the band [m], and the least and the most force there of all curves that will do [N]; empty when none. */
  readonly crush: readonly number[];
  readonly least: readonly number[];
  readonly most: readonly number[];
  readonly families: readonly Family[];
  /**
   * Share of the asked speeds at which some stop would do; 1 when one does as asked, null when none does even at a
   * quarter of them.
   */
  readonly speedShare: number | null;
}

/** Steepness of the curves that are tried: a straight spring to a wall. */
const POWERS = [1, 1.5, 2, 3, 4.5] as const;
/** Full forces that are tried, from a stop that is hardly there to a wall, even in their logarithm [N]. */
const SOFTEST = 500;
const HARDEST = 100_000;
const FORCES = 15;
/** Halvings of the edge between two tried forces: to 1 % of the force. */
const HALVINGS = 5;
const PLACES = 24;
const TABLE_POINTS = 12;

/**
 * Which stop curves an end needs so that every demand is met: kept above reserve and flex allowance, within what the
 * owner accepts at the body and at the bracket. Each curve is driven over each course; nothing is estimated.
 *
 * A curve inside the band need not do by itself, since the band covers curves of several shapes: drive a candidate to
 * know. A curve that lies below the band everywhere runs past the reserve, one above it everywhere hits too hard.
 *
 * @validity nominal readings; curves without loss beyond the stop's rate factor; the other end keeps its stop
 * @failure as `rideRig`; `stop-no-room` when reserve and flex leave nothing to crush
 */
export function stopNeed(request: StopNeedRequest, onProgress?: (share: number) => void): Result<StopNeed> {
  const { rig, end, demands } = request;
  const problems = demands.flatMap(({ speed }) => speedProblem(speed));
  if (problems.length > 0) return bad(...problems);
  const resolved = resolveSetup(rig, request.setup);
  if (!resolved.ok) return resolved;
  const setup = resolved.value;
  const needs = travelNeeds(setup);
  if (needs.length > 0) return bad(...needs);

  const model = rideModels(setup, NOMINAL_DRAWS)(0);
  const room = roomOf(model, setup, end);
  if (!(room > 0))
    return bad({
      code: 'stop-no-room',
      where: { key: `${end}.stop.gap` },
      found: `${(room * 1000).toFixed(1)} mm`,
      accepted: 'room between touch and where flex allowance and reserve begin',
    });
  const grounds = new FeltGrounds();
  const judge = (share: number) => (power: number, full: number) =>
    brokenBy(withStop(model, end, powerCurve(room, power, full)), setup, end, demands, grounds, share);
  const families = POWERS.map((power, i) => {
    const family = familyOf(power, (full) => judge(1)(power, full));
    onProgress?.((i + 1) / (POWERS.length + 1));
    return family;
  });
  const doing = families.flatMap(({ power, range }) => (range ? [{ power, range }] : []));
  const crush = doing.length === 0 ? [] : Array.from({ length: PLACES + 1 }, (_, k) => (room * k) / PLACES);
  const across = (
    pick: (range: { least: number; most: number }) => number,
    of: (...all: number[]) => number,
  ) => crush.map((c) => of(...doing.map(({ power, range }) => pick(range) * (c / room) ** power)));
  const speedShare =
    doing.length > 0 ? 1 : slowerShare((share) => POWERS.some((power) => anyDoes(power, judge(share))));
  onProgress?.(1);
  return good({
    end,
    room,
    crush,
    least: across(({ least }) => least, Math.min),
    most: across(({ most }) => most, Math.max),
    families,
    speedShare,
  });
}

/** Crush of the worse side from touch to where flex allowance and reserve begin [m]. */
function roomOf(model: RideModel, setup: Setup, end: End): number {
  const { metal, stop } = model.axles[end];
  const keep = setup.ends[end].base.flex.value + setup.rig.limits.reserve.value;
  return Math.min(...SIDES.map((side) => metal.atCrush[side])) - keep * stop.ratio;
}

interface Curve {
  readonly crush: readonly number[];
  readonly force: readonly number[];
}

/** F = full·(c/room)^power, carried on past the room with its end slope by the table. */
function powerCurve(room: number, power: number, full: number): Curve {
  const share = Array.from({ length: TABLE_POINTS + 1 }, (_, k) => k / TABLE_POINTS);
  return { crush: share.map((s) => s * room), force: share.map((s) => full * s ** power) };
}

/** The model with another stop at one end: its curve and rate factor, no other loss. */
function withStop(model: RideModel, end: End, curve: Curve): RideModel {
  const axle = model.axles[end];
  const { halfStation, ratio, gap, rateFactor } = axle.stop;
  const stop = { halfStation, ratio, gap, rateFactor, ...curve };
  return { ...model, axles: { ...model.axles, [end]: { ...axle, stop } } };
}

/** What is broken on any demand, driven at a share of its speed. */
function brokenBy(
  model: RideModel,
  setup: Setup,
  end: End,
  demands: readonly Demand[],
  grounds: FeltGrounds,
  share: number,
): ReadonlySet<Broken> {
  const { limits } = setup.rig;
  const keep = setup.ends[end].base.flex.value + limits.reserve.value;
  const broken = new Set<Broken>();
  for (const demand of demands) {
    const track = grounds.of(demand.course, setup);
    const speed = demand.speed * share;
    const run = runRide(model, track, {
      speed,
      duration: durationOf(track, model.sprung.toFrontAxle + model.sprung.toRearAxle, speed),
      historyRate: 0,
      tolerance: TRIAL_TOLERANCE,
    });
    const corners = SIDES.map((side) => run.corners[cornerAt(end, side)]);
    if (run.status !== 'finished' || corners.some(({ clearance }) => clearance < keep))
      broken.add('clearance');
    if (run.body.peakAcceleration > limits.bodyAcceleration.value) broken.add('body');
    const { bracketForce } = limits;
    if (bracketForce && corners.some(({ peakStopForce }) => peakStopForce > bracketForce.value))
      broken.add('bracket');
  }
  return broken;
}

const forces = (): readonly number[] =>
  Array.from({ length: FORCES }, (_, k) => SOFTEST * (HARDEST / SOFTEST) ** (k / (FORCES - 1)));

/** The widest run of tried forces that do, its edges found by halving. */
function familyOf(power: number, judge: (full: number) => ReadonlySet<Broken>): Family {
  const tried = forces().map((full) => ({ full, broken: judge(full) }));
  let [from, to] = [0, 0];
  for (let i = 0; i < tried.length; i += 1) {
    let j = i;
    while (j < tried.length && tried[j].broken.size === 0) j += 1;
    if (j - i > to - from) [from, to] = [i, j];
    i = Math.max(i, j);
  }
  if (to === from) {
    const every = [...new Set(tried.flatMap(({ broken }) => [...broken]))].sort();
    return { power, range: null, below: every, above: every };
  }
  const edge = (bad: { full: number; broken: ReadonlySet<Broken> } | undefined, does: number) => {
    if (bad === undefined) return { full: does, broken: [] };
    let { full: no, broken } = bad;
    let yes = does;
    for (let k = 0; k < HALVINGS; k += 1) {
      const middle = Math.sqrt(no * yes);
      const found = judge(middle);
      if (found.size === 0) yes = middle;
      else [no, broken] = [middle, found];
    }
    return { full: yes, broken: [...broken].sort() };
  };
  const least = edge(tried[from - 1], tried[from].full);
  const most = edge(tried[to], tried[to - 1].full);
  return { power, range: { least: least.full, most: most.full }, below: least.broken, above: most.broken };
}

const anyDoes = (power: number, judge: (power: number, full: number) => ReadonlySet<Broken>): boolean =>
  forces().some((full) => judge(power, full).size === 0);

/** Largest share of the speeds, in twentieths, at which some stop does, from a quarter upward; null when none. */
function slowerShare(does: (share: number) => boolean): number | null {
  for (let k = 19; k >= 5; k -= 2) if (does(k / 20)) return k / 20;
  return null;
}
