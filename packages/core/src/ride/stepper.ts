/**
 * Accelerations of a mechanical system, q″ = f(t, q, q′, s), written into `out`; behind them the rates of its
 * first-order states s. What it keeps for itself (contacts, probes) belongs to the last call.
 */
export type Accelerate = (
  time: number,
  position: Float64Array,
  speed: Float64Array,
  out: Float64Array,
  sums: Float64Array,
) => void;

/** Weights of the third-order result, by stage. They add to one. */
export const STAGE_WEIGHTS = [2 / 9, 1 / 3, 4 / 9] as const;

/** Third-order result minus the embedded second-order one, by stage. They add to zero. */
export const ERROR_WEIGHTS = [-5 / 72, 1 / 12, 1 / 9, -1 / 8] as const;

export const ORDER = 3;

/** Sizes and accepted errors of a system. */
export interface StepperSize {
  /** Number of coordinates. */
  readonly coordinates: number;
  /** Number of first-order states: running sums, and inner displacements behind them. */
  readonly sums: number;
  /** Local error accepted in each position and in each speed, in their own units. */
  readonly positionScale: Float64Array;
  readonly speedScale: Float64Array;
  /** The same for each first-order state, infinite for a running sum. Left out: no state feeds back. */
  readonly sumScale?: Float64Array;
}

/** One end of a step: positions, speeds, first-order states, and accelerations with the states' rates behind them. */
export interface StepEnd {
  readonly position: Float64Array;
  readonly speed: Float64Array;
  readonly sums: Float64Array;
  readonly acceleration: Float64Array;
}

/**
 * One explicit Runge–Kutta step of third order with an embedded second-order one; the last stage is the first of the
 * next step, so a step costs three evaluations. All memory is made once here; a step allocates nothing.
 *
 * @source Bogacki and Shampine, Appl. Math. Lett. 2 (1989) 321
 */
export interface Stepper {
  /** Where the step starts. Its accelerations must be there: `evaluateStart` after any change from outside. */
  start: StepEnd;
  /** Where the tried step ends. */
  end: StepEnd;
  evaluations: number;
  evaluateStart(time: number): void;
  /** @returns largest local error ÷ accepted error; NaN when the result is not finite */
  attempt(time: number, step: number): number;
  /** Makes the tried end the start of the next step. */
  accept(): void;
}

export function makeStepper(accelerate: Accelerate, size: StepperSize): Stepper {
  const { coordinates: n, sums, positionScale, speedScale, sumScale } = size;
  const [e1, e2, e3, e4] = ERROR_WEIGHTS;
  const [b1, b2, b3] = STAGE_WEIGHTS;
  const stepEnd = (): StepEnd => ({
    position: new Float64Array(n),
    speed: new Float64Array(n),
    sums: new Float64Array(sums),
    acceleration: new Float64Array(n + sums),
  });
  const position = new Float64Array(n);
  const speed2 = new Float64Array(n);
  const speed3 = new Float64Array(n);
  const state = new Float64Array(sums);
  const a2 = new Float64Array(n + sums);
  const a3 = new Float64Array(n + sums);
  const perPosition = positionScale.map((scale) => 1 / scale);
  const perSpeed = speedScale.map((scale) => 1 / scale);
  const perSum = sumScale?.map((scale) => 1 / scale) ?? null;

  const stepper: Stepper = {
    start: stepEnd(),
    end: stepEnd(),
    evaluations: 0,

    evaluateStart(time) {
      const { start } = stepper;
      accelerate(time, start.position, start.speed, start.acceleration, start.sums);
      stepper.evaluations += 1;
    },

    attempt(time, step) {
      const { position: q, speed: v, sums: s, acceleration: a1 } = stepper.start;
      const { position: qEnd, speed: vEnd, sums: sEnd, acceleration: a4 } = stepper.end;
      const half = 0.5 * step;
      for (let i = 0; i < n; i += 1) {
        position[i] = q[i] + half * v[i];
        speed2[i] = v[i] + half * a1[i];
      }
      if (perSum) for (let j = 0; j < sums; j += 1) state[j] = s[j] + half * a1[n + j];
      accelerate(time + half, position, speed2, a2, state);
      const most = 0.75 * step;
      for (let i = 0; i < n; i += 1) {
        position[i] = q[i] + most * speed2[i];
        speed3[i] = v[i] + most * a2[i];
      }
      if (perSum) for (let j = 0; j < sums; j += 1) state[j] = s[j] + most * a2[n + j];
      accelerate(time + most, position, speed3, a3, state);
      for (let i = 0; i < n; i += 1) {
        qEnd[i] = q[i] + step * (b1 * v[i] + b2 * speed2[i] + b3 * speed3[i]);
        vEnd[i] = v[i] + step * (b1 * a1[i] + b2 * a2[i] + b3 * a3[i]);
      }
      for (let j = 0; j < sums; j += 1) {
        sEnd[j] = s[j] + step * (b1 * a1[n + j] + b2 * a2[n + j] + b3 * a3[n + j]);
      }
      accelerate(time + step, qEnd, vEnd, a4, sEnd);
      stepper.evaluations += 3;
      let worst = 0;
      for (let i = 0; i < n; i += 1) {
        const inPosition = Math.abs(step * (e1 * v[i] + e2 * speed2[i] + e3 * speed3[i] + e4 * vEnd[i]));
        const inSpeed = Math.abs(step * (e1 * a1[i] + e2 * a2[i] + e3 * a3[i] + e4 * a4[i]));
        const error = Math.max(inPosition * perPosition[i], inSpeed * perSpeed[i]);
        // Written so that NaN wins.
        if (!(error <= worst)) worst = error;
      }
      if (perSum) {
        for (let j = 0; j < sums; j += 1) {
          const inSum = step * (e1 * a1[n + j] + e2 * a2[n + j] + e3 * a3[n + j] + e4 * a4[n + j]);
          const error = Math.abs(inSum) * perSum[j];
          if (!(error <= worst)) worst = error;
        }
      }
      return worst;
    },

    accept() {
      const { start } = stepper;
      stepper.start = stepper.end;
      stepper.end = start;
    },
  };
  return stepper;
}
