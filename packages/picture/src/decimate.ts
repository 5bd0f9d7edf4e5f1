/** A series of samples; x ascending, same length. A y that is not finite is a gap. */
export interface Samples {
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
}

/**
 * Thins a long history to what a picture can show: of all samples in one pixel column the first, the lowest, the
 * highest and the last, in their order. No peak is ever lost; a method that picks "typical" points would lose them.
 *
 * @returns pieces between gaps, each as x0, y0, x1, y1, …
 * @invariant lowest and highest y of every pixel column are among the points, and at most four points a column
 */
export const decimate = (samples: Samples, from: number, to: number, pixels: number): readonly number[][] => {
  const { x, y } = samples;
  const perUnit = pixels / (to - from || 1);
  const pieces: number[][] = [];
  let piece: number[] = [];
  let column = Number.NaN;
  let kept: number[] = [];
  const flush = (): void => {
    for (const k of [...new Set(kept)].sort((a, b) => a - b)) piece.push(x[k]!, y[k]!);
    kept = [];
  };
  const close = (): void => {
    flush();
    if (piece.length > 0) pieces.push(piece);
    piece = [];
    column = Number.NaN;
  };
  for (let k = 0; k < x.length; k += 1) {
    if (!Number.isFinite(y[k]!) || !Number.isFinite(x[k]!)) {
      close();
      continue;
    }
    const here = Math.floor((x[k]! - from) * perUnit);
    if (here !== column) {
      flush();
      column = here;
      kept = [k, k, k, k];
    } else {
      if (y[k]! < y[kept[1]!]!) kept[1] = k;
      if (y[k]! > y[kept[2]!]!) kept[2] = k;
      kept[3] = k;
    }
  }
  close();
  return pieces;
};

/** Lowest and highest finite value; null when there is none. */
export const rangeOf = (
  arrays: readonly ArrayLike<number>[],
): { readonly low: number; readonly high: number } | null => {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const array of arrays) {
    for (let k = 0; k < array.length; k += 1) {
      const value = array[k]!;
      if (Number.isFinite(value)) {
        if (value < low) low = value;
        if (value > high) high = value;
      }
    }
  }
  return high >= low ? { low, high } : null;
};
