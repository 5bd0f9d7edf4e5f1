import { type BatchAnswer, batchFold } from './batch.ts';
import type { BatchRequest } from './batch-bench.ts';
import type { Crew } from './crew.ts';
import { startWork, type Work, type WorkOptions } from './run-work.ts';
import type { SweepAnswer } from './sweep-answer.ts';
import type { SweepRequest } from './sweep-bench.ts';
import { sweepFold } from './sweep-fold.ts';

/** Drives many setups over many courses in many sampled rigs, by a crew. */
export const startBatch = (request: BatchRequest, crew: Crew, options?: WorkOptions): Work<BatchAnswer> =>
  startWork({ kind: 'batch', request }, () => batchFold(request), crew, options);

/** How fast setups may go over a course, by a crew: the answer of `sweepRig`. */
export const startSweep = (request: SweepRequest, crew: Crew, options?: WorkOptions): Work<SweepAnswer> =>
  startWork({ kind: 'sweep', request }, () => sweepFold(request), crew, options);
