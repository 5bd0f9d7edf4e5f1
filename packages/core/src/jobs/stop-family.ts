import type { Broken } from './stop-drive.ts';

/** Curves of one steepness, F = full·(crush ÷ room)^power, of which a range of full forces will do. */
export interface StopFamily {
  readonly power: number;
  /** Least and most force at the end of the room [N]; null when none will do. */
  readonly range: {
    readonly least: number;
    readonly most: number;
    /** The softest or the hardest curve that was tried will do as well: the range goes on beyond it. */
    readonly isLeastOpen: boolean;
    readonly isMostOpen: boolean;
  } | null;
  /** What breaks just below and just above the range, or everywhere when there is none; sorted. */
  readonly below: readonly Broken[];
  readonly above: readonly Broken[];
}

/** Steepness of the curves that are tried: a straight spring to a wall. */
export const POWERS = [1, 1.5, 2, 3, 4.5] as const;
/** Full forces that are tried, from a stop that is hardly there to a wall, even in their logarithm [N]. */
const SOFTEST = 500;
const HARDEST = 100_000;
const FORCES = 15;
/** Halvings of the edge between two tried forces: to 1 % of the force. */
const HALVINGS = 5;

export const TRIED_FORCES: readonly number[] = Array.from(
  { length: FORCES },
  (_, k) => SOFTEST * (HARDEST / SOFTEST) ** (k / (FORCES - 1)),
);

/**
 * The widest run of tried forces that will do, its edges found by halving.
 *
 * @param judge – what a full force breaks
 * @invariant both edges of the range do themselves; just outside, within 1 %, something breaks, unless the edge is open
 */
export function familyOf(power: number, judge: (full: number) => ReadonlySet<Broken>): StopFamily {
  const tried = TRIED_FORCES.map((full) => ({ full, broken: judge(full) }));
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
  const edge = (outside: (typeof tried)[number] | undefined, does: number) => {
    if (outside === undefined) return { full: does, broken: [], isOpen: true };
    let { full: no, broken } = outside;
    let yes = does;
    for (let k = 0; k < HALVINGS; k += 1) {
      const middle = Math.sqrt(no * yes);
      const found = judge(middle);
      if (found.size === 0) yes = middle;
      else [no, broken] = [middle, found];
    }
    return { full: yes, broken: [...broken].sort(), isOpen: false };
  };
  const least = edge(tried[from - 1], tried[from].full);
  const most = edge(tried[to], tried[to - 1].full);
  return {
    power,
    range: { least: least.full, most: most.full, isLeastOpen: least.isOpen, isMostOpen: most.isOpen },
    below: least.broken,
    above: most.broken,
  };
}
