/**
 * Work laid out in units that can be done in any order, anywhere.
 * @invariant a unit gives the same row to the last bit whoever does it, and whatever was done before
 */
export interface Bench {
  readonly units: number;
  /** Numbers in the row of one unit. */
  readonly width: number;
  /** About how much work a unit is; only compared with other units of this bench. */
  cost(unit: number): number;
  /** Does a unit and writes its row from `at` on. */
  run(unit: number, rows: Float64Array, at: number): void;
}
