import { CoveredShare } from './covered.ts';
import type { Member } from './merge.ts';
import { comparedMiddles, type Objective } from './objectives.ts';

const POINTS = 4096;

/**
 * A few members that stand for the whole front: first the best in each objective, then again and again the one that
 * adds most to what the list covers.
 *
 * @param most – members at most; the best in each objective come first, in the order of the objectives
 * @returns places in `members`, in the order of the choice
 * @source greedy choice for coverage, within 1 − 1/e of the best list of its length: Nemhauser, Wolsey, Fisher (1978),
 * from memory
 */
export function shortlist(
  members: readonly Member[],
  objectives: readonly Objective[],
  most: number,
): number[] {
  if (members.length === 0) return [];
  const points = members.map((member) => comparedMiddles(member, objectives));
  const low = objectives.map((_, k) => Math.min(...points.map((point) => point[k])));
  const high = objectives.map((_, k) => Math.max(...points.map((point) => point[k])));
  const wide = high.map((top, k) => top + (top - low[k] || 1) / 10);
  const covered = new CoveredShare(low, wide, POINTS, 1);
  const chosen: number[] = [];
  const choose = (place: number): void => {
    if (chosen.includes(place) || chosen.length >= most) return;
    chosen.push(place);
    covered.add(points[place]);
  };
  objectives.forEach((_, k) => {
    const best = points.map((_, i) => i).filter((i) => points[i][k] === low[k]);
    // Of several that are best, the one that covers most.
    const gains = best.map((i) => covered.gainOf(points[i]));
    if (!best.some((i) => chosen.includes(i))) choose(best[gains.indexOf(Math.max(...gains))]);
  });
  while (chosen.length < Math.min(most, members.length)) {
    const gains = points.map((point) => covered.gainOf(point));
    const most = Math.max(...gains);
    if (most === 0) break;
    choose(gains.indexOf(most));
  }
  return chosen;
}
