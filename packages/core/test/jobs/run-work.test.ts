import { describe, expect, it } from 'vitest';
import { batchFold } from '../../src/jobs/batch.ts';
import type { BatchRequest } from '../../src/jobs/batch-bench.ts';
import { sameThreadCrew } from '../../src/jobs/crew.ts';
import { startWork } from '../../src/jobs/run-work.ts';
import { startBatch } from '../../src/jobs/start.ts';
import { BATCH, crewContract } from './crew-contract.ts';
import { messageCrew, randomPatience, unrulyCrew } from './crews.ts';

const ownThread = () =>
  sameThreadCrew(
    () => new Promise((resume) => setTimeout(resume, 0)),
    () => performance.now(),
  );

crewContract('one thread', ownThread);
crewContract('one worker behind messages', () => messageCrew(1));
crewContract('three workers behind messages', () => messageCrew(3));
crewContract(
  'workers that finish in any order',
  () => unrulyCrew(4, { patience: randomPatience(7, 6) }).crew,
);

const answerOf = async (crew: ReturnType<typeof unrulyCrew>['crew'], request: BatchRequest = BATCH) => {
  const outcome = await startBatch(request, crew).outcome;
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome));
  return outcome;
};

describe('the answer to shared work', () => {
  it('does not depend on how many share it, nor on who is fast', async () => {
    const { answer } = await answerOf(ownThread());
    for (const [size, seed] of [
      [1, 1],
      [2, 2],
      [3, 3],
      [5, 4],
      [24, 5],
      [40, 6],
    ] as const) {
      const { crew } = unrulyCrew(size, { patience: randomPatience(seed, 5) });
      expect((await answerOf(crew)).answer, `${size} workers`).toEqual(answer);
    }
  });
});

describe('memory while work is shared', () => {
  it('holds a bounded number of rows behind one slow unit', async () => {
    // The first unit takes as long as hundreds of others.
    const { crew } = unrulyCrew(2, { patience: (from) => (from === 0 ? 60 : 0) });
    const long: BatchRequest = {
      ...BATCH,
      setups: ['as-it-is'],
      courses: [{ name: 'flat', shape: { kind: 'flat', length: 0.1 }, speed: 60 }],
      trials: 150,
    };
    const { counters } = await answerOf(crew, long);
    expect(counters.units).toBe(151);
    expect(counters.mostWaiting).toBeLessThanOrEqual(2 * 8);
    expect(counters.mostWaiting).toBeGreaterThan(1);
  });
});

describe('a worker that breaks', () => {
  it('is thrown away, and a fresh one does the stretch again', async () => {
    const broken = new Set<number>();
    const unruly = unrulyCrew(2, {
      breaks: (from, seat) => {
        if (from < 8 || broken.size > 0) return;
        broken.add(seat);
        throw new Error('out of memory');
      },
    });
    const { answer, counters } = await answerOf(unruly.crew);
    expect(answer).toEqual((await answerOf(ownThread())).answer);
    expect(broken.size).toBe(1);
    expect(unruly.ended).toEqual([...broken]);
    expect(unruly.hired()).toBe(3);
    expect(counters.workers).toBe(3);
  });

  it('twice over the same stretch ends the work with what was said', async () => {
    const unruly = unrulyCrew(2, {
      breaks: (from) => {
        if (from === 0) throw new Error('out of memory');
      },
    });
    expect(await startBatch(BATCH, unruly.crew).outcome).toEqual({
      kind: 'broken',
      message: 'out of memory',
    });
  });

  it('before it starts is replaced once, and then the place is to blame', async () => {
    const once = unrulyCrew(1, {
      breaksOnOpen: (seat) => {
        if (seat === 0) throw new Error('no such file');
      },
    });
    expect((await startBatch(BATCH, once.crew).outcome).kind).toBe('done');
    const always = unrulyCrew(1, {
      breaksOnOpen: () => {
        throw new Error('no such file');
      },
    });
    expect(await startBatch(BATCH, always.crew).outcome).toEqual({ kind: 'broken', message: 'no such file' });
    expect(always.ended).toEqual([0, 1]);
  });
});

describe('those who worked', () => {
  it('are kept warm after the work, and used again', async () => {
    const unruly = unrulyCrew(3);
    await answerOf(unruly.crew);
    expect(unruly.idle).toHaveLength(3);
    await answerOf(unruly.crew);
    expect(unruly.hired()).toBe(3);
    expect(unruly.ended).toEqual([]);
  });

  it('are ended when nobody wants what they are busy with', async () => {
    const unruly = unrulyCrew(2, { patience: () => 3 });
    const work = startBatch(BATCH, unruly.crew);
    work.cancel();
    expect(await work.outcome).toEqual({ kind: 'cancelled', share: 0 });
    expect(unruly.ended.sort()).toEqual([0, 1]);
    work.cancel();
  });

  it('are never more than there are units', async () => {
    const unruly = unrulyCrew(50);
    await answerOf(unruly.crew);
    expect(unruly.hired()).toBe(24);
  });
});

it('does not hide a mistake of our own behind work that never ends', async () => {
  const faulty = () => ({
    ...batchFold(BATCH),
    take() {
      throw new Error('a fold that fails');
    },
  });
  const { crew, ended } = unrulyCrew(2);
  const work = startWork({ kind: 'batch', request: BATCH }, faulty, crew);
  await expect(work.outcome).rejects.toThrow('a fold that fails');
  expect(ended.length).toBeGreaterThan(0);
});
