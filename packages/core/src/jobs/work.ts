import type { Result } from '../finding/problem.ts';
import { type BatchRequest, batchBench } from './batch-bench.ts';
import type { Bench } from './bench.ts';
import { type ChoosePlan, chooseBench } from './choose-bench.ts';
import { type SweepRequest, sweepBench } from './sweep-bench.ts';

/** Work that many hands can share, as data: all that a worker has to be told. */
export type WorkPlan =
  | { readonly kind: 'batch'; readonly request: BatchRequest }
  | { readonly kind: 'sweep'; readonly request: SweepRequest }
  | { readonly kind: 'choose'; readonly request: ChoosePlan };

/**
 * Lays out a plan: made once in every worker, so courses are sampled once there and used by all units.
 * @failure what is wrong with the request; the same wherever it is opened
 */
export function openBench(plan: WorkPlan): Result<Bench> {
  switch (plan.kind) {
    case 'batch':
      return batchBench(plan.request);
    case 'sweep':
      return sweepBench(plan.request);
    case 'choose':
      return chooseBench(plan.request);
  }
}

/** Rows of the units `from` … `to` − 1, one after the other. */
export function rowsOf(bench: Bench, from: number, to: number): Float64Array<ArrayBuffer> {
  const rows = new Float64Array((to - from) * bench.width);
  for (let unit = from; unit < to; unit += 1) bench.run(unit, rows, (unit - from) * bench.width);
  return rows;
}
