import { type RandomStream, randomStream } from '../numerics/random.ts';
import { CoveredShare } from './covered.ts';
import { beats, type Point } from './dominance.ts';
import { comparedMiddles, type Judged } from './objectives.ts';
import { layersOf, roomOf } from './pareto.ts';
import type { Picker } from './picker.ts';
import type { SearchProblem } from './problem.ts';
import type { WhyEnded } from './search.ts';
import { partOf } from './slice.ts';
import { type Candidate, type ChoiceSpace, candidateAt, indexOf } from './space.ts';

/** Candidates kept as parents, and picked in a round: few, because a part may judge some hundreds only. */
const PARENTS = 24;
const CHILDREN = 8;
/** Points by which the growth of the front is measured. */
const POINTS = 4096;
/** How often a child is made anew when it was seen already, times the parts that it may fall into. */
const TRIES = 60;
/** Candidates looked at for each that may be judged in full: a search whose bounds discard all must end as well. */
const LOOKS = 50;

interface Parent {
  readonly candidate: Candidate;
  readonly point: Point;
}

/**
 * Picks candidates of one part of a large space: children of good parents, single changes of members of the front, and
 * now and then anything. When the front has not grown for some rounds, every single change of a member that was not
 * tried yet is tried; when that brings nothing either, the front is stable.
 *
 * @source parents by non-dominated sorting and room: Deb et al. (2002); single changes until none helps: Pareto local
 * search, Paquete, Chiarandini, Stützle (2004), from memory
 */
export class Evolving implements Picker {
  readonly #problem: SearchProblem;
  readonly #part: number;
  readonly #parts: number;
  readonly #random: RandomStream;
  readonly #seen: Set<number>;
  #looked = 0;
  #judged = 0;
  #parents: Parent[] = [];
  #covered: CoveredShare | null = null;
  readonly #counted = new Set<number>();
  #shares: number[] = [];

  /** @param seen – candidates judged elsewhere, not to be picked again */
  constructor(
    problem: SearchProblem,
    part: number,
    parts: number,
    known: readonly Judged[],
    seen: readonly number[],
  ) {
    this.#problem = problem;
    this.#part = part;
    this.#parts = parts;
    this.#random = randomStream(problem.seed, part + 1);
    this.#seen = new Set(seen);
    this.#adopt(known);
  }

