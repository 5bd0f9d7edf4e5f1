/** One closed or half loop that rainflow counting found. */
export interface Cycle {
  readonly range: number;
  readonly mean: number;
  /** 1 for a closed loop, 0.5 for one that stays open. */
  readonly count: 1 | 0.5;
}

/**
 * Loops of a history, by rainflow counting.
 *
 * @param history – values in time; only their turning points matter
 * @source ASTM E1049-85 (2017), section 5.4.4
 */
export function rainflow(history: ArrayLike<number>): readonly Cycle[] {
  const cycles: Cycle[] = [];
  const open: number[] = [];
  const add = (from: number, to: number, count: 1 | 0.5) =>
    cycles.push({ range: Math.abs(to - from), mean: (from + to) / 2, count });
  for (const peak of turningPoints(history)) {
    open.push(peak);
    while (open.length >= 3) {
      const [y0, y1, x1] = open.slice(-3);
      if (Math.abs(x1 - y1) < Math.abs(y1 - y0)) break;
      if (open.length === 3) {
        // The range holds the start of the history: half a loop, and the start moves on.
        add(y0, y1, 0.5);
        open.shift();
      } else {
        add(y0, y1, 1);
        open.splice(-3, 2);
      }
    }
  }
  for (let i = 1; i < open.length; i += 1) add(open[i - 1], open[i], 0.5);
  return cycles;
}

/** First value, every value at which the history turns round, last value. */
export function turningPoints(history: ArrayLike<number>): readonly number[] {
  const points: number[] = [];
  for (let i = 0; i < history.length; i += 1) {
    const value = history[i];
    const last = points.length - 1;
    if (last >= 0 && value === points[last]) continue;
    const goesOn = last >= 1 && (value - points[last]) * (points[last] - points[last - 1]) > 0;
    if (goesOn) points[last] = value;
    else points.push(value);
  }
  return points;
}

/**
 * Miner's sum: each loop uses up its count ÷ the loops of its range that a part bears.
 * @param lifeAt – loops to failure at a range
 * @source Miner, J. Appl. Mech. 12 (1945) A159
 */
export function minerSum(cycles: readonly Cycle[], lifeAt: (range: number) => number): number {
  return cycles.reduce((sum, { range, count }) => sum + count / lifeAt(range), 0);
}

/** The one range that, as often, would do the same harm where life goes with range^(−slope). */
export function equivalentRange(cycles: readonly Cycle[], slope: number): number {
  const loops = cycles.reduce((sum, { count }) => sum + count, 0);
  return (cycles.reduce((sum, { range, count }) => sum + count * range ** slope, 0) / loops) ** (1 / slope);
}
