import { type Comparison, comparisonOf } from './compare.ts';
import { comparedMiddles, type Judged, type Objective } from './objectives.ts';
import { type RankHeld, rangesOf, ranksHeld } from './rank.ts';

/** Why a member stands on the front. Objectives and members by number; amounts as the objectives are. */
export type Reason =
  /** Nobody on the front is better in it. `next` is the next better one's lag, null when all are alike in it. */
  | {
      readonly code: 'best';
      readonly objective: number;
      readonly next: number | null;
      readonly alike: number;
    }
  /** Nobody with as little of `within` or less is better in `objective`. */
  | { readonly code: 'best-within'; readonly objective: number; readonly within: number }
  /** Its farthest lag behind the best, as a share of the range, is the smallest of all, and no lag at the end of it. */
  | { readonly code: 'most-even'; readonly lag: number }
  /**
   * One objective alone keeps it: `rival` is nowhere worse but there, by `by` as a share of the range. Of all rivals
   * the nearest.
   */
  | { readonly code: 'kept-by'; readonly objective: number; readonly rival: number; readonly by: number }
  /** It is the only one: nobody is better in anything. */
  | { readonly code: 'alone' }
  /** The others are each worse in several objectives. */
  | { readonly code: 'between' };

/** What limits a member: the objective in which it is farthest behind the best of the front. */
export interface Limited {
  readonly objective: number;
  /** As the objective is, and as a share of the front's range. */
  readonly behind: number;
  readonly lag: number;
}

export interface MemberReasons {
  readonly index: number;
  readonly reasons: readonly Reason[];
  /** Null for one that is nowhere behind. */
  readonly limited: Limited | null;
  /** Against those judged whatever comes, in their order. */
  readonly against: readonly Comparison[];
  /** Against the members that stand nearest. */
  readonly neighbours: readonly Comparison[];
  readonly rank: RankHeld;
}

const NEIGHBOURS = 2;
/** A lag of more than this is not even. */
const MOST_EVEN = 0.75;
/** Reasons of the kind `best-within`: more of them say nothing more. */
const MOST_WITHIN = 3;

/**
 * Why each member stands where it does.
 * @param always – whom each is compared with beside its neighbours: do nothing, only the settings
 */
export function reasonsOf(
  members: readonly Judged[],
  always: readonly Judged[],
  objectives: readonly Objective[],
): MemberReasons[] {
  const points = members.map((member) => comparedMiddles(member, objectives));
  const ranges = rangesOf(members, objectives);
  const low = objectives.map((_, k) => Math.min(...points.map((point) => point[k])));
  const lags = points.map((point) => point.map((value, k) => (value - low[k]) / ranges[k]));
  const farthest = lags.map((lag) => Math.max(...lag));
  const even = Math.min(...farthest);
  const isEven = (m: number): boolean =>
    members.length > 2 &&
    even <= MOST_EVEN &&
    farthest[m] === even &&
    farthest.filter((lag) => lag === even).length === 1;
  const ranks = ranksHeld(members, objectives);
  return members.map((member, m) => {
    const reasons: Reason[] =
      members.length === 1
        ? [{ code: 'alone' }]
        : [
            ...bestIn(points, m),
            ...bestWithin(points, m),
            ...(isEven(m) ? [{ code: 'most-even', lag: even } as const] : []),
            ...keptBy(members, points, ranges, m),
          ];
    const worst = lags[m].indexOf(farthest[m]);
    const best = Math.min(...members.map(({ objectives: of }) => of[worst].middle));
    return {
      index: member.index,
      reasons: reasons.length > 0 ? reasons : [{ code: 'between' }],
      limited:
        farthest[m] === 0
          ? null
          : { objective: worst, behind: member.objectives[worst].middle - best, lag: farthest[m] },
      against: always
        .filter(({ index }) => index !== member.index)
        .map((other) => comparisonOf(member, other, objectives)),
      neighbours: nearest(lags, m).map((n) => comparisonOf(member, members[n], objectives)),
      rank: ranks[m],
    };
  });

  function bestIn(all: readonly number[][], m: number): Reason[] {
    return objectives.flatMap((objective, k): Reason[] => {
      if (all[m][k] !== low[k]) return [];
      const others = all.filter((_, i) => i !== m).map((point) => point[k]);
      const behind = others.filter((value) => value > low[k]);
      // Where all are alike nobody is best.
      if (others.length > 0 && behind.length === 0) return [];
      const step = objective.resolution > 0 ? objective.resolution : 1;
      return [
        {
          code: 'best',
          objective: k,
          next: behind.length === 0 ? null : (Math.min(...behind) - low[k]) * step,
          alike: others.length - behind.length,
        },
      ];
    });
  }

  /** Pairs in which it is the best one can get for what it costs; not where it is the best anyway, or nobody is left. */
  function bestWithin(all: readonly number[][], m: number): Reason[] {
    const found: (Reason & { readonly room: number })[] = [];
    objectives.forEach((_, k) => {
      if (all[m][k] === low[k]) return;
      objectives.forEach((__, j) => {
        if (j === k || all[m][j] === low[j]) return;
        const within = all.filter((point, i) => i !== m && point[j] <= all[m][j]);
        if (within.length === 0 || within.some((point) => point[k] <= all[m][k])) return;
        found.push({ code: 'best-within', objective: k, within: j, room: within.length });
      });
    });
    // The more it leaves behind, the more it says.
    return found
      .sort((a, b) => b.room - a.room)
      .slice(0, MOST_WITHIN)
      .map(({ room: _, ...reason }) => reason);
  }
}

/** The one objective in which the nearest rival falls short, when there is a rival that falls short in one alone. */
function keptBy(
  members: readonly Judged[],
  points: readonly (readonly number[])[],
  ranges: readonly number[],
  m: number,
): Reason[] {
  let kept: (Reason & { readonly by: number }) | null = null;
  for (let r = 0; r < points.length; r += 1) {
    if (r === m) continue;
    const short = points[r].flatMap((value, k) => (value > points[m][k] ? [k] : []));
    if (short.length !== 1) continue;
    const [objective] = short;
    const by = (points[r][objective] - points[m][objective]) / ranges[objective];
    if (kept === null || by < kept.by) kept = { code: 'kept-by', objective, rival: members[r].index, by };
  }
  return kept === null ? [] : [kept];
}

/** Members nearest to one, by the distance in shares of the ranges. */
function nearest(lags: readonly (readonly number[])[], m: number): number[] {
  const distance = lags.map((lag) => lag.reduce((sum, value, k) => sum + (value - lags[m][k]) ** 2, 0));
  return lags
    .map((_, i) => i)
    .filter((i) => i !== m)
    .sort((a, b) => distance[a] - distance[b] || a - b)
    .slice(0, NEIGHBOURS);
}
