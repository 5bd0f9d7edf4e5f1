/** A label that wants to stand at a height. */
export interface Wish {
  /** Where its middle would stand best. */
  readonly at: number;
  /** Height that it takes, with the space around it. */
  readonly height: number;
}

/**
 * Moves labels apart along one line so that none overlaps, each as near to its wish as the others allow
 * (least squares), all within `bottom…top`.
 *
 * Pools of labels that touch move as one block to the mean of their wishes: the pool-adjacent-violators algorithm
 * for isotonic regression, applied to the wishes less the heights below them.
 *
 * @param wishes – in ascending order of `at`
 * @returns middles in the same order; null when they cannot fit, and the caller has to leave some out.
 * @source Robertson, Wright, Dykstra: Order Restricted Statistical Inference (1988), section 1.2 (from memory).
 */
export const spreadLabels = (
  wishes: readonly Wish[],
  bottom: number,
  top: number,
): readonly number[] | null => {
  const total = wishes.reduce((sum, wish) => sum + wish.height, 0);
  if (total > top - bottom + 1e-12) return null;
  // Reduced place of a label: its middle less everything that must lie below it. Order is then all that is asked.
  const below: number[] = [];
  let sum = 0;
  for (const wish of wishes) {
    below.push(sum + wish.height / 2);
    sum += wish.height;
  }
  const pools: { mean: number; count: number }[] = [];
  wishes.forEach((wish, k) => {
    pools.push({ mean: wish.at - below[k]!, count: 1 });
    while (pools.length > 1 && pools[pools.length - 2]!.mean > pools[pools.length - 1]!.mean) {
      const upper = pools.pop()!;
      const lower = pools.pop()!;
      const count = upper.count + lower.count;
      pools.push({ mean: (upper.mean * upper.count + lower.mean * lower.count) / count, count });
    }
  });
  const places = pools.flatMap((pool) => new Array<number>(pool.count).fill(pool.mean));
  return places.map((place, k) => Math.min(Math.max(place, bottom), top - total) + below[k]!);
};
