import { matrixExponential } from '../numerics/matrix-exponential.ts';

/** The reference car, by its sprung mass: tyre and spring rate [1/s²], damping [1/s], unsprung ÷ sprung mass. */
const TYRE = 653;
const SPRING = 63.3;
const DAMPING = 6;
const UNSPRUNG = 0.15;
/** 80 km/h [m/s] */
const SPEED = 80 / 3.6;
/** The slope of this first stretch is what the car is taken to have settled on [m]. */
const SETTLED_OVER = 11;
/** Base over which slopes are averaged where samples are closer: what a tyre bridges [m]. */
const BASE = 0.25;

/** Recurrence of the reference car from sample to sample: z ← S·z + P·slope. */
export interface IriStep {
  /** Row by row; the state is the slope of the body, its rate, the slope of the axle, its rate. */
  readonly transition: readonly (readonly number[])[];
  readonly input: readonly number[];
}

/**
 * Exact recurrence for a profile that is straight between its samples: S = exp(A·step/speed), P = A⁻¹(S − I)b.
 *
 * @param step – distance between samples [m] > 0
 * @source Sayers, Gillespie and Queiroz, World Bank Technical Paper 45 (1986): quarter car and its constants
 */
export function iriStep(step: number): IriStep {
  const dt = step / SPEED;
  // The input is held over the step, so it is one more state that does not change.
  const a = [
    [0, 1, 0, 0, 0],
    [-SPRING, -DAMPING, SPRING, DAMPING, 0],
    [0, 0, 0, 1, 0],
    [
      SPRING / UNSPRUNG,
      DAMPING / UNSPRUNG,
      -(TYRE + SPRING) / UNSPRUNG,
      -DAMPING / UNSPRUNG,
      TYRE / UNSPRUNG,
    ],
    [0, 0, 0, 0, 0],
  ];
  const whole = matrixExponential(a.map((row) => row.map((entry) => entry * dt)));
  const states = whole.slice(0, 4);
  return { transition: states.map((row) => row.slice(0, 4)), input: states.map((row) => row[4]!) };
}

export interface IriOptions {
  /** Length of the parts that are judged one by one [m]; left out: the whole profile is one. */
  readonly segment?: number;
  /** Base of the moving average of the slope [m]: 0.25 by the rule, 0 for none. */
  readonly base?: number;
}

/**
 * International Roughness Index of one track: the mean size of the slope between body and axle of a reference quarter
 * car at 80 km/h, as a number without unit (1e-3 is 1 m/km).
 *
 * @param profile – heights at even distances [m], at least 11 m and two samples of them
 * @param step – distance between them [m]
 * @returns one value a full segment, in order; a rest shorter than a segment is left out
 * @validity a road for 80 km/h; on ground rougher than about 20 m/km no car keeps that speed or its tyres on it
 * @throws on a profile too short or a step that is not positive: our own mistake
 * @source World Bank Technical Papers 45 and 46 (1986); ASTM E1926 (from memory)
 */
export function iriOf(profile: ArrayLike<number>, step: number, options: IriOptions = {}): readonly number[] {
  const { base = BASE } = options;
  if (!(step > 0)) throw new Error('iriOf: step must be positive');
  const span = Math.max(1, Math.round(base / step));
  const slopes = profile.length - span;
  const settled = Math.round(SETTLED_OVER / step);
  if (slopes < 1 || profile.length <= settled) throw new Error('iriOf: the profile is too short');
  const segment = options.segment === undefined ? slopes : Math.round(options.segment / step);
  const { transition, input } = iriStep(step);
  const start = (profile[settled]! - profile[0]!) / (settled * step);
  let z: readonly number[] = [start, 0, start, 0];
  const values: number[] = [];
  let sum = 0;
  for (let i = 0; i < slopes; i += 1) {
    const slope = (profile[i + span]! - profile[i]!) / (span * step);
    z = transition.map(
      (row, j) => row[0]! * z[0]! + row[1]! * z[1]! + row[2]! * z[2]! + row[3]! * z[3]! + input[j]! * slope,
    );
    sum += Math.abs(z[0]! - z[2]!);
    if ((i + 1) % segment === 0) {
      values.push(sum / segment);
      sum = 0;
    }
  }
  return values;
}
