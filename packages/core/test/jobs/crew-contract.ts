import { describe, expect, it } from 'vitest';
import { type BatchAnswer, batchFold } from '../../src/jobs/batch.ts';
import { type BatchRequest, batchBench } from '../../src/jobs/batch-bench.ts';
import type { Crew } from '../../src/jobs/crew.ts';
import { startBatch, startSweep } from '../../src/jobs/start.ts';
import { sweepRig } from '../../src/jobs/sweep.ts';
import type { SweepRequest } from '../../src/jobs/sweep-bench.ts';
import { must, ochre } from './ochre.ts';

/** A batch that takes no time: short ground, few trials. */
export const BATCH: BatchRequest = {
  rig: ochre,
  setups: ['as-it-is', 'soft-stop-seat-down'],
  courses: [
    { name: 'flat', shape: { kind: 'flat', length: 2 }, speed: 9 },
    { name: 'ledge', shape: ochre.courses.ledge.shape, speed: 4 },
    { name: 'drop', shape: ochre.courses.drop.shape, speed: 1 },
  ],
  trials: 3,
  seed: 1,
};

export const SWEEP: SweepRequest = {
  rig: ochre,
  setups: ['as-it-is', 'soft-stop-seat-down'],
  course: ochre.courses.ledge.shape,
  courseName: 'ledge',
  wantedSpeed: null,
  from: 2,
  to: 8,
  step: 3,
  trials: 2,
  seed: 1,
};

/**
 * What every host of shared work must do, whatever its threads are.
 *
 * @param makeCrew – a fresh crew; it is closed after each test
 */
export function crewContract(name: string, makeCrew: () => Crew): void {
  const withCrew = async <T>(use: (crew: Crew) => Promise<T>): Promise<T> => {
    const crew = makeCrew();
    try {
      return await use(crew);
    } finally {
      crew.close();
    }
  };

  describe(`work shared out over ${name}`, () => {
    it('answers a batch as anybody else would, to the last bit', async () => {
      const outcome = await withCrew((crew) => startBatch(BATCH, crew).outcome);
      if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome));
      expect(outcome.answer).toEqual(reference());
      expect(outcome.counters.units).toBe(24);
    });

    it('answers a sweep as the same thread does', async () => {
      const outcome = await withCrew((crew) => startSweep(SWEEP, crew).outcome);
      if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome));
      expect(outcome.answer).toEqual(must(sweepRig(SWEEP)));
    });

    it('tells progress that never falls and ends at 1', async () => {
      const seen: number[] = [];
      await withCrew((crew) => startBatch(BATCH, crew, { onProgress: (share) => seen.push(share) }).outcome);
      expect(seen).toEqual([...seen].sort((a, b) => a - b));
      expect(seen.at(-1)).toBe(1);
      expect(seen.length).toBeGreaterThan(1);
    });

    it('is cancelled when it is told to, and is then free for other work', async () => {
      await withCrew(async (crew) => {
        const shares: number[] = [];
        const work = startBatch({ ...BATCH, trials: 200 }, crew, {
          onProgress: (share) => {
            shares.push(share);
            work.cancel();
          },
        });
        const outcome = await work.outcome;
        expect(outcome.kind).toBe('cancelled');
        if (outcome.kind === 'cancelled') expect(outcome.share).toBeLessThan(1);
        expect(shares).toHaveLength(1);
        expect((await startBatch(BATCH, crew).outcome).kind).toBe('done');
      });
    });

    it('says what is wrong with a request', async () => {
      const outcome = await withCrew((crew) => startSweep({ ...SWEEP, from: 9, to: 3 }, crew).outcome);
      expect(outcome).toMatchObject({ kind: 'refused', problems: [{ code: 'ask-sweep-range' }] });
    });

    it('does nothing at once when there is nothing to do', async () => {
      const outcome = await withCrew((crew) => startBatch({ ...BATCH, courses: [] }, crew).outcome);
      expect(outcome).toMatchObject({ kind: 'done', answer: { results: [] } });
    });
  });
}

/** The batch unit by unit, in one piece. */
function reference(): BatchAnswer {
  const bench = must(batchBench(BATCH));
  const fold = batchFold(BATCH);
  const row = new Float64Array(bench.width);
  for (let unit = 0; unit < bench.units; unit += 1) {
    bench.run(unit, row, 0);
    fold.take(row, 0);
  }
  return fold.finish();
}
