import { execFileSync } from 'node:child_process';
import { join } from 'node:path';

/** Operations of one evaluation of the model, counted by running it (count.cc). */
export interface Operations {
  readonly sums: number;
  readonly products: number;
  readonly quotients: number;
  readonly comparisons: number;
}

export const operationsOf = (work: string, numbers: string): Operations =>
  JSON.parse(execFileSync(join(work, 'count'), [numbers]).toString());

export const perEvaluation = ({ sums, products, quotients }: Operations): number =>
  sums + products + quotients;

/** Operations a second of one core (peak.c). */
export interface Peak {
  /** Doubles in a vector. */
  readonly lanes: number;
  /** Multiply-and-add of whole vectors, of single doubles, and as two instructions on single doubles. */
  readonly vectorFused: number;
  readonly scalarFused: number;
  readonly scalarApart: number;
}

export const measurePeak = (work: string): Peak => JSON.parse(execFileSync(join(work, 'peak')).toString());

/** The best of several: a busy machine only ever shows less. */
export function bestPeak(peaks: readonly Peak[]): Peak {
  const best = (of: (peak: Peak) => number): number => Math.max(...peaks.map(of));
  return {
    lanes: best((peak) => peak.lanes),
    vectorFused: best((peak) => peak.vectorFused),
    scalarFused: best((peak) => peak.scalarFused),
    scalarApart: best((peak) => peak.scalarApart),
  };
}
