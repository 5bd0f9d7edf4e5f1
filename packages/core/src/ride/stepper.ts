/** dy/dt = f(t, y), written into `out`. */
export type Derivative = (time: number, state: Float64Array, out: Float64Array) => void;

/** Weights of the third-order result: for sums over the stages of an accepted step. */
export const STAGE_WEIGHTS = [2 / 9, 1 / 3, 4 / 9] as const;

/** Error weights: third-order result minus embedded second-order one. They add to zero. */
export const ERROR_WEIGHTS = [-5 / 72, 1 / 12, 1 / 9, -1 / 8] as const;

export const ORDER = 3;

/**
 * One explicit Runge–Kutta step of third order with an embedded second-order one; the last stage is the first of the
 * next step. All memory is made once here; a step allocates nothing.
 *
 * @source Bogacki and Shampine, Appl. Math. Lett. 2 (1989) 321
 */
export interface Stepper {
  /** State at the start of the step; after `accept`, at its end. */
  state: Float64Array;
  /** State tried at the end of the step. */
  trial: Float64Array;
  /** Derivative at the start, at the two inner stages, and at the trial end. */
  start: Float64Array;
  readonly second: Float64Array;
  readonly third: Float64Array;
  end: Float64Array;
  /**
   * Tries a step; `start` must hold the derivative at `state`.
   * @returns largest local error ÷ scale over the scaled components; NaN when the state is not finite
   */
  attempt(time: number, step: number): number;
  /** Makes the trial the new state; its derivative becomes the new `start`. */
  accept(): void;
  /** Derivative evaluations so far, `attempt` only. */
  evaluations: number;
}

/**
 * @param derivative – right-hand side
 * @param size – length of the state
 * @param scale – local error accepted in each of the first scale.length components, in their own units
 */
export function makeStepper(derivative: Derivative, size: number, scale: Float64Array): Stepper {
  const [e1, e2, e3, e4] = ERROR_WEIGHTS;
  const [b1, b2, b3] = STAGE_WEIGHTS;
  const inner = new Float64Array(size);
  const stepper: Stepper = {
    state: new Float64Array(size),
    trial: new Float64Array(size),
    start: new Float64Array(size),
    second: new Float64Array(size),
    third: new Float64Array(size),
    end: new Float64Array(size),
    evaluations: 0,

    attempt(time, step) {
      const { state, trial, start, second, third, end } = stepper;
      const half = step / 2;
      for (let i = 0; i < size; i += 1) inner[i] = state[i] + half * start[i];
      derivative(time + half, inner, second);
      const threeQuarters = 0.75 * step;
      for (let i = 0; i < size; i += 1) inner[i] = state[i] + threeQuarters * second[i];
      derivative(time + threeQuarters, inner, third);
      for (let i = 0; i < size; i += 1) {
        trial[i] = state[i] + step * (b1 * start[i] + b2 * second[i] + b3 * third[i]);
      }
      derivative(time + step, trial, end);
      stepper.evaluations += 3;
      let worst = 0;
      for (let i = 0; i < scale.length; i += 1) {
        const error =
          Math.abs(step * (e1 * start[i] + e2 * second[i] + e3 * third[i] + e4 * end[i])) / scale[i];
        // The comparison is written so that NaN wins.
        if (!(error <= worst)) worst = error;
      }
      return worst;
    },

    accept() {
      const { state, start } = stepper;
      stepper.state = stepper.trial;
      stepper.trial = state;
      stepper.start = stepper.end;
      stepper.end = start;
    },
  };
  return stepper;
}
