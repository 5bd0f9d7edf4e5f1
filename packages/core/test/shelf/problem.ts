/**
 * A problem of the shelf: q″ = f(t, q, q′) whose answer is known in closed form. The answers have tests of their own,
 * so that an integrator that disagrees with them is wrong.
 */
export interface ShelfProblem {
  readonly name: string;
  readonly position: readonly number[];
  readonly speed: readonly number[];
  readonly duration: number;
  /**
   * The whole law, switches included: what a solver sees that does not look for them.
   * @param passed – how many switches lie behind: the law of that piece, gone on with smoothly wherever the state is
   */
  accelerate(
    time: number,
    position: Float64Array,
    speed: Float64Array,
    out: Float64Array,
    passed?: number,
  ): void;
  exact(time: number): Motion;
  /** Times at which the law switches, rising, in closed form. Between two of them everything is smooth. */
  readonly switches: readonly number[];
  /** Largest acceleration of the answer [m/s²]: what a difference of it is held against. */
  readonly size: number;
}

export interface Motion {
  readonly position: readonly number[];
  readonly speed: readonly number[];
}
