/** One thing that can be chosen, with its options in a row. */
export interface ChoiceAxis {
  readonly id: string;
  /** How many options there are, 1 or more. */
  readonly options: number;
  /** True when the options stand in order (a range in steps, holes from top to bottom), so that neighbours are alike. */
  readonly isOrdered: boolean;
}

export interface ChoiceSpace {
  readonly axes: readonly ChoiceAxis[];
  /** What is there now. Of candidates that are alike, the one with the fewest changes from it stands. */
  readonly home: Candidate;
}

/** One option an axis, by number from 0, in the order of the axes. */
export type Candidate = readonly number[];

/**
 * How many candidates a space holds: the product of the options.
 * @throws when there are more than can be counted exactly (2^53) or an axis has none
 */
export function candidateCount(space: ChoiceSpace): number {
  let count = 1;
  for (const { id, options } of space.axes) {
    if (!(Number.isInteger(options) && options >= 1)) throw new Error(`axis ${id} has ${options} options`);
    count *= options;
  }
  if (count > Number.MAX_SAFE_INTEGER) throw new Error(`${count} candidates are too many to be counted`);
  return count;
}

/** The candidate with a number 0 … count − 1: the last axis turns fastest. */
export function candidateAt(space: ChoiceSpace, index: number): Candidate {
  const candidate = new Array<number>(space.axes.length);
  let rest = index;
  for (let axis = space.axes.length - 1; axis >= 0; axis -= 1) {
    const { options } = space.axes[axis];
    candidate[axis] = rest % options;
    rest = Math.floor(rest / options);
  }
  return candidate;
}

/** The number of a candidate, the inverse of `candidateAt`. */
export function indexOf(space: ChoiceSpace, candidate: Candidate): number {
  let index = 0;
  for (let axis = 0; axis < space.axes.length; axis += 1)
    index = index * space.axes[axis].options + candidate[axis];
  return index;
}

/** Axes on which two candidates differ. */
export function changedAxes(from: Candidate, to: Candidate): readonly number[] {
  const changed: number[] = [];
  for (let axis = 0; axis < from.length; axis += 1) if (from[axis] !== to[axis]) changed.push(axis);
  return changed;
}

/** One step on the way from one candidate to another, taken alone, and everything but this step. */
export interface SingleStep {
  readonly axis: number;
  /** The first candidate with this one axis as in the second. */
  readonly alone: Candidate;
  /** The second candidate with this one axis left as in the first. */
  readonly allButThis: Candidate;
}

/** What one candidate changes against another, one axis at a time: to be judged for a one-at-a-time table. */
export function singleSteps(from: Candidate, to: Candidate): readonly SingleStep[] {
  return changedAxes(from, to).map((axis) => ({
    axis,
    alone: from.with(axis, to[axis]),
    allButThis: to.with(axis, from[axis]),
  }));
}
