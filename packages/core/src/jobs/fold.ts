/**
 * Takes the rows of a plan in the order of its units and makes the answer, keeping only what the answer needs.
 * In order, so that sums come out the same to the last bit however the work was shared out.
 */
export interface Fold<Answer> {
  take(rows: Float64Array, at: number): void;
  /** Once, after the last unit. */
  finish(): Answer;
}