  pick(front: readonly Judged[]): readonly number[] | WhyEnded {
    const { limits } = this.#problem;
    const most = Math.ceil(limits.mostJudged / this.#parts);
    if (this.#judged >= most || this.#looked >= LOOKS * most) return 'limit-reached';
    this.#measure(front);
    const isQuiet =
      this.#shares.length > limits.stableRounds &&
      this.#shares[this.#shares.length - 1] - this.#shares[this.#shares.length - 1 - limits.stableRounds] <
        limits.stableShare;
    let picked = isQuiet ? this.#singleChanges(front) : this.#children(front);
    // Nothing new came of it: what is left untried beside the front.
    if (picked.length === 0 && !isQuiet) picked = this.#singleChanges(front);
    if (picked.length === 0) return 'front-stable';
    this.#looked += picked.length;
    // No round may judge more than the limit leaves.
    return picked.slice(0, Math.max(1, most - this.#judged));
  }

  took(judged: readonly Judged[]): void {
    this.#judged += judged.length;
    this.#adopt(judged);
  }

  /** Keeps the best parents: by layer, then by room. */
  #adopt(judged: readonly Judged[]): void {
    const { space, objectives } = this.#problem;
    const all = [
      ...this.#parents,
      ...judged.map((one) => ({
        candidate: candidateAt(space, one.index),
        point: comparedMiddles(one, objectives),
      })),
    ];
    if (all.length <= PARENTS) {
      this.#parents = all;
      return;
    }
    const layers = layersOf(all.map(({ point }) => point));
    const chosen: Parent[] = [];
    for (let layer = 0; chosen.length < PARENTS; layer += 1) {
      const members = all.filter((_, i) => layers[i] === layer);
      const room = roomOf(members.map(({ point }) => point));
      const order = members.map((_, i) => i).sort((a, b) => room[b] - room[a] || a - b);
      for (const i of order.slice(0, PARENTS - chosen.length)) chosen.push(members[i]);
    }
    this.#parents = chosen;
  }

  /** Share of the box that the front covers by now. */
  #measure(front: readonly Judged[]): void {
    const { objectives, seed } = this.#problem;
    if (this.#covered === null) {
      if (this.#parents.length === 0) return;
      const { low, high } = boxAround(this.#parents.map(({ point }) => point));
      this.#covered = new CoveredShare(low, high, POINTS, seed);
    }
    for (const judged of front) {
      if (this.#counted.has(judged.index)) continue;
      this.#counted.add(judged.index);
      this.#covered.add(comparedMiddles(judged, objectives));
    }
    this.#shares.push(this.#covered.share);
  }

  #children(front: readonly Judged[]): number[] {
    const { space } = this.#problem;
    const children: number[] = [];
    for (let tries = TRIES * CHILDREN * this.#parts; tries > 0 && children.length < CHILDREN; tries -= 1) {
      const child = this.#child(front);
      const index = indexOf(space, child);
      if (this.#isNew(index)) children.push(index);
    }
    return children;
  }

  /** True once for a candidate of this part. */
  #isNew(index: number): boolean {
    if (this.#seen.has(index)) return false;
    if (partOf(index, this.#parts, this.#problem.seed) !== this.#part) return false;
    this.#seen.add(index);
    return true;
  }

  #child(front: readonly Judged[]): Candidate {
    const { space } = this.#problem;
    const kind = this.#random.below(10);
    if (this.#parents.length < 2 || front.length === 0 || kind === 0) return anyOf(space, this.#random);
    if (kind < 6) {
      const member = candidateAt(space, front[this.#random.below(front.length)].index);
      const axis = this.#random.below(space.axes.length);
      return member.with(axis, changed(space, member, axis, this.#random));
    }
    return mixedOf(space, this.#better(), this.#better(), this.#random);
  }

  /** The better of two parents: who beats the other, else the first drawn. */
  #better(): Candidate {
    const one = this.#parents[this.#random.below(this.#parents.length)];
    const other = this.#parents[this.#random.below(this.#parents.length)];
    return (beats(other.point, one.point) ? other : one).candidate;
  }

  /** Candidates of this part that differ from a member of the front in one axis and were not tried. */
  #singleChanges(front: readonly Judged[]): number[] {
    const { space } = this.#problem;
    const left: number[] = [];
    for (const { index } of front) {
      const member = candidateAt(space, index);
      space.axes.forEach(({ options }, axis) => {
        for (let option = 0; option < options; option += 1) {
          if (left.length >= CHILDREN || option === member[axis]) continue;
          const other = indexOf(space, member.with(axis, option));
          if (this.#isNew(other)) left.push(other);
        }
      });
      if (left.length >= CHILDREN) break;
    }
    return left;
  }
}

/** Half a range of room below what is known by now, for what is still to be found. */
function boxAround(points: readonly Point[]): { readonly low: number[]; readonly high: number[] } {
  const low = [...points[0]];
  const high = [...points[0]];
  for (const point of points)
    for (let k = 0; k < point.length; k += 1) {
      low[k] = Math.min(low[k], point[k]);
      high[k] = Math.max(high[k], point[k]);
    }
  for (let k = 0; k < low.length; k += 1) {
    const range = high[k] - low[k] || 1;
    low[k] -= range / 2;
    high[k] += range / 100;
  }
  return { low, high };
}

const anyOf = (space: ChoiceSpace, random: RandomStream): Candidate =>
  space.axes.map(({ options }) => random.below(options));

/** Another option of an axis: a step or a few where the options stand in order, else any other. */
function changed(space: ChoiceSpace, candidate: Candidate, axis: number, random: RandomStream): number {
  const { options, isOrdered } = space.axes[axis];
  if (options === 1) return 0;
  if (!isOrdered) return (candidate[axis] + 1 + random.below(options - 1)) % options;
  let steps = 1;
  while (steps < options - 1 && random.below(2) === 0) steps += 1;
  const option = candidate[axis] + (random.below(2) === 0 ? steps : -steps);
  // Past an end it comes back from there.
  return Math.min(
    options - 1,
    Math.max(0, option < 0 ? -option : option >= options ? 2 * (options - 1) - option : option),
  );
}

/** A child of two: each axis from one of them, and about one axis changed. */
function mixedOf(space: ChoiceSpace, mother: Candidate, father: Candidate, random: RandomStream): Candidate {
  const child = mother.map((option, axis) => (random.below(2) === 0 ? option : father[axis]));
  for (let axis = 0; axis < child.length; axis += 1)
    if (random.below(child.length) === 0) child[axis] = changed(space, child, axis, random);
  return child;
}
