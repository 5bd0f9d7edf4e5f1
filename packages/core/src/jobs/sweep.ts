import { good, type Result } from '../finding/problem.ts';
import type { SweepAnswer } from './sweep-answer.ts';
import { type SweepRequest, sweepBench } from './sweep-bench.ts';
import { sweepFold } from './sweep-fold.ts';

/**
 * How fast setups may go over a course before each criterion is broken, all in this thread. `startSweep` shares the
 * same work out and gives the same answer.
 *
 * @failure `ask-sweep-range`, `ask-sweep-step`, `ask-sweep-no-speed`, or what a setup lacks
 */
export function sweepRig(request: SweepRequest): Result<SweepAnswer> {
  const opened = sweepBench(request);
  if (!opened.ok) return opened;
  const bench = opened.value;
  const fold = sweepFold(request);
  const row = new Float64Array(bench.width);
  for (let unit = 0; unit < bench.units; unit += 1) {
    bench.run(unit, row, 0);
    fold.take(row, 0);
  }
  return good(fold.finish());
}
